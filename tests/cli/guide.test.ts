import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { Guide } from '../../src/questions/guide/answer.js';
import { hostileScenario } from '../browser/hostile.js';
import { cuptide, emptyFolder } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';

describe('cuptide guide', () => {
  const folder = emptyFolder();
  const asked = ['guide', demo, '--seats', '20,50', '--takeaway', '30,60%', '--days', '100'];
  const told = cuptide([...asked, '--out', folder]);
  const guide = JSON.parse(cuptide([...asked, '--json']).out) as Guide;
  const csv = readFileSync(join(folder, '1-commuter-bar.guide.csv'), 'utf8');
  const page = readFileSync(join(folder, '1-commuter-bar.guide.html'), 'utf8');

  it('tells each house with pieces, racks, shelf and cost, no line wider than the terminal', () => {
    expect(told.status, told.err).toBe(0);
    expect(guide.houses.map(({ seats, takeaway }) => [seats, Number(takeaway.toFixed(9))])).toEqual(
      [
        [20, 0.3],
        [50, 0.3],
        [20, 0.6],
        [50, 0.6],
      ],
    );
    for (const { stock } of guide.houses)
      for (const { pieces, high } of stock)
        expect(told.out).toContain(`${pieces} ± ${high! - pieces} (`);
    for (const say of [
      'Which vessel for which drink',
      'Small paper cup, sold as 237 ml',
      'What to change if',
      'What a café needs where 30 % take away',
      'as few as possible, but none with more work than in the file',
      'Racks: Open rack',
      'Shelf for all pieces',
      'it is not a guarantee',
    ])
      expect(told.out.replace(/\s+/g, ' ')).toContain(say);
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it('writes the same figures to a table and a page', () => {
    expect(readdirSync(folder).sort()).toEqual([
      '1-commuter-bar.guide.csv',
      '1-commuter-bar.guide.html',
      '1-commuter-bar.guide.json',
    ]);
    const [head, ...rows] = parse(csv) as string[][];
    const at = (title: string): number => head!.findIndex((one) => one.startsWith(title));
    for (const { seats, takeaway, stock, cost } of guide.houses) {
      const mine = rows.filter(
        (row) =>
          Number(row[at('seats')]) === seats &&
          Math.abs(Number(row[at('takeaway')]) / 100 - takeaway) < 1e-6,
      );
      for (const { ware, pieces, low, high } of stock) {
        const row = mine.find((one) => one[at('id')] === ware)!;
        expect([at('count'), at('low'), at('high')].map((column) => Number(row[column]))).toEqual([
          pieces,
          low,
          high,
        ]);
      }
      const all = mine.find((row) => row[at('kind')] === 'all ware')!;
      expect(Number(all[at('cost')])).toBeCloseTo(cost, 2);
    }
    for (const { stock } of guide.houses)
      for (const { pieces } of stock) expect(page).toMatch(new RegExp(`<td>${pieces}[ \u00A0&<]`));
    expect(page).toContain("default-src 'none'");
    expect(page).not.toContain('<script');
  });

  it('asks for half, once, one and a half and twice the seats of the file where none are given', () => {
    const { houses } = JSON.parse(cuptide(['guide', demo, '--days', '20', '--json']).out) as Guide;
    expect(houses.map(({ seats }) => seats)).toEqual([13, 26, 39, 52]);
    for (const { takeaway } of houses) expect(takeaway).toBeCloseTo(0.55, 9);
  });

  it('lets no name of a file run or become a formula', () => {
    const hostile = join(folder, 'hostile.yaml');
    writeFileSync(
      hostile,
      hostileScenario().replace(/^name:.*$/m, "name: '=1+1\"<script>alert(1)</script>'"),
    );
    const { status, err } = cuptide(['guide', hostile, '--days', '20', '--out', folder]);
    expect(status, err).toBe(0);
    const html = readFileSync(join(folder, 'hostile.guide.html'), 'utf8');
    expect(/<(?:script|img|svg)|<[^>]*\son\w+=/i.test(html)).toBe(false);
    expect(html).toContain('&lt;script&gt;alert(1)');
    for (const row of parse(readFileSync(join(folder, 'hostile.guide.csv'), 'utf8')) as string[][])
      for (const cell of row) expect(cell).not.toMatch(/^[=+@]|^-\D/);
  });
});

describe('a mistake in what is asked of a guide', () => {
  const hundred = Array.from({ length: 100 }, (_, index) => index + 1).join(',');
  it.each([
    ['--seats 0', ['--seats', '0'], /--seats: "0" is not a whole number from 1 to 2,000; write/],
    ['--seats abc', ['--seats', 'abc'], /--seats: "abc" is not a whole number .*; write/],
    ['an empty place', ['--seats', '20,,30'], /--seats: "" is not a whole number .*; write/],
    ['half a seat', ['--seats', '20.5'], /--seats: "20.5" is not a whole number .*; write/],
    ['a size twice', ['--seats', '20,30,20'], /--seats: "20" is given twice; give it once/],
    [
      'a hundred sizes',
      ['--seats', hundred],
      /--seats: 100 sizes .* more than the 8 .*; leave some out/,
    ],
    [
      'too many with shares',
      ['--seats', '20,30,40', '--takeaway', '10,20,30'],
      /--seats: 3 sizes with 3 shares of takeaway make 9 houses, .*; leave some out/,
    ],
    ['all take away', ['--takeaway', '100'], /--takeaway: "100" is not a percentage .*; write/],
    ['no share', ['--takeaway', 'many'], /--takeaway: "many" is not a percentage .*; write/],
    ['a negative share', ['--takeaway=-5'], /--takeaway: "-5" is not a percentage .*; write/],
    ['a share twice', ['--takeaway', '30,30%'], /--takeaway: "30" is given twice; give it once/],
  ])('%s: place, value, rule and remedy, and nothing is written', (_, options, message) => {
    const folder = emptyFolder();
    const { status, out, err } = cuptide(['guide', demo, ...options, '--out', join(folder, 'to')]);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).not.toMatch(/^ {2,}at /m);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('a share that the hour when most stay in does not allow is refused with the least that works', () => {
    const folder = emptyFolder();
    const file = join(folder, 'by-time.yaml');
    const text = readFileSync(demo, 'utf8').replace(
      /staysIn: \{[^}]*\}/,
      'staysIn: [{ for: 90 min, staysIn: 20 % }, { for: 90 min, staysIn: 80 % }]',
    );
    writeFileSync(file, text);
    const { status, err } = cuptide(['guide', file, '--takeaway', '1', '--days', '5']);
    expect(status).toBe(2);
    const least = Number(/write (\d+)\u00A0% or more/.exec(err)![1]);
    expect(cuptide(['guide', file, '--takeaway', String(least), '--days', '5']).status).toBe(0);
    expect(cuptide(['guide', file, '--takeaway', String(least - 2), '--days', '5']).status).toBe(2);
  });
});

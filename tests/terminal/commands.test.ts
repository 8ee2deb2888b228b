import { spawnSync } from 'node:child_process';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { command, emptyFolder, root } from '../cli/run.js';
import { leftAsFound, onTerminal } from './on-terminal.js';

const bar = 'scenarios/1-commuter-bar.yaml';
const brunch = 'scenarios/2-brunch-room.yaml';

/** Each long enough for its bar to come (over a second), where it runs days at all. */
const COMMANDS: readonly (readonly [name: string, args: (folder: string) => readonly string[]])[] =
  [
    ['help', () => ['--help']],
    ['help of size', () => ['size', '--help']],
    ['check', () => ['check', bar]],
    ['size', () => ['size', bar, '--threads', '1']],
    ['size of nine ware', () => ['size', brunch, '--threads', '1']],
    ['size of a given stock', () => ['size', bar, '--stock', 'medium-cup=30', '--days', '9000']],
    ['report', (folder) => ['report', bar, '--days', '2000', '--out', folder]],
    ['page', (folder) => ['page', '--out', join(folder, 'blank.html')]],
    ['compare', () => ['compare', bar, '--days', '400', '--map', '--moves']],
    ['order', (folder) => ['order', bar, '--out', folder]],
    ['racks', () => ['racks', bar]],
    ['suit', () => ['suit', bar]],
    [
      'till',
      (folder) => [
        'till',
        'shared/till/bakery-quarter-hours.csv',
        '--map',
        'shared/till/bakery-saturdays.map.yaml',
        '--scenario',
        'scenarios/4-bakery-corner.yaml',
        '--out',
        join(folder, 'saturday.yaml'),
      ],
    ],
    [
      'stocktake',
      (folder) => {
        const counts = join(folder, 'counts.csv');
        writeFileSync(counts, 'ware,counted\nmedium-cup,30\nsaucer,45\n');
        return [
          'stocktake',
          bar,
          '--counts',
          counts,
          '--since',
          '2025-01-01',
          '--date',
          '2025-07-01',
        ];
      },
    ],
  ];

/** Each with mistakes that take long sentences to say. */
const MISTAKES: readonly (readonly [name: string, args: (folder: string) => readonly string[]])[] =
  [
    ['check of a house with mistakes', (folder) => ['check', flawed(folder)]],
    ['size of a house with mistakes', (folder) => ['size', flawed(folder)]],
    ['an unknown option', () => ['size', bar, '--nonsense-that-goes-on-for-long', '--more', '3']],
    ['stock that does not fit', () => ['size', bar, '--stock', 'medium-cups=30,saucer=-2,a=b']],
    ['no such alternative', () => ['compare', bar, '--uncertainty', 'many']],
    [
      'new with wrong options',
      () =>
        `new x.yaml --name Bar --guests many --seats few --from noon-ish --to late --stay sometimes --menu soup --currency shells --staff-hour much`.split(
          ' ',
        ),
    ],
    [
      'a till map that is none',
      (folder) => [
        'till',
        bar,
        '--map',
        flawed(folder),
        '--scenario',
        bar,
        '--out',
        join(folder, 'x.yaml'),
      ],
    ],
  ];

/** A house with a mistake of many kinds, in a file whose name is short enough to be folded. */
function flawed(folder: string): string {
  const path = join(folder, 'house.yaml');
  const text = readFileSync(join(root, bar), 'utf8')
    .replace('currency: EUR', 'currency: Taler, as our grandmothers paid with in the old days')
    .replace(/staysIn: .*/, 'staysIn: rather many of those who come before nine')
    .replace(/dwell: .*/, 'dwell: 40')
    .replace('washing:', 'washingUpAfterwardsInTheEvening: 4\nwashing:');
  writeFileSync(path, text);
  return path;
}

const widestOf = new Map<string, number>();
afterAll(() => {
  console.log('widest lines, in columns:');
  for (const [name, widest] of widestOf) console.log(`${String(widest).padStart(5)}  ${name}`);
});

describe.each([80, 100, 140])('on a terminal of %d columns', (columns) => {
  it.each([
    ...COMMANDS.map(([name, args]) => [name, args, 0] as const),
    ...MISTAKES.map(([name, args]) => [name, args, 2] as const),
  ])('%s ends as it should, no line wider than the terminal', async (name, args, code) => {
    const folder = emptyFolder();
    const { status, raw, widest, line } = await onTerminal(args(folder), columns, {
      without: folder,
    });
    expect(status, raw).toBe(code);
    expect(leftAsFound(raw)).toBe(true);
    widestOf.set(`${name} (of ${columns})`, widest);
    expect(widest, line).toBeLessThanOrEqual(columns);
  });

  it('new asks and answers within the terminal', async () => {
    const folder = emptyFolder();
    const { status, raw, widest, line } = await onTerminal(['new', 'my.yaml'], columns, {
      cwd: folder,
      typing: [
        {
          once: /called\?/,
          keys: 'Corner\n30\n50\n7am\n11\n\n50\n\nflat white, golden milk\n5\n\nyes\n£\n14\n',
        },
      ],
    });
    expect(status, raw).toBe(0);
    expect(widest, line).toBeLessThanOrEqual(columns);
    expect(readFileSync(join(folder, 'my.yaml'), 'utf8')).toContain('staffHour: 14 GBP');
  });
});

describe('a bar', () => {
  it('says how much is done and how long is left, and leaves no trace', async () => {
    const { raw } = await onTerminal(['size', bar, '--days', '60000', '--threads', '1'], 80);
    expect(raw).toMatch(
      /running days \[=* *\] [\d,]+ of (at least )?[\d,]+ days, about \d+ s left/,
    );
    expect(leftAsFound(raw)).toBe(true);
  });

  it.each([
    ['TERM=dumb', { TERM: 'dumb' }],
    ['NO_COLOR', { NO_COLOR: '1' }],
  ])('%s: no colour, and on a dumb terminal no bar', async (_, environment) => {
    const { raw } = await onTerminal(['size', bar, '--days', '20000', '--threads', '1'], 80, {
      environment,
    });
    const escape = String.fromCharCode(27);
    expect(raw).not.toContain(`${escape}[3`);
    if ('TERM' in environment) expect(raw).not.toContain(escape);
  });
});

describe('what ends early', () => {
  it('a mistake: exit 2, the terminal as it was', async () => {
    const { status, raw } = await onTerminal(['size', 'none.yaml'], 80);
    expect(status).toBe(2);
    expect(leftAsFound(raw)).toBe(true);
  });

  it('Ctrl-C while the bar is shown: exit 130, the terminal as it was', async () => {
    const { status, raw, endedAfterMs } = await onTerminal(['size', bar, '--days', '900000'], 80, {
      typing: [{ once: /days, about/, keys: '\u0003' }],
    });
    expect(status).toBe(130);
    expect(leftAsFound(raw)).toBe(true);
    console.log(`ended ${Math.round(endedAfterMs)} ms after Ctrl-C`);
  });

  it('Ctrl-C at a question: exit 130, nothing written', async () => {
    const folder = emptyFolder();
    const { status } = await onTerminal(['new', 'my.yaml'], 80, {
      cwd: folder,
      typing: [{ once: /called\?/, keys: '\u0003' }],
    });
    expect(status).toBe(130);
    expect(() => readFileSync(join(folder, 'my.yaml'))).toThrow();
  });

  it('a full disk under the answer: exit 2, in words', () => {
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${command}" size ${bar} --days 100 > /dev/full`],
      { cwd: root, encoding: 'utf8' },
    );
    expect(status).toBe(2);
    expect(stderr).toBe('The answer cannot be written: the disk is full.\n');
  });

  it('names from files do not reach the terminal as commands', async () => {
    const folder = emptyFolder();
    const text = readFileSync(join(root, bar), 'utf8');
    writeFileSync(
      join(folder, 'hostile.yaml'),
      text
        .replace('name: Tern & Tide', 'name: "Tern \\e[31m\\e]0;owned\\a & Tide"')
        .replace('name: Large latte', 'name: "Large \\e[2J latte"'),
    );
    copyFileSync(join(folder, 'hostile.yaml'), join(folder, 'a\u001b[31mb.yaml'));
    const escape = String.fromCharCode(27);
    for (const args of [
      ['check', 'hostile.yaml'],
      ['size', 'hostile.yaml', '--days', '100'],
      ['check', 'a\u001b[31mb.yaml'],
      ['suit', 'hostile.yaml'],
    ]) {
      const { raw } = await onTerminal(args, 80, { cwd: folder, environment: { TERM: 'dumb' } });
      expect(raw, args.join(' ')).not.toContain(escape);
    }
  });
});

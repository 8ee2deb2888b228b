import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { Answer } from '../../../src/questions/size/answer.js';
import { cuptide, emptyFolder } from '../../cli/run.js';

const demo = 'scenarios/1-commuter-bar.yaml';
const folder = emptyFolder();

function sized(file: string, ...options: string[]): Answer {
  const { status, out, err } = cuptide(['size', file, '--json', '--days', '200', ...options]);
  expect(status, err).toBe(0);
  return JSON.parse(out) as Answer;
}

/** The demo with some of its groups replaced. */
function house(name: string, groups: Record<string, unknown>): string {
  const file = join(folder, `${name}.yaml`);
  const own = parse(readFileSync(demo, 'utf8')) as Record<string, unknown>;
  const { alternatives: _, ...rest } = { ...own, ...groups };
  writeFileSync(file, stringify(rest));
  return file;
}

describe('how far the answer moves as habits vary', () => {
  const plain = cuptide(['size', demo, '--json', '--days', '200']).out;
  const asked = sized(demo, '--habits');

  it('adds to the answer and changes nothing in it', () => {
    const { habits, ...rest } = asked;
    expect(habits).toBeDefined();
    // The command that made it is another one, and stands last.
    const told = (text: string): string => text.slice(0, text.indexOf(',"made":'));
    expect(told(JSON.stringify(rest))).toBe(told(plain));
  });

  it('gives the same bytes on one thread and on two', () => {
    const on = (threads: string): string =>
      cuptide(['size', demo, '--json', '--days', '200', '--habits', '--threads', threads]).out;
    expect(on('2')).toBe(on('1'));
  });

  it('holds the answer in every range, and every reading in the range', () => {
    const { stock, cost, habits } = asked.habits!;
    expect(cost.low).toBeLessThanOrEqual(0);
    expect(cost.high).toBeGreaterThanOrEqual(0);
    stock.forEach(({ ware, pieces, low, high }, at) => {
      expect([ware, pieces]).toEqual([asked.stock[at]!.ware, asked.stock[at]!.pieces]);
      expect(low).toBeLessThanOrEqual(pieces);
      expect(high).toBeGreaterThanOrEqual(pieces);
      for (const moved of habits.flatMap(({ less, more }) => [less!, more!])) {
        expect(pieces + moved.pieces[at]!).toBeLessThanOrEqual(high);
        expect(pieces + moved.pieces[at]!).toBeGreaterThanOrEqual(low);
      }
    });
  });

  it('asks about the habits that a house has', () => {
    expect(asked.habits!.habits.map(({ path }) => path)).toEqual([
      'guests.dwell',
      'clearing.every',
      'clearing.trip',
      'washing.partLoadWait',
    ]);
    const machines = [{ class: 'undercounter' }];
    const other = house('other', {
      clearing: 'atOnce',
      washing: {
        machines,
        hands: 1,
        partLoadsEvery: 'about 12 min',
        partLoadWait: 'never',
        partLoadFrom: '90 %',
      },
    });
    const { habits } = sized(other, '--habits').habits!;
    expect(habits.map(({ path }) => path)).toEqual([
      'guests.dwell',
      'washing.partLoadsEvery',
      'washing.partLoadFrom',
    ]);
    // A rack cannot be 108 % full before it goes.
    expect(habits.at(-1)).toMatchObject({ less: {}, more: null });
  });

  it('finds that guests who stay longer need more, and shorter less', () => {
    const [stay] = asked.habits!.habits;
    expect(stay!.less!.cost).toBeLessThan(0);
    expect(stay!.more!.cost).toBeGreaterThan(0);
  });

  it('reads a house that leaves its habits to the reference data', () => {
    const silent = house('silent', {
      clearing: {},
      washing: { machines: [{ class: 'undercounter' }] },
    });
    const { habits } = sized(silent, '--habits').habits!;
    expect(habits.map(({ path }) => path)).toContain('clearing.every');
    expect(habits.map(({ path }) => path)).toContain('washing.partLoadWait');
  });

  it('is refused beside a stock that was given', () => {
    const { status, err } = cuptide(['size', demo, '--habits', '--stock', 'medium-cup=30']);
    expect(status).toBe(2);
    expect(err).toContain('leave out --stock, or --habits');
  });

  it('tells differences, never a second price', () => {
    const { out } = cuptide(['size', demo, '--days', '200', '--habits']);
    const section = out.slice(
      out.indexOf('If habits are a fifth off'),
      out.indexOf('Before you buy'),
    );
    expect(section).toContain('Time between clearing');
    for (const [, sign] of section.matchAll(/(.)€\d/g)) expect(['+', '−']).toContain(sign);
  });
});

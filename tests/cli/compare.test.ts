import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../src/questions/compare/answer.js';
import { idealised, steady } from '../published/scenario-of.js';
import { cuptide, emptyFolder } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';
const text = readFileSync(demo, 'utf8');
const head = text.slice(0, text.indexOf('\nalternatives:'));
const folder = emptyFolder();
/** The demo with some of its alternatives, and others as lines. */
function demoWith(name: string, ids: readonly string[], more: readonly string[] = []): string {
  const file = join(folder, name);
  const lines = text.split('\n').filter((line) => ids.some((id) => line.startsWith(`  ${id}: `)));
  const named = ids.length === 0 ? [] : ['alternatives:', ...lines, ...more];
  writeFileSync(file, [head, ...named, text.slice(text.indexOf('\ncosts:'))].join('\n'));
  return file;
}
/** A purchase, a habit, racks, and two that are no choice. */
const FEW = ['second-machine', 'clear-often', 'racks-apart', 'machine-down', 'busier'];
const few = demoWith('few.yaml', FEW, [
  '  wait-longer: { change: { washing.partLoadWait: about 32 min } }',
]);
const one = demoWith('one.yaml', ['second-machine']);

describe('cuptide compare', () => {
  const out = join(folder, 'told');
  const told = cuptide(['compare', few, '--days', '200', '--all', '--out', out]);
  const comparison = JSON.parse(readFileSync(join(out, 'few.compare.json'), 'utf8')) as Comparison;

  it('gives every alternative a line, a difference with an interval, and the sums of its parts', () => {
    expect(told.status, told.err).toBe(0);
    expect(comparison.alternatives.map(({ id }) => id)).toEqual(['base', ...FEW, 'wait-longer']);
    expect(comparison.ranking.notRanked).toEqual(['machine-down', 'busier']);
    expect(told.out).toMatch(/^To plan for$/m);
    for (const { id, name, now, nowTotal, totalAgainstBase } of comparison.alternatives) {
      expect(told.out.replace(/\s+/g, ' ')).toContain(name);
      expect(Object.values(now).reduce((sum, part) => sum + part, 0)).toBeCloseTo(nowTotal, 6);
      if (id === 'base') expect(totalAgainstBase).toBeNull();
      else {
        expect(totalAgainstBase!.low).toBeLessThanOrEqual(totalAgainstBase!.difference);
        expect(totalAgainstBase!.high).toBeGreaterThanOrEqual(totalAgainstBase!.difference);
      }
    }
    expect(new Set(comparison.ranking.order)).toEqual(
      new Set(comparison.alternatives.map(({ id }) => id)),
    );
    expect(told.out).toMatch(/licensed/);
    expect(readdirSync(out).some((name) => name.endsWith('.svg'))).toBe(true);
  });

  it('recommends a better habit once: what is a part of it is no advice of its own', () => {
    expect(comparison.habits!.said).toBe('cheaper');
    const longer = comparison.alternatives.find(({ id }) => id === 'wait-longer')!;
    expect([longer.said, longer.withinHabits]).toEqual(['cheaper', true]);
    expect(comparison.ranking.best).not.toBe('wait-longer');
    expect(told.out).toMatch(/^First change a habit/m);
    expect(told.out).toMatch(/Wait longer: .*?Changing the habits above already does\s+this\./s);
  });

  // The aim set for the demo: the same guests in every alternative cut the variance of a difference at least 5-fold;
  // an alternative that changes the guests themselves (the busier rush) cannot share them.
  it('gives the same bytes with one thread and with two', () => {
    const on = (threads: string): string =>
      cuptide(['compare', one, '--days', '150', '--json', '--threads', threads]).out;
    expect(on('2')).toBe(on('1'));
  });

  // A rack for each kind changes every load of the day, so days have less in common: the cut is smaller there.
  it('cuts the variance of the difference at least 5-fold where the guests are the same', () => {
    for (const { id, totalAgainstBase } of comparison.alternatives) {
      if (id === 'base' || id === 'busier' || totalAgainstBase!.varianceCut === null) continue;
      expect(totalAgainstBase!.varianceCut, id).toBeGreaterThan(id === 'racks-apart' ? 1 : 5);
    }
  });

  it.each([
    ['changes nothing', 'same: { change: { hours: HOURS } }', /alternatives\.same/],
    [
      'a path that is not there',
      'odd: { change: { clearing.evry: 5 min } }',
      /evry.*did you mean.*every/s,
    ],
    [
      'makes the scenario invalid',
      'odd: { change: { clearing.every: 5 } }',
      /in the alternative odd/,
    ],
    [
      'a cost without a currency',
      'odd: { change: { ware.medium-cup.price: 4 } }',
      /in the alternative odd/,
    ],
    ['another currency', 'odd: { change: { ware.medium-cup.price: 4 USD } }', /USD/],
  ])(
    'refuses an alternative that has %s, in its own line, and writes nothing',
    (_, line, message) => {
      const file = join(folder, 'bad.yaml');
      writeFileSync(
        file,
        `${head}\nalternatives:\n  ${line.replace('HOURS', /^hours: (.+?)(?: +#.*)?$/m.exec(text)![1]!)}\n`,
      );
      const never = join(folder, 'never');
      const { status, out: said, err } = cuptide(['compare', file, '--out', never]);
      expect([status, said], err).toEqual([2, '']);
      expect(err).toMatch(message);
      expect(err).toMatch(new RegExp(`bad\\.yaml:${head.split('\n').length + 2}:\\d+: `));
      expect(existsSync(never)).toBe(false);
    },
  );
});

describe('cuptide compare --map, --uncertainty and --seats', () => {
  const out = join(folder, 'asked');
  const told = cuptide([
    'compare',
    few,
    '--days',
    '100',
    '--map',
    '--uncertainty',
    '10',
    '--out',
    out,
  ]);
  const { map, moves, alternatives } = JSON.parse(
    readFileSync(join(out, 'few.compare.json'), 'utf8'),
  ) as Comparison;

  it('maps machines, their class and rounds, the cheapest point being the least of all', () => {
    expect(told.status, told.err).toBe(0);
    expect(map!.points).toHaveLength(2 * 3 * 5);
    expect(map!.cheapest.total).toBe(Math.min(...map!.points.map(({ total }) => total)));
    for (const { machineClass, clearingMinutes, from, to, stockCost } of map!.machineWorth) {
      const at = (machines: number): number =>
        map!.points.find(
          (point) =>
            point.machineClass === machineClass &&
            point.clearingMinutes === clearingMinutes &&
            point.machines === machines,
        )!.stockCost;
      expect(stockCost).toBeCloseTo(at(from) - at(to), 6);
    }
    // One machine cleared every ten minutes is the demo as written, on the same days.
    expect(
      map!.points.find(
        (point) =>
          point.machineClass === 'undercounter' &&
          point.machines === 1 &&
          point.clearingMinutes === 10,
      ),
    ).toBeDefined();
    expect(told.out).toMatch(/How many pieces another machine saves/);
  });

  it('moves each ranged input of the café alone, the assumed first, and all together', () => {
    const bases = moves!.inputs.map(({ basis }) => basis === 'measured');
    expect(bases).toEqual(bases.toSorted((a, b) => Number(a) - Number(b)));
    const swings = moves!.inputs
      .filter(({ basis }) => basis !== 'measured')
      .map(({ low, high }) => Math.abs(high - low));
    expect(swings).toEqual(swings.toSorted((a, b) => b - a));
    expect(swings[0]).toBeGreaterThan(0);
    expect(moves!.inputs.some(({ path }) => path.startsWith('costs.'))).toBe(false);
    expect(moves!.measureFirst.left).toBeLessThan(moves!.measureFirst.now);
    expect(moves!.draws).toBe(10);
    expect(moves!.spread!.low).toBeLessThan(moves!.spread!.high);
    // Guests who stay in need ware: the more of them, the dearer it is, by hand and by draw.
    const staysIn = moves!.inputs.find(({ path }) => path === 'guests.staysIn')!;
    expect(staysIn.high).toBeGreaterThan(staysIn.low);
    for (const { id, said, chanceCheaper } of alternatives) {
      // Neither the house itself nor what is no choice.
      if (said === null) expect([id, chanceCheaper]).toEqual([id, null]);
      else expect(chanceCheaper!.level * 10).toBeCloseTo(Math.round(chanceCheaper!.level * 10), 9);
    }
    expect(told.out).toMatch(/Measure first: /);
  });

  it('--moves alone draws nothing', () => {
    const {
      status,
      out: text,
      err,
    } = cuptide(['compare', demoWith('none.yaml', []), '--days', '100', '--moves', '--json']);
    expect(status, err).toBe(0);
    const answer = JSON.parse(text) as Comparison;
    expect(answer.moves).toMatchObject({ draws: 0, spread: null });
    expect(answer.map).toBeNull();
  });
});

/**
 * Chance that a loop of this mean (exponential, one guest a minute for 180 minutes) never has more than `most` pieces
 * out: a chain killed on leaving `most`, by uniformization (Jensen 1953). At 25 minutes this must give the published
 * value of shared/checks/exact-peaks.json, so the halved loop may be trusted too.
 */
function staysWithin(most: number, loopMinutes: number): number {
  const fastest = 1 + most / loopMinutes;
  const jumps = fastest * 180;
  let at: number[] = Array.from({ length: most + 1 }, (_, out) => (out === 0 ? 1 : 0));
  let alive = 0;
  for (
    let jump = 0, weight = Math.exp(-jumps);
    jump < jumps + 12 * Math.sqrt(jumps);
    jump++, weight *= jumps / jump
  ) {
    alive += weight * at.reduce((sum, chance) => sum + chance, 0);
    const before = at;
    at = before.map(
      (chance, out) =>
        (chance * (fastest - 1 - out / loopMinutes) +
          (before[out - 1] ?? 0) +
          ((before[out + 1] ?? 0) * (out + 1)) / loopMinutes) /
        fastest,
    );
  }
  return alive;
}

describe('halving the loop of an idealised café', () => {
  const level = 0.94;
  const needed = (loopMinutes: number): number =>
    Array.from({ length: 60 }, (_, stock) => stock).find(
      (stock) => staysWithin(stock, loopMinutes) >= level,
    )!;

  it('saves exactly the cups that the killed chain says', () => {
    expect(staysWithin(40, 25)).toBeCloseTo(0.950731842, 7);
    const guests = {
      partySize: 1,
      staysIn: '100 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { exponential: '25 min' },
    };
    const file = join(folder, 'loop.json');
    writeFileSync(
      file,
      JSON.stringify(
        idealised({
          ...steady(1, 180),
          guests,
          alternatives: { half: { change: { 'guests.dwell': { exponential: '12.5 min' } } } },
        }),
      ),
    );
    const { status, out, err } = cuptide([
      'compare',
      file,
      '--days',
      '4000',
      '--level',
      String(level),
      '--json',
    ]);
    expect(status, err).toBe(0);
    const [base, half] = (JSON.parse(out) as Comparison).alternatives;
    expect([base!.pieces, half!.pieces]).toEqual([needed(25), needed(12.5)]);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { inThisThread } from '../../../src/cafe/runner.js';
import { candidatesOf, type Candidate } from '../../../src/questions/compare/alternatives.js';
import { House } from '../../../src/questions/compare/evaluate.js';
import { compareStudy } from '../../../src/questions/compare/study.js';
import { tellComparison } from '../../../src/questions/compare/tell.js';
import { orderStudy } from '../../../src/questions/order/study.js';
import { meanDayOf } from '../../../src/questions/size/year.js';
import { kindsOf } from '../../../src/scenario/kinds.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario, type ReadResult } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { writeText } from '../../../src/tell/write-text.js';

type Tree = Record<string, unknown>;

const reading = { piecesPerRack: piecesPerRackOf };
const corner = parse(readFileSync('scenarios/4-bakery-corner.yaml', 'utf8')) as Tree;
const often = { 'clear-often': (corner['alternatives'] as Tree)['clear-often'] };

function opened(kinds: Tree | null, changes: Tree = {}): Extract<ReadResult, { ok: true }> {
  const tree = {
    ...corner,
    alternatives: often,
    costs: { ...(corner['costs'] as Tree), daysAYear: kinds === null ? 250 : undefined },
    ...(kinds === null ? {} : { calendar: { kinds } }),
    ...changes,
  };
  const read = readScenario(JSON.stringify(tree), 'corner.json', reading);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
}
function candidates(kinds: Tree | null): readonly Candidate[] {
  const found = candidatesOf(opened(kinds), 'corner.json', reading);
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('\n'));
  return found.all;
}

const weekday = { daysAYear: 250 };
const sunday = {
  name: 'Sundays',
  daysAYear: 52,
  scale: { 'arrivals.peak.guests': '150 %' },
  change: { hours: { from: '08:00', to: '14:00' }, 'guests.staysIn': '60 %' },
};

describe('a comparison of a house with kinds of day', () => {
  const compared = (kinds: Tree | null) =>
    compareStudy(candidates(kinds), inThisThread(), { days: 20, noLevel: true, ...reading });

  it('of one kind is that of the file without kinds, to the byte', async () =>
    expect(JSON.stringify(await compared({ weekday }))).toBe(JSON.stringify(await compared(null))));

  it('takes a year of each kind by its days', async () => {
    const options = { level: 0.95, seed: 'year', partDays: 5, ...reading };
    const yearOf = async (one: Candidate, seed: string, misses: readonly number[]) =>
      (await new House(one, inThisThread(), { ...options, seed }).look(40, misses)).costs.year;
    const [both] = candidates({ weekday, sunday });
    const whole = await yearOf(both!, 'year', [2, 2]);
    const [, other] = kindsOf(both!.scenario);
    const days = [250, 52];
    const parts = [
      await yearOf(candidates({ weekday })[0]!, 'year', [2]),
      // A Sunday by itself has the whole year: its part is 52 days of that.
      await yearOf({ ...both!, scenario: other!.scenario, raw: other!.raw }, 'year/sunday', [2]),
    ];
    for (const part of ['water', 'energy', 'chemicals', 'breakage'] as const)
      expect(whole[part]).toBeCloseTo(
        parts[0]![part] + (parts[1]![part] * days[1]!) / (days[0]! + days[1]!),
        6,
      );
  });

  it('prints which days a year has, and a verdict', async () => {
    const read = opened({ weekday, sunday });
    const comparison = await compareStudy(candidates({ weekday, sunday }), inThisThread(), {
      days: 40,
      noLevel: true,
      ...reading,
    });
    expect(comparison.kinds).toEqual([
      { name: 'Weekday', daysAYear: 250 },
      { name: 'Sundays', daysAYear: 52 },
    ]);
    expect(comparison.daysAYear).toBe(302);
    const text = writeText(
      tellComparison(comparison, contextOf(read.scenario, read.inputs, '0', piecesPerRackOf)),
      { width: 200, all: true },
    ).replaceAll('\n', ' ');
    expect(text).toContain(
      '302 days a year: 250 of the kind “Weekday” and 52 of the kind “Sundays”',
    );
  });
});

describe('an order for a house with kinds of day', () => {
  it('has the par that holds on all, and takeaway cups as the year has them', async () => {
    const takeaway = { cups: { cup: { drinks: Object.keys(corner['menu'] as Tree), sleeve: 50 } } };
    const { scenario } = opened({ weekday, sunday }, { supply: { takeaway } });
    const found = await orderStudy(scenario, inThisThread(), {
      days: 60,
      date: '2027-01-04',
      loadSolver: null,
    });
    if (!found.ok) throw new Error(found.problems.map(({ rule }) => rule).join('\n'));
    const { answer, sheet } = found.value;
    expect(sheet.lines.map(({ par }) => par)).toEqual(answer.stock.map(({ pieces }) => pieces));
    const week = (302 / 52) * meanDayOf(answer).drinks.takeawayDrinks;
    expect(sheet.takeaway[0]!.aWeek / week).toBeCloseTo(1, 1);
  });
});

import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { candidatesOf } from '../../src/questions/compare/alternatives.js';
import { calendarOf } from '../../src/scenario/calendar.js';
import { edited } from '../../src/scenario/edited.js';
import { kindsOf, sharesOf } from '../../src/scenario/kinds.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { scaled, rawValueAt, withRawValue } from '../../src/scenario/raw-paths.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

type Tree = Record<string, unknown>;

const corner = parse(readFileSync('scenarios/4-bakery-corner.yaml', 'utf8')) as Tree;
const { daysAYear: _, ...costs } = corner['costs'] as Tree;

const read = (kinds: unknown, changes: Tree = {}) =>
  readScenario(
    JSON.stringify({ ...corner, costs, calendar: { kinds }, ...changes }, null, 1),
    'corner.json',
    { piecesPerRack: piecesPerRackOf },
  );
const scenarioOf = (kinds: unknown, changes: Tree = {}) => {
  const found = read(kinds, changes);
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('\n'));
  return found;
};
const problemsOf = (kinds: unknown, changes: Tree = {}) => {
  const found = read(kinds, changes);
  return found.ok ? [] : found.problems;
};

const weekday = { daysAYear: 250 };
const sunday = {
  name: 'Sundays',
  daysAYear: 52,
  scale: { 'arrivals.peak.guests': '130 %' },
  change: { hours: { from: '09:00', to: '14:00' }, 'guests.staysIn': '60 %' },
};

describe('kinds of day', () => {
  it('are scenarios of their own, the file itself first, and make the year', () => {
    const { scenario } = scenarioOf({ sunday, weekday });
    expect(calendarOf(scenario).daysAYear).toBe(302);
    expect(kindsOf(scenario).map(({ id, name, daysAYear }) => [id, name, daysAYear])).toEqual([
      ['weekday', 'Weekday', 250],
      ['sunday', 'Sundays', 52],
    ]);
    expect(sharesOf(kindsOf(scenario))).toEqual([250 / 302, 52 / 302]);
    const [own, other] = kindsOf(scenario);
    expect(own!.scenario.guests).toEqual(scenario.guests);
    expect(other!.scenario.guests.staysIn).toBe(0.6);
    expect(other!.scenario.ware).toEqual(scenario.ware);
    expect(other!.scenario.kinds).toBeUndefined();
  });

  it('are all changed by what is tried in the house', () => {
    const { scenario, raw, inputs } = scenarioOf({ weekday, sunday });
    const house = { scenario, inputs, raw: scenario.kinds![0]!.raw ?? raw };
    const busier = edited(
      house,
      (one) => withRawValue(one.raw, ['arrivals'], scaled(rawValueAt(one.raw, ['arrivals']), 2)),
      'corner.json',
      { piecesPerRack: piecesPerRackOf },
    );
    if (busier === null || !busier.ok) throw new Error('the house could not be changed');
    const rates = (of: typeof scenario) =>
      kindsOf(of).map((kind) => rawValueAt(kind.raw, ['arrivals', 'peak', 'guests']));
    expect(rates(scenario)).toEqual(['20 / h', '26 / h']);
    expect(rates(busier.scenario)).toEqual(['40 / h', '52 / h']);
  });

  it('meet every alternative alike', () => {
    const found = candidatesOf(scenarioOf({ weekday, sunday }), 'corner.json', {
      piecesPerRack: piecesPerRackOf,
    });
    if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('\n'));
    const often = found.all.find(({ id }) => id === 'clear-often')!;
    for (const { scenario } of kindsOf(often.scenario))
      expect(scenario.clearing).toMatchObject({ every: { meanMs: 300_000 } });
  });

  it.each([
    [{ weekday }, { costs: { ...costs, daysAYear: 250 } }, []],
    [
      { weekday, sunday },
      { costs: { ...costs, daysAYear: 250 } },
      ['calendar.kinds', 'costs.daysAYear'],
    ],
    [
      { weekday, sunday },
      { supply: { openDaysAWeek: 7 } },
      ['calendar.kinds', 'supply.openDaysAWeek'],
    ],
    [{ weekday, sunday: { ...sunday, daysAYear: 152 } }, {}, ['calendar.kinds']],
    [{ sunday }, {}, ['calendar.kinds']],
    [{ weekday, saturday: { daysAYear: 50 } }, {}, ['calendar.kinds.saturday']],
    [{ weekday: {} }, {}, ['calendar.kinds.weekday.daysAYear']],
    [
      { weekday, sunday: { daysAYear: 52, change: { 'ware.cup.price': '3 GBP' } } },
      {},
      ['calendar.kinds.sunday.change.ware.cup.price'],
    ],
    [
      { weekday, sunday: { daysAYear: 52, scale: { 'arrivals.peek.guests': 2 } } },
      {},
      ['calendar.kinds.sunday.scale.arrivals.peek.guests'],
    ],
    [
      {
        weekday,
        sunday: { daysAYear: 52, change: { 'washing.machines[1]': { class: 'undercounter' } } },
      },
      {},
      ['calendar.kinds.sunday'],
    ],
    [{ weekday, sunday: { daysAYear: 52, change: { 'seats.count': -3 } } }, {}, ['seats.count']],
  ] as const)('%j with %j: wrong at %j', (kinds, changes, paths) => {
    const found = problemsOf(kinds, changes);
    expect(found.map(({ path }) => path).toSorted()).toEqual([...paths].toSorted());
    for (const { line, message } of found) {
      expect(line).toBeGreaterThan(1);
      expect(message.length).toBeGreaterThan(20);
    }
  });
});

/** What of a scenario's supply and storage is wrong before any day is run: all of it at once. */
import type { Fault, Outcome } from '../../quantities/flaw.js';
import { readSupply } from '../../ordering/read-supply.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { storageProblems } from '../../ordering/storage.js';
import { takeawayProblems } from '../../ordering/takeaway.js';
import { calendarOf } from '../../scenario/calendar.js';
import type { Scenario } from '../../scenario/scenario.js';

/** The supply slice without units, open as many days as the calendar says; what the house has counts as on hand. */
export function supplyOf(scenario: Scenario): Outcome<SupplyModel> {
  const { supply = {}, currency, staffHour, ware, have } = scenario;
  return readSupply(
    {
      ...supply,
      openDaysAWeek: calendarOf(scenario).daysAWeek,
      onHand: { ...have?.ware, ...supply.onHand },
    },
    {
      currency,
      staffHourMinor: staffHour.minor,
      ware: Object.entries(ware).map(([id, { mass }]) => ({ id, massG: mass ?? null })),
    },
  );
}

/** Problems of supply, takeaway cups and storage; how many pieces there are is not known yet. */
export function orderFlaws(scenario: Scenario): readonly Fault[] {
  const supply = supplyOf(scenario);
  const takeaway = scenario.supply?.takeaway;
  const stored = Object.entries(scenario.ware).map(([id, { rim, foot }]) => ({
    id,
    name: id,
    par: Number.POSITIVE_INFINITY,
    diameterMm: rim ?? foot ?? null,
    handleMm: 0,
    massG: null,
    onMachine: false,
    warmth: 0,
    peakUsesPerHour: 0,
  }));
  return [
    ...(supply.ok ? [] : supply.problems),
    ...(takeaway === undefined ? [] : takeawayProblems(takeaway, Object.keys(scenario.menu))),
    ...(scenario.storage === undefined ? [] : storageProblems(scenario.storage, stored)),
  ];
}

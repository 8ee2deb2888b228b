/** The steps of a rush that take time, and how long. */
import type { DurationLaw } from '../engine/durations.js';
import type { Path } from './path.js';
import type { Scenario } from './scenario.js';

/** Mean of a law of durations, ms. */
export function meanOfLaw(law: DurationLaw): number {
  switch (law.law) {
    case 'constant':
      return law.ms;
    case 'measured':
      return law.valuesMs.reduce((sum, ms) => sum + ms, 0) / law.valuesMs.length;
    default:
      return law.meanMs;
  }
}

/** Standard deviation of a law that is given by one, ms; 0 for others. */
export const spreadOf = (law: DurationLaw): number =>
  law.law === 'lognormal' || law.law === 'gamma' ? law.sdMs : 0;

/** The largest figure a law is given by, ms. */
export const spanOf = (law: DurationLaw): number =>
  law.law === 'measured'
    ? law.valuesMs.reduce((most, ms) => Math.max(most, ms), 0)
    : Math.max(meanOfLaw(law), spreadOf(law));

/** Length of the rush, ms. */
export const openMs = ({ hours }: Scenario): number =>
  'for' in hours ? hours.for : hours.to - hours.from;

const constant = (ms: number): DurationLaw => ({ law: 'constant', ms });

/** Every step by its path: making, staying, drying, trips, loading, cycles. */
export function stepsOf(scenario: Scenario): (readonly [Path, DurationLaw])[] {
  const { menu, ware, guests, counter, clearing, washing, seats } = scenario;
  const machines = Array.isArray(washing.machines)
    ? washing.machines.map((machine, i) => [['washing', 'machines', i], machine] as const)
    : [[['washing', 'machines', 'unlimited'], washing.machines.unlimited] as const];
  const steps: (readonly [Path, DurationLaw | undefined])[] = [
    [['counter', 'making'], counter.making],
    ...guests.dwell.map((law) => [['guests', 'dwell'], law] as const),
    ...Object.entries(menu).map(([id, { making }]) => [['menu', id, 'making'], making] as const),
    ...Object.entries(ware).flatMap(([id, { drying, polishing }]) => [
      [['ware', id, 'drying'], drying] as const,
      [['ware', id, 'polishing'], polishing] as const,
    ]),
    [['seats', 'waitLimit'], constant(seats.waitLimit)],
    ...(clearing === 'atOnce' ? [] : [[['clearing', 'trip'], clearing.trip] as const]),
    ...machines.flatMap(([path, { loading, cycle, unloading, warmUp }]) => [
      [[...path, 'loading'], loading] as const,
      [[...path, 'cycle'], cycle] as const,
      [[...path, 'unloading'], unloading] as const,
      [[...path, 'warmUp'], warmUp === undefined ? undefined : constant(warmUp)] as const,
    ]),
  ];
  return steps.flatMap(([path, law]) => (law === undefined ? [] : [[path, law] as const]));
}

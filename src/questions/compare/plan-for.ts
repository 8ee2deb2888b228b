/**
 * What comes over a house rather than what it chooses: other guests, a machine that stands still, food that goes through the
 * machine, or other people at work, whose wages are not in the money. Such a change has no verdict of money; what is reported is
 * what it needs.
 */
import type { Scenario } from '../../scenario/scenario.js';

/** Who comes and what they order. How long they stay is left out: a house may set that. */
const demandOf = ({ arrivals, hours, guests, menu }: Scenario): unknown => [
  arrivals,
  hours,
  { ...guests, dwell: null },
  Object.entries(menu).map(([id, { share }]) => [id, share]),
];

/** When machines stand still, and other loads that they take. */
const hindrancesOf = ({ washing }: Scenario): unknown => [
  Array.isArray(washing.machines) ? washing.machines.flatMap(({ down }) => down ?? []) : [],
  washing.otherLoads,
];

const peopleOf = ({ counter, clearing, washing }: Scenario): unknown => [
  counter.makers,
  clearing === 'atOnce' ? null : clearing.clearers,
  washing.hands,
];

/** @param priced the alternative names money of its own, which may be wages */
export function isToPlanFor(base: Scenario, other: Scenario, priced: boolean): boolean {
  const differs = (of: (scenario: Scenario) => unknown): boolean =>
    JSON.stringify(of(base)) !== JSON.stringify(of(other));
  return differs(demandOf) || differs(hindrancesOf) || (!priced && differs(peopleOf));
}

/**
 * Shares that differ by time of day: who stays in, and what is ordered. Each may be one share for the whole
 * day, or steps of its own; a party has those of its arrival.
 */
import { arrivalSteps, closingMs } from './arrivals.js';
import type { Scenario } from './scenario.js';

/** Shares that hold from the step before until a moment, ms from opening. */
export interface SharesStep {
  readonly untilMs: number;
  readonly staysIn: number;
  /** By drink of the menu. */
  readonly menu: Readonly<Record<string, number>>;
}

type Steps = readonly { readonly untilMs: number; readonly share: number }[];

const stepsOf = (
  value: number | readonly { readonly for: number; readonly share: number }[],
): Steps => {
  if (typeof value === 'number') return [{ untilMs: Infinity, share: value }];
  let untilMs = 0;
  return value.map((step) => ({ untilMs: (untilMs += Math.round(step.for)), share: step.share }));
};

/** The share at a moment; the last one holds to the end. */
const at = (steps: Steps, ms: number): number =>
  (steps.find(({ untilMs }) => ms < untilMs) ?? steps.at(-1)!).share;

/** Every part of the day in which no share changes; null where none changes at all. */
export function sharesByTime(scenario: Scenario): SharesStep[] | null {
  const { guests, menu } = scenario;
  const staysIn = stepsOf(
    typeof guests.staysIn === 'number'
      ? guests.staysIn
      : guests.staysIn.map((step) => ({ for: step.for, share: step.staysIn })),
  );
  const drinks = Object.entries(menu).map(([id, { share }]) => [id, stepsOf(share)] as const);
  const closing = closingMs(scenario);
  const ends = [staysIn, ...drinks.map(([, steps]) => steps)].flatMap((steps) =>
    steps.map(({ untilMs }) => Math.min(untilMs, closing)),
  );
  const moments = [...new Set(ends)].toSorted((a, b) => a - b);
  if (moments.length < 2) return null;
  return moments.map((untilMs, i) => {
    const from = moments[i - 1] ?? 0;
    return {
      untilMs,
      staysIn: at(staysIn, from),
      menu: Object.fromEntries(drinks.map(([id, steps]) => [id, at(steps, from)])),
    };
  });
}

/** Mean of what `of` reads off the steps, over expected parties (over time, where none are expected). */
function meanOver(
  scenario: Scenario,
  steps: readonly SharesStep[],
  of: (step: SharesStep) => number,
): number {
  const arrivals = arrivalSteps(scenario);
  const upTo = (ms: number): number =>
    arrivals.reduce((sum, { untilMs, partiesPerMs }, i) => {
      const from = arrivals[i - 1]?.untilMs ?? 0;
      return sum + partiesPerMs * Math.max(0, Math.min(ms, untilMs) - from);
    }, 0);
  const all = upTo(Infinity);
  const weights = steps.map(({ untilMs }, i) => {
    const from = steps[i - 1]?.untilMs ?? 0;
    return all > 0 ? upTo(untilMs) - upTo(from) : untilMs - from;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return steps.reduce((sum, step, i) => sum + weights[i]! * of(step), 0) / total;
}

/** Share of parties that stay in, over the whole day. */
export function meanStaysIn(scenario: Scenario): number {
  const { staysIn } = scenario.guests;
  const steps = sharesByTime(scenario);
  if (typeof staysIn === 'number') return staysIn;
  return steps === null ? staysIn[0]!.staysIn : meanOver(scenario, steps, (step) => step.staysIn);
}

/** Share of drinks ordered, by drink of the menu, over the whole day. */
export function meanShares(scenario: Scenario): Record<string, number> {
  const steps = sharesByTime(scenario);
  return Object.fromEntries(
    Object.entries(scenario.menu).map(([id, { share }]) => [
      id,
      typeof share === 'number'
        ? share
        : steps === null
          ? share[0]!.share
          : meanOver(scenario, steps, ({ menu }) => menu[id]!),
    ]),
  );
}

/** The menu with one share for each drink. */
export function meanMenu(
  scenario: Scenario,
): Record<string, Scenario['menu'][string] & { share: number }> {
  const shares = meanShares(scenario);
  return Object.fromEntries(
    Object.entries(scenario.menu).map(([id, drink]) => [id, { ...drink, share: shares[id]! }]),
  );
}

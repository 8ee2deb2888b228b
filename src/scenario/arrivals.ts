/** When guests are expected: the forms a scenario may give it in, as steps of a rate from opening. */
import type { ArrivalStep } from '../cafe/model.js';
import type { Scenario } from './scenario.js';

/** Length of the rush, ms. */
export const closingMs = ({ hours }: Scenario): number =>
  'from' in hours ? hours.to - hours.from : Math.round(hours.for);

/** Steps of a rate over the hours; the last ends at closing. */
export function stepped(
  steps: readonly { readonly for: number; readonly rate: number }[],
  closing: number,
): { untilMs: number; rate: number }[] {
  let until = 0;
  return steps.map((step, i) => {
    until = i === steps.length - 1 ? closing : until + Math.round(step.for);
    return { untilMs: until, rate: step.rate };
  });
}

/**
 * Weight in the busiest hour (or the whole rush, if shorter) of a rate that is constant in equal
 * slots. The window that holds most begins or ends at a slot's boundary.
 */
function busiestHour(shape: readonly number[], slotMs: number, windowMs: number): number {
  const ends = shape.map((_, i) => (i + 1) * slotMs);
  const upTo = (ms: number): number =>
    shape.reduce(
      (sum, weight, i) => sum + (weight * Math.min(Math.max(ms - i * slotMs, 0), slotMs)) / slotMs,
      0,
    );
  const last = ends.at(-1)! - windowMs;
  const starts = [0, last, ...ends, ...ends.map((end) => end - windowMs)].filter(
    (start) => start >= 0 && start <= last,
  );
  return Math.max(...starts.map((start) => upTo(start + windowMs) - upTo(start)));
}

/** Expected parties over the hours, from whichever form the scenario gives them in. */
export function arrivalSteps(scenario: Scenario): ArrivalStep[] {
  const closing = closingMs(scenario);
  const { partySize } = scenario.guests;
  const { slots, steps, peak } = scenario.arrivals;
  if (slots)
    return stepped(
      slots.parties.map((parties) => ({
        for: slots.every,
        rate: parties / Math.round(slots.every),
      })),
      closing,
    ).map(toStep);
  if (steps)
    return stepped(
      steps.map((step) => ({ for: step.for, rate: step.parties })),
      closing,
    ).map(toStep);
  const { guests, shape } = peak!;
  const slotMs = closing / shape.length;
  const windowMs = Math.min(3_600_000, closing);
  const meanSize = partySize.reduce((sum, share, i) => sum + share * (i + 1), 0);
  // Guests a weight of one stands for, so that the busiest hour has `guests` an hour.
  const perWeight = (guests * windowMs) / busiestHour(shape, slotMs, windowMs);
  return shape.map((weight, i) => {
    const untilMs = Math.round((i + 1) * slotMs);
    const lengthMs = untilMs - Math.round(i * slotMs);
    return {
      untilMs,
      partiesPerMs: lengthMs === 0 ? 0 : (weight * perWeight) / meanSize / lengthMs,
    };
  });
}

const toStep = ({ untilMs, rate }: { untilMs: number; rate: number }): ArrivalStep => ({
  untilMs,
  partiesPerMs: rate,
});

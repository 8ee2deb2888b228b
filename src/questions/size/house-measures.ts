/** A few measures of the house as a whole, for boxes that change all of a law or a curve at once. */
import type { CafeModel } from '../../cafe/model.js';
import { meanMs } from '../../engine/durations.js';

const HOUR = 3_600_000;

/** Mean guests of a party. */
const guestsAParty = ({ partySize }: CafeModel['guests']): number =>
  partySize.reduce((sum, weight, index) => sum + weight * (index + 1), 0);

/** Guests expected in the busiest hour that begins with a step of the arrivals; a shorter rush counts whole. */
export function busiestHour({ arrivals, guests }: CafeModel): number {
  const partiesUntil = (ms: number): number => {
    let [sum, from] = [0, 0];
    for (const { untilMs, partiesPerMs } of arrivals) {
      sum += Math.max(0, Math.min(untilMs, ms) - from) * partiesPerMs;
      from = untilMs;
    }
    return sum;
  };
  const starts = [0, ...arrivals.map(({ untilMs }) => untilMs)];
  const most = Math.max(...starts.map((at) => partiesUntil(at + HOUR) - partiesUntil(at)));
  return most * guestsAParty(guests);
}

/** Mean stay of a guest with drinks before them, in minutes: by guest, not by party. */
export function meanStayMinutes({ guests }: CafeModel): number {
  const { partySize, dwell } = guests;
  const minutes = partySize.reduce((sum, weight, index) => {
    const law = dwell[Math.min(index, dwell.length - 1)];
    return law === undefined ? sum : sum + (weight * (index + 1) * meanMs(law)) / 60_000;
  }, 0);
  return minutes / guestsAParty(guests);
}

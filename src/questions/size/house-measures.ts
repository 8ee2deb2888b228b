/** A few measures of the house as a whole, for boxes that change all of a law or a curve at once. */
import type { CafeModel } from '../../cafe/model.js';
import { meanMs } from '../../engine/durations.js';

const HOUR = 3_600_000;
const QUARTER = HOUR / 4;

/** Mean guests of a party. */
const guestsAParty = ({ partySize }: CafeModel['guests']): number =>
  partySize.reduce((sum, weight, index) => sum + weight * (index + 1), 0);

/** Parties expected from one moment to another, ms from opening. */
function partiesBetween(arrivals: CafeModel['arrivals'], fromMs: number, toMs: number): number {
  let [sum, start] = [0, 0];
  for (const { untilMs, partiesPerMs } of arrivals) {
    sum += Math.max(0, Math.min(untilMs, toMs) - Math.max(start, fromMs)) * partiesPerMs;
    start = untilMs;
  }
  return sum;
}

/** Guests expected in the busiest hour that begins with a step of the arrivals; a shorter rush counts whole. */
export function busiestHour({ arrivals, guests }: CafeModel): number {
  const starts = [0, ...arrivals.map(({ untilMs }) => untilMs)];
  const most = Math.max(...starts.map((at) => partiesBetween(arrivals, at, at + HOUR)));
  return most * guestsAParty(guests);
}

/** A house at a glance: what a small picture of it shows. */
export interface Glance {
  /** Guests expected in each quarter of an hour from opening, to a tenth. */
  readonly guestsAQuarter: readonly number[];
  /** null: as many as are needed. */
  readonly seats: number | null;
  readonly machines: number | null;
  readonly busiestHour: number;
}

export function glanceAt(model: CafeModel): Glance {
  const { arrivals, guests, seats, washing } = model;
  const end = arrivals.at(-1)?.untilMs ?? 0;
  const quarters = Array.from({ length: Math.ceil(end / QUARTER) }, (_, i) =>
    Math.round(
      10 * partiesBetween(arrivals, i * QUARTER, (i + 1) * QUARTER) * guestsAParty(guests),
    ),
  );
  return {
    guestsAQuarter: quarters.map((tenths) => tenths / 10),
    seats: seats.count,
    machines: washing.machines?.length ?? null,
    busiestHour: busiestHour(model),
  };
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

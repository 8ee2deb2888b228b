/**
 * The morning that makes the case: a day that about one in twenty reaches, moment by moment, with where
 * the pieces of the scarcest ware are against the stock. Counts of one simulated day, nothing averaged.
 */
import {
  BENCH,
  CARRIED,
  DIRTY_TABLE,
  DRYING,
  IN_USE,
  PLACE_COUNT,
  POLISHING,
  RACKED,
  WASHING,
} from '../../cafe/places.js';
import type { DayWalk } from './day.js';

/** Places as a reader sees them, from the table round to the shelf. */
const STAGES = [
  [IN_USE],
  [DIRTY_TABLE, CARRIED],
  [BENCH, RACKED],
  [WASHING, DRYING, POLISHING],
] as const;

export interface TightMorning {
  readonly day: number;
  readonly ware: string;
  readonly stock: number;
  /** Pieces with guests, dirty and on their way, waiting to be washed, washed and dried; at each moment. */
  readonly moments: readonly {
    readonly minute: number;
    readonly counts: readonly [number, number, number, number];
  }[];
  /** Minute at which fewest are left on the shelf, and how many those are. */
  readonly tightest: { readonly minute: number; readonly left: number };
}

/** Moments kept two minutes apart at least; the tightest is always among them. */
const LEAST_GAP_MS = 120_000;

/** @param ware id of the ware to follow; one that is not there: the scarcest */
export function tightMorning(walk: DayWalk, ware: string): TightMorning {
  const found = walk.wares.indexOf(ware);
  const index = found < 0 ? walk.scarcest : found;
  const countsAt = (moment: number): TightMorning['moments'][number]['counts'] => {
    const start = (moment * walk.wares.length + index) * PLACE_COUNT;
    const [inUse, dirty, waiting, washed] = STAGES.map((places) =>
      places.reduce((sum, place) => sum + walk.counts[start + place]!, 0),
    );
    return [inUse!, dirty!, waiting!, washed!];
  };
  const offAt = (moment: number): number => countsAt(moment).reduce((sum, one) => sum + one, 0);
  let tightest = 0;
  for (let moment = 0; moment < walk.times.length; moment += 1)
    if (offAt(moment) > offAt(tightest)) tightest = moment;
  const moments: TightMorning['moments'][number][] = [];
  let [last, before] = [-Infinity, ''];
  for (let moment = 0; moment < walk.times.length; moment += 1) {
    const counts = countsAt(moment);
    const key = counts.join(' ');
    const isEnd = moment === walk.times.length - 1;
    if (
      moment !== tightest &&
      !isEnd &&
      (key === before || walk.times[moment]! - last < LEAST_GAP_MS)
    )
      continue;
    moments.push({ minute: walk.times[moment]! / 60_000, counts });
    [last, before] = [walk.times[moment]!, key];
  }
  const stock = walk.stock[index]!;
  return {
    day: walk.day,
    ware: walk.wares[index]!,
    stock,
    moments,
    tightest: { minute: walk.times[tightest]! / 60_000, left: stock - offAt(tightest) },
  };
}

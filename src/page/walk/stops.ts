/** The stops on a piece's way round, as a walk shows them, and what a moment is about in words. */
import type { Formats } from '../../tell/format.js';
import * as english from '../../tell/english.js';
import type { Words } from '../../tell/words.js';
import type { DayWalk } from '../../questions/walk/day.js';
import { piecesAt, type Moment } from './moment.js';

export type Stop = keyof Words['walk']['stops'];
/** Stops at which pieces are on their way back to the shelf. */
export type BackStop = keyof Words['walk']['within'];

/** Places by number, in the order in which a walk names them. */
const PLACE = {
  shelf: 0,
  inUse: 1,
  dirty: 2,
  carried: 3,
  bench: 4,
  racked: 5,
  machine: 6,
  drying: 7,
  polishing: 8,
} as const;
const BACK: readonly BackStop[] = ['dirty', 'carried', 'bench', 'machine', 'drying', 'polishing'];

export type StopCounts = Readonly<Record<Stop, number>>;

/** Every ware together. */
export const ALL = -1;

/** Pieces of a ware, or of all, at each stop. */
export function stopCounts(walk: DayWalk, moment: Moment, follow: number): StopCounts {
  const wares = follow === ALL ? walk.wares.map((_, ware) => ware) : [follow];
  const at = (place: number): number =>
    wares.reduce((sum, ware) => sum + piecesAt(walk, moment.index, ware, place), 0);
  let guests = 0;
  for (const { party, dirty, pieces } of moment.tables) {
    if (!dirty)
      for (const piece of pieces) if (follow === ALL || party.ware[piece] === follow) guests += 1;
  }
  return {
    shelf: at(PLACE.shelf),
    making: at(PLACE.inUse) - guests,
    guests,
    dirty: at(PLACE.dirty),
    carried: at(PLACE.carried),
    bench: at(PLACE.bench) + at(PLACE.racked),
    machine: at(PLACE.machine),
    drying: at(PLACE.drying),
    polishing: at(PLACE.polishing),
  };
}

/** Where most of the pieces on their way back are; null: none is on its way back. */
export function mostAt(counts: StopCounts): BackStop | null {
  const most = BACK.reduce((best, stop) => (counts[stop] > counts[best] ? stop : best));
  return counts[most] === 0 ? null : most;
}

export const stockOf = (walk: DayWalk, follow: number): number =>
  follow === ALL ? walk.stock.reduce((sum, pieces) => sum + pieces, 0) : walk.stock[follow]!;

/** To the nearest minute, as the letter tells the time: the same moment has the same time in both. */
export const minuteOf = (ms: number): number => Math.round(ms / 60_000);

/** Share of the stock on the shelf from which a ware counts as scarce. */
const SCARCE = 0.25;

/** Where a scarce ware is stuck: the stop on the way back that holds most of it; null while there is enough on the shelf. */
export function stuckAt(counts: StopCounts, stock: number): BackStop | null {
  return counts.shelf <= SCARCE * stock ? mostAt(counts) : null;
}

/** One line on what is happening: the time, the ware followed, where most of it waits, what is short. */
export function tell(
  walk: DayWalk,
  moment: Moment,
  follow: number,
  name: (ware: number) => string,
  formats: Formats,
): string {
  const say = english.walk;
  const { count } = formats;
  const ms = walk.times[moment.index]!;
  const minute = minuteOf(ms);
  const counts = stopCounts(walk, moment, follow);
  const [what, stock] = [follow === ALL ? say.allWare : name(follow), count(stockOf(walk, follow))];
  const most = mostAt(counts);
  const short = walk.shortages.filter((shortage) => shortage.moment <= moment.index);
  const lacking = [
    ...new Set(
      short.filter((shortage) => shortage.moment === moment.index).map(({ ware }) => name(ware)),
    ),
  ];
  return [
    ms > walk.closingMs
      ? say.closed(formats.clock(minute))
      : say.now(formats.clock(minute), count(Math.floor(minute / 60)), count(minute % 60)),
    counts.shelf === 0
      ? say.shelfBare(what, stock)
      : say.shelfSentence(what, count(counts.shelf), stock),
    say.guestsSentence(count(counts.guests + counts.making)),
    most === null
      ? say.allClean
      : say.mostSentence(
          count(BACK.reduce((sum, stop) => sum + counts[stop], 0)),
          count(counts[most]),
          say.within[most],
        ),
    ...lacking.map(say.shortNow),
    ...(short.length > 0
      ? [
          say.shortSentence(
            count(short.length),
            formats.clock(minuteOf(walk.times[walk.firstShortIndex]!)),
          ),
        ]
      : []),
  ].join(' ');
}

/** What the days run say of the rush: how busy, how many guests, loads, loops; means a day. */
import { PLACE_COUNT } from '../../cafe/places.js';
import type { DaysRun } from '../../cafe/rush.js';
import type { CafeModel } from '../../cafe/model.js';
import type { ShareInterval } from '../../statistics/exact-binomial-interval.js';
import type { Answer } from './answer.js';

const MINUTE = 60_000;

export type RushFacts = Pick<
  Answer,
  | 'busy'
  | 'guests'
  | 'seats'
  | 'seatsHeldBusiest'
  | 'minutes'
  | 'loads'
  | 'uses'
  | 'drinks'
  | 'takeawayCups'
> & {
  /** Share of parties' guests who sit down, of those who stay at all. */
  readonly houseShare: number;
};

export function rushFacts(model: CafeModel, run: DaysRun, level: number): RushFacts {
  const { sums, days } = run;
  const open = days * model.closingMs;
  const share = (busyMs: number, count: number | null): number | null =>
    count === null ? null : busyMs / (open * count);
  const { hands, machines } = model.washing;
  const people =
    hands === 'makers' ? model.makers : hands === 'clearers' ? model.clearing.clearers : hands;
  const stayed = sums.guestsSeated + sums.guestsTookAway + sums.guestsTakeawayInstead;
  return {
    houseShare: stayed === 0 ? 0 : sums.guestsSeated / stayed,
    busy: {
      machines: share(sums.machineMs, machines?.length ?? null),
      makers: share(sums.makerMs, model.makers),
      seats: share(sums.seatMs, model.seats.count),
      clearers:
        model.clearing.every === null ? null : share(sums.clearerMs, model.clearing.clearers),
      hands: share(sums.handMs, people),
    },
    guests: {
      served: stayed / days,
      turnedAway: (sums.guestsLeft + sums.guestsTakeawayInstead) / days,
      left: sums.guestsLeft / days,
      takeawayInstead: sums.guestsTakeawayInstead / days,
      seated: sums.guestsSeated / days,
      tookAway: sums.guestsTookAway / days,
      parts: {
        servedInHouse: sums.guestsSeated / days,
        tookAwayAsPlanned: sums.guestsTookAway / days,
        tookAwayForWantOfSeat: sums.guestsTakeawayInstead / days,
        left: sums.guestsLeft / days,
      },
      arrived: (stayed + sums.guestsLeft) / days,
    },
    seats: model.seats.count,
    seatsHeldBusiest: model.seats.count === null ? null : seatsHeldBusiest(run),
    minutes: {
      counterWait: sums.drinksStarted === 0 ? 0 : sums.waitedMs / sums.drinksStarted / MINUTE,
      loop: model.ware.map(({ id }, ware) => {
        const pieceMs = run.pieceMs.subarray(ware * PLACE_COUNT + 1, (ware + 1) * PLACE_COUNT);
        const places = Array.from(pieceMs, (ms) =>
          run.uses[ware] === 0 ? 0 : ms / run.uses[ware]! / MINUTE,
        );
        return { ware: id, minutes: places.reduce((sum, minutes) => sum + minutes, 0), places };
      }),
    },
    loads: {
      aDay: sums.loads / days,
      racksADay: sums.ownRacks / days,
      fill: sums.ownRacks === 0 ? 0 : sums.fillPermille / sums.ownRacks / 1000,
      handlingMinutes: sums.handlingMs / days / MINUTE,
      polishingMinutes: sums.polishMs / days / MINUTE,
      racksNeeded: model.rackKinds.map(({ id }, kind) => ({
        kind: id,
        racks: racksAtLevel(run, model.rackKinds.length, kind, level),
      })),
    },
    uses: model.ware.map(({ id }, ware) => ({ ware: id, aDay: run.uses[ware]! / days })),
    drinks: { houseDrinks: sums.houseDrinks / days, takeawayDrinks: sums.takeawayDrinks / days },
    takeawayCups: {
      ordered: sums.takeawayDrinks / days,
      asFallBack: sums.paperFallBacks / days,
      byDrink: model.menu.map(({ id }, kind) => ({
        drink: id,
        ordered: run.away[kind]! / days,
        asFallBack: run.paper[kind]! / days,
      })),
    },
  };
}

/** Share of the seats held in the fullest quarter hour, mean over the tenth of days with most guests. */
function seatsHeldBusiest({ days, guestsAtDoor, seatPermille }: DaysRun): number {
  const busiest = Array.from({ length: days }, (_, day) => day)
    .toSorted((a, b) => guestsAtDoor[b]! - guestsAtDoor[a]! || a - b)
    .slice(0, Math.ceil(days / 10));
  return busiest.reduce((sum, day) => sum + seatPermille[day]!, 0) / busiest.length / 1000;
}

/** Racks of a kind that are enough on a share `level` of days. */
export function racksAtLevel(run: DaysRun, kinds: number, kind: number, level: number): number {
  const most = Array.from(
    { length: run.days },
    (_, day) => run.rackPeaks[day * kinds + kind]!,
  ).sort((a, b) => a - b);
  return most[Math.min(run.days - 1, Math.ceil(level * run.days - 1e-9) - 1)]!;
}

/** What is stated beside a given stock; an entry a day where days are listed. */
export function byDayOf(
  model: CafeModel,
  run: DaysRun,
  safe: ShareInterval,
  listed: boolean,
): Partial<Answer> {
  const shortDays = run.byDay
    .filter(({ firstShortMs }) => firstShortMs >= 0)
    .map(({ firstShortMs }) => firstShortMs / MINUTE)
    .sort((a, b) => a - b);
  const minute = (index: number): number | null => shortDays[index] ?? null;
  return {
    rushLevel: { level: safe.share, low: safe.low, high: safe.high, confidence: safe.confidence },
    fillRate: run.sums.houseDrinks === 0 ? 1 : 1 - run.sums.shortDrinks / run.sums.houseDrinks,
    drinksShort: model.ware.map(({ id }, ware) => ({
      ware: id,
      aDay: run.short[ware]! / run.days,
    })),
    unserved: run.sums.unserved / run.days,
    firstShortMinute: {
      median: minute(Math.floor((shortDays.length - 1) / 2)),
      earliest: minute(0),
    },
    ...(listed
      ? {
          perDay: run.byDay.map((day) => ({
            short: Object.fromEntries(model.ware.map(({ id }, ware) => [id, day.short[ware]!])),
            firstShortMinute: day.firstShortMs < 0 ? null : day.firstShortMs / MINUTE,
            turnedAway: { left: day.left, takeawayInstead: day.takeawayInstead },
            unserved: day.unserved,
          })),
        }
      : {}),
  };
}

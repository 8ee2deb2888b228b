/**
 * Evidence: watch some of the days again and lay up what a picture shows, where the pieces are through
 * the rush and what the house is doing meanwhile. Watched days are the same days, so nothing changes.
 */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { fillDay, type ListedDay } from '../../cafe/listed-day.js';
import { Both, EveryStep, glance, Tightest, type Glance } from '../../cafe/looking-on.js';
import type { CafeModel } from '../../cafe/model.js';
import { PLACE_COUNT, PLACES, SHELF } from '../../cafe/places.js';
import { Turns } from '../../cafe/turns.js';
import type { Evidence, TightestMoment } from './answer.js';

export interface EvidenceOptions {
  readonly model: CafeModel;
  readonly seed: string;
  /** Days to watch, from day 0. */
  readonly days: number;
  readonly stock: readonly number[] | null;
  readonly listed: readonly ListedDay[] | null;
  readonly stepMs?: number;
  /** Awaited now and then. */
  readonly pause: () => Promise<void>;
}

const MINUTE = 60_000;
const AFTER_CLOSING = 90 * MINUTE;
const MOST_STEPS = 600;
const GLANCES_A_STEP = 12;
const GLANCES = [
  'seatsTaken',
  'partiesInLine',
  'drinksWaiting',
  'racksWaiting',
  'machinesBusy',
  'makersBusy',
  'handsBusy',
  'clearersBusy',
] as const satisfies readonly (keyof Glance)[];

/** Watch days 0 .. days − 1. The tightest moment is added by `tightestMoment`. */
export async function watchDays(options: EvidenceOptions): Promise<Evidence> {
  const { model, days } = options;
  const wares = model.ware.length;
  const span = model.closingMs + AFTER_CLOSING;
  const stepMs = Math.max(options.stepMs ?? 5 * MINUTE, Math.ceil(span / MOST_STEPS));
  const steps = Math.floor(span / stepMs) + 1;
  const places = PLACE_COUNT - 1;
  const counts = new Float64Array(wares * steps * places);
  const offShelf = Array.from({ length: wares }, () =>
    Array.from({ length: steps }, () => new Uint16Array(days)),
  );
  const glances = Object.fromEntries(
    GLANCES.map((name) => [name, new Float64Array(steps)]),
  ) as Record<(typeof GLANCES)[number], Float64Array>;
  const looks = new Float64Array(steps);
  const arriving = new Float64Array(steps);
  let dayIndex = 0;
  const watcher = new EveryStep(stepMs, (steps - 1) * stepMs, (step, floor) => {
    for (let ware = 0; ware < wares; ware += 1) {
      let off = 0;
      for (let place = SHELF + 1; place < PLACE_COUNT; place += 1) {
        const pieces = floor.ledger.counts[ware * PLACE_COUNT + place]!;
        off += pieces;
        const cell = (ware * steps + step) * places + place - 1;
        counts[cell] = counts[cell]! + pieces;
      }
      offShelf[ware]![step]![dayIndex] = off;
    }
  });
  // The house is looked at between the round minutes, on which clockwork such as rounds would be seen too often.
  const betweenMs = stepMs / GLANCES_A_STEP;
  const glancer = new EveryStep(
    betweenMs,
    (steps - 1) * stepMs,
    (look, floor) => {
      const step = Math.round(((look + 0.5) * betweenMs) / stepMs);
      const seen = glance(floor);
      for (const name of GLANCES) glances[name][step] = glances[name][step]! + seen[name];
      looks[step] = looks[step]! + 1;
    },
    betweenMs / 2,
  );
  const both = new Both(watcher, glancer);
  const { floor, guests } = prepared(options);
  const { day } = floor;
  const turns = new Turns(options.pause);
  for (let number = 0; number < days; number += 1) {
    guests(number);
    dayIndex = number;
    watcher.rewind();
    glancer.rewind();
    await turns.run(floor, day, number, options.stock, both);
    for (let party = 0; party < day.parties; party += 1) {
      const step = Math.floor(day.arrivalMs[party]! / stepMs);
      if (step < steps) arriving[step] = arriving[step]! + 1;
    }
  }
  const mean = (sums: Float64Array): number[] => Array.from(sums, (sum) => sum / days);
  /** Mean over the looks nearest to each step. */
  const around = (sums: Float64Array): number[] =>
    Array.from(sums, (sum, step) => (looks[step] === 0 ? 0 : sum / looks[step]!));
  return {
    days,
    stepMinutes: stepMs / MINUTE,
    places: PLACES.slice(1),
    mean: Array.from({ length: wares }, (_, ware) =>
      Array.from({ length: steps }, (_, step) =>
        mean(counts.subarray((ware * steps + step) * places, (ware * steps + step + 1) * places)),
      ),
    ),
    offShelf: model.ware.map((ware, index) => {
      const sorted = offShelf[index]!.map((values) => values.sort());
      const at = (share: number): number[] =>
        sorted.map((values) => values[Math.min(days - 1, Math.floor(share * days))]!);
      return { ware: ware.id, q05: at(0.05), q50: at(0.5), q95: at(0.95) };
    }),
    guests: {
      partiesArriving: mean(arriving),
      seatsTaken: around(glances.seatsTaken),
      waitingForSeat: around(glances.partiesInLine),
      drinksWaiting: around(glances.drinksWaiting),
      racksWaiting: around(glances.racksWaiting),
      machinesBusy: around(glances.machinesBusy),
      makersBusy: around(glances.makersBusy),
      handsBusy: around(glances.handsBusy),
      clearersBusy: around(glances.clearersBusy),
    },
  };
}

/** Where all pieces were when ware number `ware` was scarcest on day number `day`. */
export async function tightestMoment(
  options: EvidenceOptions,
  day: number,
  ware: number,
): Promise<TightestMoment> {
  const { model, stock } = options;
  const watcher = new Tightest(ware);
  const { floor, guests } = prepared(options);
  guests(day);
  await new Turns(options.pause).run(floor, floor.day, day, stock, watcher);
  return {
    day,
    minute: watcher.atMs / MINUTE,
    ware: model.ware[ware]!.id,
    places: PLACES.slice(1),
    pieces: model.ware.map(({ id }, index) => ({
      ware: id,
      counts: Array.from(
        watcher.counts.subarray(index * PLACE_COUNT + 1, (index + 1) * PLACE_COUNT),
      ),
    })),
  };
}

/** A new floor and a way to bring a numbered day's guests to it. */
export function prepared({
  model,
  seed,
  listed,
}: Pick<EvidenceOptions, 'model' | 'seed' | 'listed'>): {
  floor: Floor;
  guests: (number: number) => void;
} {
  const floor = new Floor(model, seed);
  floor.day = new Day();
  const demand = listed === null ? new Demand(model, seed) : null;
  return {
    floor,
    guests(number) {
      if (demand !== null) demand.draw(number, floor.day);
      else fillDay(listed![number]!, model.menu, floor.day);
    },
  };
}

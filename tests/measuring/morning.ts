/** A morning of a house as somebody with the sheet would write it down: a drawn day, run and watched, its times in whole minutes. */
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { columnsOf, clockText, ROWS, SLOT_MINUTES } from '../../src/measuring/sheet.js';
import { roundsSeen } from '../../src/questions/measure/seen.js';
import { recorded } from '../../src/questions/walk/recorder.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import type { Scenario } from '../../src/scenario/scenario.js';

const MINUTE = 60_000;
const SIZES = 4;
const none = (): number[] => Array.from({ length: SIZES }, () => 0);
const column = (size: number): number => Math.min(size, SIZES) - 1;

export interface Morning {
  /** The filled sheet as CSV. */
  readonly csv: string;
  /** True stays in minutes by party size column, as drawn. */
  readonly stays: readonly { readonly size: number; readonly minutes: number }[];
}

/** @param until minutes from opening at which the count ends; later rows are left out */
export function morningOf(
  scenario: Scenario,
  seed: string,
  number: number,
  until = Infinity,
): Morning {
  const model = compile(scenario, piecesPerRackOf);
  const opening = 'from' in scenario.hours ? scenario.hours.from / MINUTE : 0;
  const [floor, day, demand] = [new Floor(model, seed), new Day(), new Demand(model, seed)];
  demand.draw(number, day);
  floor.day = day;
  const recorder = recorded(floor, number, null);
  const { times } = recorder.moments;
  const end = (moment: number): number => times[Math.min(moment, times.length - 1)]!;
  const parties = recorder.parties.map((seen) => {
    const first = seen.drink.flatMap((drink, at) =>
      drink < day.firstSecond[seen.party]! ? [times[seen.served[at]!]!] : [],
    );
    const left = end(seen.left);
    const served = first.length === 0 ? left - day.dwellMs[seen.party]! : Math.max(...first);
    return { ...seen, servedMs: served, leftMs: left };
  });
  const slots = Math.ceil(
    Math.min(
      until,
      Math.max(model.closingMs / MINUTE, ...parties.map(({ leftMs }) => leftMs / MINUTE + 1)),
    ) / SLOT_MINUTES,
  );
  const tally = Array.from({ length: slots }, () => ({
    came: none(),
    went: none(),
    away: none(),
    first: 0,
    second: 0,
  }));
  const slotOf = (ms: number): (typeof tally)[number] | undefined =>
    tally[Math.floor(ms / MINUTE / SLOT_MINUTES)];
  const inHouse = new Set(parties.map(({ party }) => party));
  for (let party = 0; party < day.parties; party += 1) {
    if (inHouse.has(party)) continue;
    const slot = day.staysIn[party] === 1 ? undefined : slotOf(day.arrivalMs[party]!);
    if (slot !== undefined) slot.away[column(day.size[party]!)]! += 1;
  }
  for (const { party, size, servedMs, leftMs } of parties) {
    const [came, went] = [slotOf(servedMs), slotOf(leftMs)];
    if (came !== undefined) {
      came.came[column(size)]! += 1;
      came.first += day.firstSecond[party]! - day.firstDrink[party]!;
      came.second += day.firstDrink[party + 1]! - day.firstSecond[party]!;
    }
    if (went !== undefined) went.went[column(size)]! += 1;
  }
  const clock = (ms: number): string => clockText(opening + Math.floor(ms / MINUTE));
  // Whoever times takes the next party, and then the next after that one has been noted.
  const timed = parties
    .filter((_, at) => at % Math.max(1, Math.floor(parties.length / ROWS.stays)) === 0)
    .slice(0, ROWS.stays);
  const rounds = roundsSeen(recorder).slice(0, ROWS.rounds);
  const loads = recorder.stages
    .filter(({ stage, racks }) => stage === 1 && racks.some((rack) => rack >= 0))
    .slice(0, ROWS.loads);
  const seconds = (from: number, to: number): string =>
    String(Math.max(1, Math.round((end(to) - end(from)) / 1000)));
  const rows: Record<'tally' | 'stays' | 'rounds' | 'loads', (string | number)[][]> = {
    tally: [
      ['before', ...none()],
      ...tally.map(({ came, went, away, first, second }, at) => [
        clockText(opening + at * SLOT_MINUTES),
        ...came,
        ...went,
        ...away,
        first,
        second,
        '',
      ]),
    ],
    stays: timed.map(({ size, servedMs, leftMs }) => [size, clock(servedMs), clock(leftMs)]),
    rounds: rounds.map(({ beganMs, endMs, pieces }) => [
      clock(beganMs),
      String(Math.max(1, Math.round((endMs - beganMs) / 1000))),
      pieces,
    ]),
    loads: loads.map((load) => {
      const racks = load.racks.filter((rack) => rack >= 0).map((rack) => recorder.racks[rack]!);
      const next = (stage: number) =>
        recorder.stages.find(
          (one) => one.machine === load.machine && one.stage === stage && one.from >= load.until,
        );
      const cycle = next(2);
      const unloading = next(4);
      const filled =
        racks.reduce(
          (sum, rack) =>
            sum + rack.ware.reduce((all, ware) => all + 1 / model.ware[ware]!.perRack, 0),
          0,
        ) / racks.length;
      return [
        load.machine + 1,
        clock(Math.min(...racks.map(({ from }) => times[from]!))),
        clock(times[load.from]!),
        seconds(load.from, load.until),
        cycle === undefined ? '' : seconds(cycle.from, cycle.until),
        unloading === undefined ? '' : seconds(unloading.from, unloading.until),
        Math.min(100, Math.round(100 * filled)),
        100,
      ];
    }),
  };
  const lines: (string | number)[][] = [
    ['sheet', 'cuptide measure'],
    ['house', `"${scenario.name}"`],
    ['date', '2026-01-15'],
  ];
  for (const part of ['tally', 'stays', 'rounds', 'loads'] as const)
    lines.push(
      [],
      [part],
      columnsOf(part, SIZES).map((name) => `"${name}"`),
      ...rows[part],
    );
  return {
    csv: lines.map((line) => line.join(',')).join('\n'),
    stays: parties.map(({ party, size }) => ({ size, minutes: day.dwellMs[party]! / MINUTE })),
  };
}

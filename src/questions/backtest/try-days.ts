/** Recorded days run at the stock that days before them ask for, each with the guests of its kind of day. */
import type { Runner } from '../../cafe/runner.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { nameOf } from '../../quantities/name.js';
import { compile } from '../../scenario/compile.js';
import { kindsOf, seedOf } from '../../scenario/kinds.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { isoDate } from '../../till/clock.js';
import type { TillDay } from '../../till/tally.js';
import { study } from '../size/study.js';
import type { Origin, RecordedDay } from './answer.js';
import type { FittedHouse, Fitting } from './fitted.js';
import { recordedDay } from './recorded.js';

export interface Trying extends Fitting {
  readonly runner: Runner;
  readonly level: number;
  readonly seed: string;
  readonly days: number;
  readonly draws: number;
}

export const partiesOf = ({ parties }: TillDay): number =>
  parties.reduce((sum, one) => sum + one, 0);

export interface Tried {
  readonly stock: Origin['stock'];
  readonly days: RecordedDay[];
  readonly runs: readonly Run[];
}

/** A run of a day: the stock, times its need, would just have been enough. */
export interface Run {
  readonly kind: string;
  readonly need: number;
}

export async function tryDays(
  { scenario, kindOf, expected }: FittedHouse,
  tried: readonly TillDay[],
  { map, runner, level, seed, days, draws }: Trying,
): Promise<Tried> {
  const { answer } = await study(scenario, runner, {
    level,
    seed,
    days,
    certifyOn: days,
    piecesPerRack: piecesPerRackOf,
  });
  const stock = answer.stock.map(({ pieces }) => pieces);
  const runs: Run[] = [];
  const recorded = new Map<number, RecordedDay>();
  for (const [index, kind] of kindsOf(scenario).entries()) {
    const own = tried.filter(({ day }) => kindOf(day) === kind.id);
    if (own.length === 0) continue;
    const model = compile(kind.scenario, piecesPerRackOf);
    const stream = new Stream(streamKey(seed, 'recorded days'));
    const listed = own.flatMap((day) =>
      Array.from({ length: draws }, (_, draw) =>
        recordedDay(
          { day, slotMinutes: map.slotMinutes, groups: map.groups },
          model,
          stream.toDay(day.day * draws + draw),
        ),
      ),
    );
    const task = {
      model,
      seed: `${seedOf(seed, kind, index)}/recorded`,
      from: 0,
      days: listed.length,
      listed,
    };
    const at = await runner.run({ ...task, stock, byDay: true });
    const free = await runner.run({ ...task, stock: null, byDay: false });
    listed.forEach((_, run) =>
      runs.push({
        kind: kind.id,
        need: Math.max(
          ...stock.map(
            (pieces, ware) => free.peaks[run * stock.length + ware]! / Math.max(1, pieces),
          ),
        ),
      }),
    );
    own.forEach((day, one) => {
      const its = at.byDay.slice(one * draws, (one + 1) * draws);
      const short = its.filter(({ firstShortMs }) => firstShortMs >= 0);
      const often = stock.map((_, ware) => short.filter((run) => run.short[ware]! > 0).length);
      const worst = often.indexOf(Math.max(...often));
      const times = short.map(({ firstShortMs }) => firstShortMs).toSorted((a, b) => a - b);
      recorded.set(day.day, {
        date: isoDate(day.day),
        kind: kind.id,
        parties: partiesOf(day),
        expected: expected(kind.id),
        safe: 1 - short.length / draws,
        ware:
          short.length === 0
            ? null
            : nameOf(answer.stock[worst]!.ware, scenario.ware[answer.stock[worst]!.ware]!),
        minute:
          times.length === 0 ? null : Math.round(times[Math.floor(times.length / 2)]! / 60_000),
      });
    });
  }
  return {
    stock: answer.stock.map(({ ware, name, pieces }) => ({ ware, name, pieces })),
    runs,
    days: tried.map(({ day }) => recorded.get(day)!),
  };
}

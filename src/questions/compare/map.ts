/** The trade-off map: the stock needed over machines, their class, clearing rounds and racks, the level being kept at every point. */
import { machineClass, machineClassIds } from '../../catalogue/catalogue.js';
import { meanMs } from '../../engine/durations.js';
import { didYouMean } from '../../quantities/nearest.js';
import { minorPerUnit } from '../../quantities/money.js';
import type { Candidate } from './alternatives.js';
import { compile } from '../../scenario/compile.js';
import type { MapPoint, TradeOffMap } from './answer.js';
import { QuickReader, type QuickOptions } from './quick.js';
import { problemAt, type Flaw } from '../../scenario/problems.js';
import { edited } from '../../scenario/edited.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';
import { tidy, withoutRaw, withRawValue } from '../../scenario/raw-paths.js';
import type { Runner } from '../../cafe/runner.js';

/** Classes named in `costs.map` that are none. */
export function mapFlaws({ scenario }: Pick<Candidate, 'scenario'>): Flaw[] {
  return (scenario.costs?.map?.classes ?? []).flatMap((id, index) =>
    machineClass(id) === null
      ? [
          problemAt(
            ['costs', 'map', 'classes', index],
            id,
            'is not a class of dishwasher',
            didYouMean(id, machineClassIds()),
          ),
        ]
      : [],
  );
}

const MINUTE = 60_000;
/** Parties that a point of the map is worth, and the days that they may make. */
const [PARTIES, FEWEST_DAYS, MOST_DAYS] = [250_000, 500, 2000];

/** Days for each point unless said: many where a day is soon run, so that a step of the map is the café's and not the draw's. */
export function mapDays({ scenario }: Pick<Candidate, 'scenario'>): number {
  const { arrivals } = compile(scenario);
  const parties = arrivals.reduce(
    (sum, { untilMs, partiesPerMs }, step) =>
      sum + partiesPerMs * (untilMs - (arrivals[step - 1]?.untilMs ?? 0)),
    0,
  );
  return Math.max(
    FEWEST_DAYS,
    Math.min(MOST_DAYS, 100 * Math.floor(PARTIES / Math.max(1, parties) / 100)),
  );
}

interface Axes {
  readonly classes: readonly string[];
  readonly machines: readonly number[];
  /** Minutes between rounds. */
  readonly rounds: readonly number[];
  readonly racks: readonly (number | null)[];
}

function axesOf({ scenario }: Candidate): Axes {
  const axes = scenario.costs?.map ?? {};
  const listed = Array.isArray(scenario.washing.machines) ? scenario.washing.machines : [];
  const ownMachines = listed.reduce((sum, { count }) => sum + (count ?? 1), 0);
  const every = scenario.clearing === 'atOnce' ? null : meanMs(scenario.clearing.every) / MINUTE;
  const machines =
    axes.machines ??
    [...new Set([1, 2, 3, ownMachines])].filter((count) => count > 0).toSorted((a, b) => a - b);
  const classes =
    axes.classes ??
    [
      ...new Set([
        ...listed.flatMap((machine) => (machine.class === undefined ? [] : [machine.class])),
        ...machineClassIds(),
      ]),
    ].slice(0, 2);
  const rounds =
    axes.clearing?.map((ms) => ms / MINUTE) ??
    [...new Set([3, 5, 8, 10, 15, every ?? 10])].toSorted((a, b) => a - b).slice(0, 5);
  return { classes, machines, rounds, racks: axes.racks ?? [null] };
}

/** Points of the map of a house. */
export function mapPoints(base: Candidate): number {
  const { classes, machines, rounds, racks } = axesOf(base);
  return classes.length * machines.length * rounds.length * racks.length;
}

export async function tradeOffMap(
  base: Candidate,
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
): Promise<TradeOffMap> {
  const { scenario } = base;
  const { classes, machines, rounds, racks } = axesOf(base);
  const reader = new QuickReader(runner, options);
  const perUnit = minorPerUnit(scenario.currency);
  const points: MapPoint[] = [];
  for (const machineClassId of classes)
    for (const count of machines)
      for (const clearingMinutes of rounds)
        for (const rackCount of racks) {
          // Alike machines without the spells and class figures of the house's own, so that a point means the same everywhere.
          const read = edited(
            base,
            (house) => {
              let raw = withRawValue(
                house.raw,
                ['washing', 'machines'],
                [{ class: machineClassId, count }],
              );
              raw =
                house.scenario.clearing === 'atOnce'
                  ? withRawValue(withoutRaw(raw, ['clearing']), ['clearing'], {
                      every: `${tidy(clearingMinutes)} min`,
                    })
                  : withRawValue(raw, ['clearing', 'every'], `${tidy(clearingMinutes)} min`);
              return rackCount === null
                ? raw
                : withRawValue(raw, ['racks', 'owned', 'open'], rackCount);
            },
            base.name,
            reading,
          )!;
          if (!read.ok)
            throw new Error(
              `a point of the map is no valid scenario: ${read.problems[0]!.message}`,
            );
          const quick = await reader.read(read.scenario);
          points.push({
            machines: count,
            machineClass: machineClassId,
            clearingMinutes,
            racks: rackCount,
            pieces: quick.stock.reduce((sum, pieces) => sum + pieces, 0),
            stockCost: quick.stockCost / perUnit,
            total: quick.costs.total / perUnit,
            machinesBusy: quick.machinesBusy,
          });
        }
  const machineWorth = points.flatMap((point) => {
    const next = points
      .filter(
        (one) =>
          one.machineClass === point.machineClass &&
          one.clearingMinutes === point.clearingMinutes &&
          one.racks === point.racks &&
          one.machines > point.machines,
      )
      .toSorted((a, b) => a.machines - b.machines)[0];
    return next === undefined || point.stockCost === 0
      ? []
      : [
          {
            machineClass: point.machineClass,
            clearingMinutes: point.clearingMinutes,
            racks: point.racks,
            from: point.machines,
            to: next.machines,
            pieces: ((point.stockCost - next.stockCost) * point.pieces) / point.stockCost,
            stockCost: point.stockCost - next.stockCost,
          },
        ];
  });
  const own = await reader.read(scenario);
  return {
    days: options.days,
    own: own.stockCost / perUnit,
    ownTotal: own.costs.total / perUnit,
    points,
    machineWorth,
    cheapest: points.reduce((best, point) => (point.total < best.total ? point : best)),
  };
}

/** What one saucer under several cups saves: the same days with a saucer of its own for each cup. */
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import type { CafeModel, Setting } from '../../cafe/model.js';
import { poolingGain, type PoolingGain } from '../../ordering/saucers.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';

export interface SaucerPool {
  readonly saucer: string;
  readonly cups: readonly string[];
  readonly gain: PoolingGain;
}

const DAYS = 1000;

/** A pool for every saucer that stands under more than one kind of cup or glass on the menu, and fits them. */
export async function saucerPools(
  scenario: Scenario,
  model: CafeModel,
  level: number,
  seed: string,
  runner: Runner,
  misfits: readonly { readonly cup: string; readonly saucer: string }[],
): Promise<SaucerPool[]> {
  const shapes = Object.values(scenario.ware).map(({ shape }) => shape);
  const isVessel = (ware: number): boolean => shapes[ware] === 'cup' || shapes[ware] === 'glass';
  const settings = model.menu.flatMap(({ setting, fallBacks }) => [setting, ...fallBacks]);
  const pools: SaucerPool[] = [];
  for (const [saucer, shape] of shapes.entries()) {
    if (shape !== 'saucer') continue;
    const cups = [
      ...new Set(
        settings
          .filter((setting) => setting.includes(saucer))
          .flatMap((setting) => setting.filter(isVessel)),
      ),
    ].filter(
      (cup) =>
        !misfits.some(
          (pair) => pair.cup === model.ware[cup]!.id && pair.saucer === model.ware[saucer]!.id,
        ),
    );
    if (cups.length < 2) continue;
    const run = async (of: CafeModel): Promise<DaysRun> =>
      mergeDays([
        await runner.run({
          model: of,
          seed,
          from: 0,
          days: DAYS,
          stock: null,
          listed: null,
          byDay: false,
        }),
      ]);
    const [pooled, apart] = [await run(model), await run(withOwnSaucers(model, saucer, cups))];
    const rows = (days: DaysRun, ware: readonly number[]): number[][] => {
      const wares = days.peaks.length / days.days;
      return Array.from({ length: days.days }, (_, day) =>
        ware.map((one) => days.peaks[day * wares + one]!),
      );
    };
    const own = [saucer, ...cups.slice(1).map((_, index) => model.ware.length + index)];
    pools.push({
      saucer: model.ware[saucer]!.id,
      cups: cups.map((cup) => model.ware[cup]!.id),
      gain: poolingGain(
        rows(apart, own),
        rows(pooled, [saucer]).map(([pieces]) => pieces!),
        level,
      ),
    });
  }
  return pools;
}

/** The first cup keeps the saucer; each of the others has a copy of it, washed with it. */
function withOwnSaucers(model: CafeModel, saucer: number, cups: readonly number[]): CafeModel {
  const others = cups.slice(1);
  const swap = (setting: Setting): Setting => {
    const cup = others.findIndex((other) => setting.includes(other));
    return cup < 0
      ? setting
      : setting.map((piece) => (piece === saucer ? model.ware.length + cup : piece));
  };
  return {
    ...model,
    ware: [
      ...model.ware,
      ...others.map((cup) => ({
        ...model.ware[saucer]!,
        id: `${model.ware[saucer]!.id} for ${model.ware[cup]!.id}`,
      })),
    ],
    menu: model.menu.map((drink) => ({
      ...drink,
      setting: swap(drink.setting),
      fallBacks: drink.fallBacks.map(swap),
    })),
  };
}

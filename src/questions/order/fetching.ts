/** The rush with the shelf as two places: trips to the reserve, and the drinks that come in a cold cup. */
import type { Runner } from '../../cafe/runner.js';
import type { StoredWare } from '../../ordering/machine-top.js';
import { STORAGE_DEFAULTS, type StorageLayout } from '../../ordering/storage.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { KindOfDay } from '../../scenario/scenario.js';
import type { Answer } from '../size/answer.js';

export interface Fetching {
  readonly days: number;
  readonly trips: number;
  /** Drinks that waited for pieces on their way up from the reserve. */
  readonly waits: number;
  /** Share of rushes in which nothing runs out, fetching included. */
  readonly safe: number;
  /** Ware with fewer on the machine than one drink takes: the rush has it in one place, without fetching. */
  readonly onePlace: readonly string[];
  /** Share of the drinks that want a warm cup and get a cold one, from the reserve; null where none wants one. */
  readonly coldShare: number | null;
  /** The same by ware that ought to be warm. */
  readonly coldByWare: readonly { readonly ware: string; readonly share: number }[];
}

/**
 * The days at the par, with pieces moved up from the reserve. The par itself is that of one place. A piece on the
 * machine counts as warm, one that is brought up as cold; so no more uses are cold than pieces were brought up.
 */
export async function fetchingOf(
  { scenario, seed }: Pick<KindOfDay, 'scenario'> & { readonly seed: string },
  layout: StorageLayout,
  wares: readonly StoredWare[],
  { stock }: Pick<Answer, 'stock'>,
  days: number,
  runner: Runner,
): Promise<Fetching> {
  const model = compile(scenario, piecesPerRackOf);
  const rules = scenario.storage!;
  const most = (ware: number): number =>
    Math.max(
      1,
      ...model.menu.flatMap(({ setting, fallBacks }) =>
        [setting, ...fallBacks].map((pieces) => pieces.filter((piece) => piece === ware).length),
      ),
    );
  const onTop = layout.lines.map((line, ware) => (line.onTop < most(ware) ? null : line.onTop));
  const storage = {
    onTop,
    trigger: layout.lines.map((line, ware) => Math.max(line.trigger ?? 0, most(ware) - 1)),
    trip: { law: 'constant', ms: rules.trip ?? STORAGE_DEFAULTS.tripMs } as const,
    tripPieces: rules.tripPieces ?? null,
    fetchers:
      rules.fetchedBy === undefined || rules.fetchedBy === 'maker'
        ? ('makers' as const)
        : rules.fetchedBy,
  };
  const { sums, uses, fetched } = await runner.run({
    model: { ...model, storage },
    seed,
    from: 0,
    days,
    stock: stock.map(({ pieces }) => pieces),
    listed: null,
    byDay: false,
  });
  const warm = wares.flatMap(({ id, warmth }, ware) => {
    if (warmth === 0 || uses[ware]! === 0) return [];
    const cold = onTop[ware] === null ? uses[ware]! : Math.min(uses[ware]!, fetched[ware]!);
    return [{ ware: id, cold, uses: uses[ware]! }];
  });
  const all = warm.reduce((sum, one) => sum + one.uses, 0);
  return {
    days: sums.days,
    trips: sums.fetchTrips / sums.days,
    waits: sums.fetchWaits / sums.days,
    safe: sums.safeDays / sums.days,
    onePlace: layout.lines.filter((_, ware) => onTop[ware] === null).map(({ ware }) => ware),
    coldShare: all === 0 ? null : warm.reduce((sum, one) => sum + one.cold, 0) / all,
    coldByWare: warm.map((one) => ({ ware: one.ware, share: one.cold / one.uses })),
  };
}

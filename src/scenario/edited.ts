/** A house with its tree changed: on every kind of day alike, as what is tried in a house is tried on all its days. */
import type { Input } from './inputs.js';
import { checkTree, type PositionOf, type ReadOptions } from './read-scenario.js';
import type { Problem } from './problems.js';
import type { KindOfDay, Scenario } from './scenario.js';

/** A scenario that was read, and the tree it was read from: without its kinds of day, which are in the scenario. */
export interface House {
  readonly scenario: Scenario;
  readonly inputs: readonly Input[];
  readonly raw: unknown;
}

type Edited =
  | ({ readonly ok: true } & House)
  | { readonly ok: false; readonly problems: readonly Problem[] };

const nowhere: PositionOf = () => ({ line: 1, column: 1 });

/**
 * @param edit the changed tree of a house of one kind of day; null where that cannot be changed so
 * @returns null where the house itself cannot be changed so; a further kind that cannot stays as it is
 */
export function edited(
  house: House,
  edit: (one: House) => unknown,
  fileName: string,
  options: ReadOptions = {},
  positionOf: PositionOf = nowhere,
): Edited | null {
  const raw = edit(house);
  if (raw === null) return null;
  const read = checkTree(raw, positionOf, fileName, options);
  if (!read.ok) return read;
  const { scenario, inputs } = read;
  const { kinds } = house.scenario;
  if (kinds === undefined) return { ok: true, scenario, inputs, raw };
  const all: KindOfDay[] = [{ ...kinds[0]!, scenario, inputs, raw }];
  for (const kind of kinds.slice(1)) {
    const tree = edit(kind) ?? kind.raw;
    const there = checkTree(tree, positionOf, fileName, options);
    if (!there.ok)
      return {
        ok: false,
        problems: there.problems.map((one) => ({
          ...one,
          message: `on the kind of day ${kind.id}: ${one.message}`,
        })),
      };
    all.push({ ...kind, scenario: there.scenario, inputs: there.inputs, raw: tree });
  }
  return { ok: true, scenario: { ...scenario, kinds: all }, inputs, raw };
}

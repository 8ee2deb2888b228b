/** A file's tree with the changes of a patch over it: what alternatives and kinds of day are made with. */
import { didYouMean } from '../quantities/nearest.js';
import { fill } from './defaults.js';
import { dotted, isWithin, type Path } from './path.js';
import { problemAt, type Flaw, type Position } from './problems.js';
import { parsePath, rawValueAt, scaled, withoutRaw, withRawValue } from './raw-paths.js';
import { scenarioSchema } from './scenario.js';
import { knownKeys } from './schema-walk.js';
import { isGroup, unwrap, valueAt } from './tree.js';

/** Changes by dotted path. */
export interface Patch {
  readonly change?: Readonly<Record<string, unknown>> | undefined;
  readonly scale?: Readonly<Record<string, number>> | undefined;
  readonly without?: readonly string[] | undefined;
}

/** A place that was changed, and where in the file the change is written. */
interface Origin {
  readonly path: Path;
  readonly from: Path;
}

export interface Patched {
  readonly tree: unknown;
  readonly flaws: readonly Flaw[];
  readonly origins: readonly Origin[];
}

/**
 * @param raw the tree that is changed, marks and all
 * @param patch its factors as read
 * @param changes its values as in the file, marks and all
 * @param at where the patch stands in the file
 */
export function patched(
  raw: unknown,
  patch: Patch,
  changes: Readonly<Record<string, unknown>>,
  at: Path,
): Patched {
  const filled = fill(unwrap(raw).tree).tree;
  const flaws: Flaw[] = [];
  const origins: Origin[] = [];
  let tree = raw;
  const steps = [
    ...Object.keys(patch.scale ?? {}).map((key) => ({
      verb: 'scale' as const,
      key,
      from: [...at, 'scale', key],
    })),
    ...Object.keys(patch.change ?? {}).map((key) => ({
      verb: 'change' as const,
      key,
      from: [...at, 'change', key],
    })),
    ...(patch.without ?? []).map((key, index) => ({
      verb: 'without' as const,
      key,
      from: [...at, 'without', index],
    })),
  ];
  for (const { verb, key, from } of steps) {
    const path = parsePath(key);
    const wrong =
      path === null
        ? problemAt(
            from,
            key,
            'is no path',
            'write names with points between them, such as washing.machines[0].cycle',
          )
        : pathFlaw(path, from, key, tree, filled, verb);
    if (wrong !== null) {
      flaws.push({ ...wrong, onKey: verb !== 'without' });
      continue;
    }
    origins.push({ path: path!, from });
    if (verb === 'change') tree = withRawValue(tree, path!, changes[key]);
    else if (verb === 'without') tree = withoutRaw(tree, path!);
    else
      tree = withRawValue(
        tree,
        path!,
        scaled(rawValueAt(tree, path!) ?? valueAt(filled, path!), patch.scale![key]!, path!.at(-1)),
      );
  }
  return { tree, flaws, origins };
}

/** Problems of a changed value stand where the patch has it; all others at the patch's name. */
export const placedIn =
  (
    at: Path,
    origins: readonly Origin[],
    positionOf: (path: Path, onKey?: boolean) => Position,
  ): ((path: Path, onKey?: boolean) => Position) =>
  (path, onKey) => {
    const origin = origins.toReversed().find((one) => isWithin(path, one.path));
    return origin === undefined
      ? positionOf(at, true)
      : positionOf([...origin.from, ...path.slice(origin.path.length)], onKey === true);
  };

/** A path whose owner is not there, or that passes the end of its list. */
export function pathFlaw(
  path: Path,
  from: Path,
  key: string,
  raw: unknown,
  filled: unknown,
  verb: 'scale' | 'change' | 'without',
): Flaw | null {
  const missing = (remedy: string): Flaw =>
    problemAt(from, key, 'names a path that is not there', remedy);
  const there = (one: Path): unknown => rawValueAt(raw, one) ?? valueAt(filled, one);
  if (path[0] === 'alternatives')
    return problemAt(
      from,
      key,
      'changes the alternatives themselves',
      'change the scenario instead',
    );
  if (verb !== 'change' && there(path) === undefined)
    return missing(didYouMean(String(path.at(-1)), keysOf(there(path.slice(0, -1)))));
  for (let depth = 1; depth <= path.length; depth += 1) {
    const owner = path.slice(0, depth - 1);
    const step = path[depth - 1]!;
    const value = there(owner);
    if (typeof step === 'number') {
      if (!Array.isArray(value)) return missing(`${dotted(owner)} is no list; leave out [${step}]`);
      if (step > value.length)
        return missing(`${dotted(owner)} has ${value.length}; the next is [${value.length}]`);
      continue;
    }
    if (isGroup(value) && Object.hasOwn(value, step)) continue;
    const known = knownKeys(scenarioSchema, owner);
    // Named by the schema, or a new name in a map that is given whole.
    if (known.includes(step) || (known.length === 0 && depth === path.length && isGroup(value)))
      continue;
    return missing(didYouMean(step, [...known, ...keysOf(value)]));
  }
  return null;
}

const keysOf = (value: unknown): string[] => (isGroup(value) ? Object.keys(value) : []);

/** The alternatives of a scenario: each a changed copy, checked like any scenario, its problems placed in its own lines. */
import type { Money } from '../../quantities/money.js';
import { didYouMean } from '../../quantities/nearest.js';
import { fill } from '../../scenario/defaults.js';
import type { Input } from '../../scenario/inputs.js';
import { dotted, isWithin, type Path } from '../../scenario/path.js';
import { nameOf } from '../../quantities/name.js';
import {
  inOrder,
  problem,
  problemAt,
  type Flaw,
  type Position,
  type Problem,
} from '../../scenario/problems.js';
import {
  checkTree,
  type PositionOf,
  type ReadOptions,
  type ReadResult,
} from '../../scenario/read-scenario.js';
import {
  parsePath,
  rawValueAt,
  scaled,
  withoutRaw,
  withRawValue,
} from '../../scenario/raw-paths.js';
import { scenarioSchema, type Scenario } from '../../scenario/scenario.js';
import { knownKeys } from '../../scenario/schema-walk.js';
import { isGroup, unwrap, valueAt } from '../../scenario/tree.js';
import { written } from '../../scenario/written.js';
import { isToPlanFor } from './plan-for.js';

export type Opened = Extract<ReadResult, { ok: true }>;

/** A scenario to compare: the base, or an alternative read. */
export interface Candidate {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly scenario: Scenario;
  readonly inputs: readonly Input[];
  /** The changed tree, marks and all, without its alternatives. */
  readonly raw: unknown;
  /** Money beside what is worked out. */
  readonly once: Money | undefined;
  readonly aYear: Money | undefined;
  /** Something to plan for, such as other guests or a machine that fails, and no choice. */
  readonly planFor: boolean;
  /** What was changed, as written: "clearing.every: 5 min". */
  readonly changes: readonly string[];
}

export type Candidates =
  | { readonly ok: true; readonly all: readonly Candidate[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const without = (raw: unknown): unknown =>
  isGroup(raw)
    ? Object.fromEntries(Object.entries(raw).filter(([key]) => key !== 'alternatives'))
    : raw;
const bare = (scenario: Scenario): string =>
  JSON.stringify({ ...scenario, name: '', alternatives: undefined });

/** The base and all its alternatives, or every problem that these have. */
export function candidatesOf(
  opened: Opened,
  fileName: string,
  options: ReadOptions = {},
): Candidates {
  const { scenario, raw, positionOf } = opened;
  const baseRaw = without(raw);
  const base: Candidate = {
    id: 'base',
    name: 'As it is',
    note: '',
    scenario,
    inputs: opened.inputs,
    raw: baseRaw,
    once: undefined,
    aYear: undefined,
    planFor: false,
    changes: [],
  };
  const problems: Problem[] = [];
  const all: Candidate[] = [base];
  const filled = fill(unwrap(baseRaw).tree).tree;
  for (const [id, slice] of Object.entries(scenario.alternatives ?? {})) {
    const at: Path = ['alternatives', id];
    const flaws: Flaw[] = [];
    if (id === 'base')
      flaws.push({
        ...problemAt(at, undefined, 'is the name of the scenario as it is', 'choose another name'),
        onKey: true,
      });
    const inFile = rawValueAt(raw, at) as { readonly change?: Record<string, unknown> };
    const origins: { readonly path: Path; readonly from: Path }[] = [];
    let tree = baseRaw;
    const steps = [
      ...Object.keys(slice.scale ?? {}).map((key) => ({
        verb: 'scale' as const,
        key,
        from: [...at, 'scale', key],
      })),
      ...Object.keys(slice.change ?? {}).map((key) => ({
        verb: 'change' as const,
        key,
        from: [...at, 'change', key],
      })),
      ...(slice.without ?? []).map((key, index) => ({
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
      if (verb === 'change') tree = withRawValue(tree, path!, inFile.change![key]);
      else if (verb === 'without') tree = withoutRaw(tree, path!);
      else
        tree = withRawValue(
          tree,
          path!,
          scaled(
            rawValueAt(tree, path!) ?? valueAt(filled, path!),
            slice.scale![key]!,
            path!.at(-1),
          ),
        );
    }
    if (flaws.length > 0) {
      problems.push(
        ...flaws.map((flaw) => problem(flaw, fileName, positionOf(flaw.path, flaw.onKey))),
      );
      continue;
    }
    const read = checkTree(tree, placedIn(at, origins, positionOf), fileName, options);
    if (!read.ok) {
      problems.push(
        ...read.problems.map((one) => ({
          ...one,
          message: `in the alternative ${id}: ${one.message}`,
        })),
      );
      continue;
    }
    if (
      bare(read.scenario) === bare(scenario) &&
      slice.once === undefined &&
      slice.aYear === undefined
    ) {
      problems.push(
        problem(
          {
            ...problemAt(
              at,
              undefined,
              'changes nothing',
              'write under change what is to be different, such as clearing.every: 5 min',
            ),
            onKey: true,
          },
          fileName,
          positionOf(at, true),
        ),
      );
      continue;
    }
    const changes = [
      ...Object.entries(inFile.change ?? {}).map(([key, value]) => `${key}: ${written(value)}`),
      ...Object.entries(slice.scale ?? {}).map(([key, value]) => `${key} × ${value}`),
      ...(slice.without ?? []).map((key) => `without ${key}`),
    ];
    all.push({
      id,
      name: nameOf(id, slice),
      note: slice.note ?? '',
      scenario: read.scenario,
      inputs: read.inputs,
      raw: tree,
      once: slice.once,
      aYear: slice.aYear,
      planFor: isToPlanFor(
        scenario,
        read.scenario,
        slice.once !== undefined || slice.aYear !== undefined,
      ),
      changes,
    });
  }
  return problems.length > 0 ? { ok: false, problems: inOrder(problems) } : { ok: true, all };
}

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

/** Problems of a changed value stand where the alternative has it; all others at the alternative's name. */
function placedIn(
  at: Path,
  origins: readonly { readonly path: Path; readonly from: Path }[],
  positionOf: PositionOf,
): PositionOf {
  return (path, onKey): Position => {
    const origin = origins.toReversed().find((one) => isWithin(path, one.path));
    return origin === undefined
      ? positionOf(at, true)
      : positionOf([...origin.from, ...path.slice(origin.path.length)], onKey === true);
  };
}

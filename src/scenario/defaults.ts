/**
 * Filling what a scenario leaves out: trade figures for the café, classes for ware and machines.
 * Works on the unwrapped tree, before it is checked, so that a default is checked like any value.
 */
import { defaults, machineClass, wareClass } from '../catalogue/catalogue.js';
import type { Path } from './path.js';
import { isGroup, unwrap, valueAt, withValueAt, type Wrap } from './tree.js';

export interface Filled {
  readonly tree: unknown;
  /** The figures that were filled in, as marked in the reference data. */
  readonly wraps: readonly Wrap[];
}

const { ware: ofAnyWare, ...ofTheCafe } = defaults as {
  readonly ware: Readonly<Record<string, unknown>>;
} & Readonly<Record<string, unknown>>;

/** Groups that a file must begin itself; they are completed but never made. */
const neverMade = new Set(['arrivals', 'seats', 'washing', 'washing.otherLoads']);

/** A marked leaf of the reference data, as opposed to a group of them. */
const isMarked = (node: unknown): boolean => !isGroup(node) || Object.hasOwn(node, 'value');

/** Adds the leaves of `source` that the tree at `path` does not have. */
function complete(filled: Filled, path: Path, source: Readonly<Record<string, unknown>>): Filled {
  return Object.entries(source).reduce<Filled>((sofar, [key, given]) => {
    const at = [...path, key];
    const present = valueAt(sofar.tree, at);
    if (isMarked(given)) {
      if (present !== undefined) return sofar;
      const { tree, wraps } = unwrap(given, at);
      return { tree: withValueAt(sofar.tree, at, tree), wraps: [...sofar.wraps, ...wraps] };
    }
    if (present === undefined ? neverMade.has(at.join('.')) : !isGroup(present)) return sofar;
    return complete(sofar, at, given as Record<string, unknown>);
  }, filled);
}

/** A rack kind for the family of a ware of a class, where the file names none. */
function rackOfClass(filled: Filled, family: unknown, kind: string): Filled {
  if (
    typeof family !== 'string' ||
    kind === 'open' ||
    valueAt(filled.tree, ['racks', 'plan']) === 'fewestLoads'
  )
    return filled;
  const racks = valueAt(filled.tree, ['racks']);
  const families = valueAt(filled.tree, ['racks', 'families']);
  if ((racks !== undefined && !isGroup(racks)) || (families !== undefined && !isGroup(families)))
    return filled;
  const at = ['racks', 'families', family];
  if (valueAt(filled.tree, at) !== undefined) return filled;
  const wrap: Wrap = {
    path: at,
    value: kind,
    basis: 'practice',
    range: null,
    source: 'the usual rack for such ware',
  };
  return { tree: withValueAt(filled.tree, at, kind), wraps: [...filled.wraps, wrap] };
}

function completeWare(filled: Filled): Filled {
  const ware = valueAt(filled.tree, ['ware']);
  if (!isGroup(ware)) return filled;
  let next = filled;
  for (const [id, given] of Object.entries(ware)) {
    if (!isGroup(given)) continue;
    const cls = typeof given['like'] === 'string' ? wareClass(given['like']) : null;
    if (cls) {
      next = complete(next, ['ware', id], cls.fields);
      next = rackOfClass(next, valueAt(next.tree, ['ware', id, 'family']), cls.rackKind);
    }
    next = complete(next, ['ware', id], ofAnyWare);
  }
  return next;
}

function completeMachines(filled: Filled): Filled {
  const machines = valueAt(filled.tree, ['washing', 'machines']);
  const places: Path[] = Array.isArray(machines)
    ? machines.map((_, i) => ['washing', 'machines', i])
    : [['washing', 'machines', 'unlimited']];
  return places.reduce<Filled>((sofar, at) => {
    const machine = valueAt(sofar.tree, at);
    if (!isGroup(machine)) return sofar;
    const cls = typeof machine['class'] === 'string' ? machineClass(machine['class']) : null;
    return complete(
      sofar,
      at,
      cls
        ? cls.fields
        : { racks: { value: 1, basis: 'practice', source: 'takes one rack at a time' } },
    );
  }, filled);
}

/** Fills a scenario's tree from the defaults and classes. */
export function fill(tree: unknown): Filled {
  return completeMachines(completeWare(complete({ tree, wraps: [] }, [], ofTheCafe)));
}

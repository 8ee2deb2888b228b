/**
 * How far a count of pieces is from changing: by which measure, by how many millimetres.
 *
 * All of it rests on one law: a piece that grows in any measure never stands more often in a rack. So the first tenth of
 * a millimetre that changes the count is found by halving.
 */
import type { NamedPattern } from './open-rack.js';
import { isFlatware } from './vessel.js';
import type { Vessel } from './vessel.js';

export interface Cliff {
  readonly dimension: 'rim' | 'handle' | 'handleWidth' | 'height' | 'depth';
  /** Negative: less of it. In tenths of a millimetre. */
  readonly changeMm: number;
  readonly piecesThen: number;
}

const FARTHEST_TENTHS = 128;
const SLACK_LIMIT_MM = 20;

/** The vessel with one measure changed; null where that measure is not there or would vanish. */
function changed(vessel: Vessel, dimension: Cliff['dimension'], by: number): Vessel | null {
  if (dimension === 'rim') {
    const rimMm = vessel.rimMm + by;
    const rimAcrossMm = vessel.rimAcrossMm === undefined ? undefined : vessel.rimAcrossMm + by;
    // The handle is kept, and may be no longer than the rim.
    return rimMm > 1 && rimMm >= (vessel.handleMm ?? 0) && (rimAcrossMm ?? 2) > 1
      ? { ...vessel, rimMm, rimAcrossMm }
      : null;
  }
  if (dimension === 'handle') {
    const handleMm = (vessel.handleMm ?? 0) + by;
    return (vessel.handleMm ?? 0) > 0 && handleMm >= 0 && handleMm <= vessel.rimMm
      ? { ...vessel, handleMm }
      : null;
  }
  if (dimension === 'handleWidth') {
    const handleWidthMm = (vessel.handleWidthMm ?? 0) + by;
    return (vessel.handleMm ?? 0) > 0 &&
      vessel.handleWidthMm !== undefined &&
      handleWidthMm > 1 &&
      handleWidthMm <= vessel.rimMm
      ? { ...vessel, handleWidthMm }
      : null;
  }
  // The depth of saucers and plates is their height unless stated.
  const depthIsHeight = isFlatware(vessel) && vessel.depthMm === undefined;
  if (dimension === 'height')
    return !depthIsHeight && vessel.heightMm + by > 1
      ? { ...vessel, heightMm: vessel.heightMm + by }
      : null;
  if (depthIsHeight)
    return vessel.heightMm + by > 1 ? { ...vessel, heightMm: vessel.heightMm + by } : null;
  return vessel.depthMm !== undefined && vessel.depthMm + by > 1
    ? { ...vessel, depthMm: vessel.depthMm + by }
    : null;
}

/** What a rack takes of a vessel; to ask whether it takes so many is quicker than to count, above all where it does. */
export interface Loading {
  readonly count: (vessel: Vessel) => number;
  /** A pattern in which so many pieces go in; null where there is none. */
  readonly patternFor: (vessel: Vessel, pieces: number) => NamedPattern | null;
  /** Whether they go in without a search for further patterns: quicker, and seldom mistaken. */
  readonly takesAlike: (vessel: Vessel, pieces: number, pattern: NamedPattern) => boolean;
}

/** A measure, and whether it gets less or more. */
type Direction = readonly [dimension: Cliff['dimension'], sign: -1 | 1];

const DIMENSIONS = ['rim', 'handle', 'handleWidth', 'height', 'depth'] as const;
export const MORE: readonly Direction[] = DIMENSIONS.map((dimension) => [dimension, 1]);
export const EITHER_WAY: readonly Direction[] = DIMENSIONS.flatMap((dimension): Direction[] => [
  [dimension, -1],
  [dimension, 1],
]);

/**
 * The nearest change of the count in a direction, within so many tenths of a millimetre.
 *
 * @param now the pattern that is the fullest now
 */
export function cliffIn(
  [dimension, sign]: Direction,
  vessel: Vessel,
  pieces: number,
  now: NamedPattern,
  loading: Loading,
  within = FARTHEST_TENTHS,
): Cliff | null {
  const other = (tenths: number): Vessel | null => changed(vessel, dimension, (sign * tenths) / 10);
  let most = within;
  while (most > 1 && other(most) === null) most = Math.floor(most / 2);
  if (most < 1 || other(most) === null) return null;
  const at =
    sign < 0
      ? firstGain(other, most, pieces + 1, now, loading)
      : firstLoss(other, most, pieces, now, loading);
  return at === null
    ? null
    : { dimension, changeMm: (sign * at) / 10, piecesThen: loading.count(other(at)!) };
}

/** The smallest change of any measure that changes the count, of equal ones the first; each is sought below the best so far. */
export function nearestCliff(
  directions: readonly Direction[],
  vessel: Vessel,
  pieces: number,
  now: NamedPattern,
  loading: Loading,
): Cliff | null {
  return directions.reduce<Cliff | null>((best, direction) => {
    const within = best === null ? FARTHEST_TENTHS : Math.round(Math.abs(best.changeMm) * 10) - 1;
    return cliffIn(direction, vessel, pieces, now, loading, within) ?? best;
  }, null);
}

type ByTenths = (tenths: number) => Vessel | null;

/** The first tenth at which `wanted` pieces go in; null: none up to `most`. */
function firstGain(
  other: ByTenths,
  most: number,
  wanted: number,
  now: NamedPattern,
  { count, patternFor, takesAlike }: Loading,
): number | null {
  const alike = (pattern: NamedPattern, tenths: number): boolean => {
    const vessel = other(tenths);
    return vessel !== null && takesAlike(vessel, wanted, pattern);
  };
  if (!alike(now, most)) return null;
  let at = firstOf((tenths) => alike(now, tenths), 0, most);
  // Another pattern may take them sooner.
  const takes = (tenths: number): boolean => {
    const vessel = other(tenths);
    return vessel !== null && patternFor(vessel, wanted) !== null;
  };
  if (at > 1 && takes(at - 1)) at = firstOf(takes, 0, at - 1);
  return byCount((tenths) => count(other(tenths)!) >= wanted, at, most);
}

/**
 * The tenth found, or the first beyond it, at which the full count says so: free rows are searched on tables, and one
 * pattern looked at closely may hold a piece that the count did not find.
 */
const byCount = (says: (tenths: number) => boolean, at: number, most: number): number | null =>
  says(at) ? at : at < most && says(most) ? firstOf(says, at, most) : null;

/** The first tenth at which `kept` pieces go in no more; null: none up to `most`. */
function firstLoss(
  other: ByTenths,
  most: number,
  kept: number,
  now: NamedPattern,
  { count, takesAlike }: Loading,
): number | null {
  const loses = (pattern: NamedPattern, tenths: number): boolean => {
    const vessel = other(tenths);
    return vessel !== null && !takesAlike(vessel, kept, pattern);
  };
  if (!loses(now, most)) return null;
  const at = firstOf((tenths) => loses(now, tenths), 0, most);
  // Another pattern may take them longer.
  return byCount((tenths) => count(other(tenths)!) < kept, at, most);
}

/** The first whole number beyond `near` at which `holds`, which holds at `far` and not at `near`. */
function firstOf(holds: (tenths: number) => boolean, near: number, far: number): number {
  let [low, high] = [near, far];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** How much the rim may grow while `still` holds, mm, rounded down to 0.01; null: at least 20 mm. */
export function growthUntilLoss(vessel: Vessel, still: (grown: Vessel) => boolean): number | null {
  const at = (hundredths: number): boolean => still(changed(vessel, 'rim', hundredths / 100)!);
  let [near, far] = [0, SLACK_LIMIT_MM * 100];
  if (at(far)) return null;
  while (far - near > 1) {
    const middle = (near + far) >> 1;
    if (at(middle)) near = middle;
    else far = middle;
  }
  return near / 100;
}

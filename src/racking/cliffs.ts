/**
 * How far a count of pieces is from changing: by which measure, by how many millimetres.
 *
 * All of it rests on one law: a piece that grows in any measure never stands more often in a rack. So the first tenth of
 * a millimetre that changes the count is found by halving.
 */
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

/**
 * The nearest change of the count by less and by more of every measure, within 12.8 mm.
 *
 * @param count how often a vessel goes in
 * @param takes whether a vessel goes in so many times: quicker, and seldom mistaken
 */
export function cliffsOf(
  vessel: Vessel,
  pieces: number,
  count: (vessel: Vessel) => number,
  takes: (vessel: Vessel, pieces: number) => boolean,
): Cliff[] {
  const cliffs: Cliff[] = [];
  for (const dimension of ['rim', 'handle', 'handleWidth', 'height', 'depth'] as const) {
    for (const sign of [-1, 1]) {
      const counted = (tenths: number): number => {
        const other = changed(vessel, dimension, (sign * tenths) / 10);
        return other === null ? pieces : count(other);
      };
      const differs = (tenths: number): boolean => {
        const other = changed(vessel, dimension, (sign * tenths) / 10);
        return other !== null && (sign < 0 ? takes(other, pieces + 1) : !takes(other, pieces));
      };
      let most = FARTHEST_TENTHS;
      while (most > 1 && changed(vessel, dimension, (sign * most) / 10) === null)
        most = Math.floor(most / 2);
      if (!differs(most)) continue;
      let at = firstOf(differs, 0, most);
      // What is quick may miss a layout at another angle, and so the cliff by a little.
      const changes = (tenths: number): boolean => counted(tenths) !== pieces;
      if (!changes(at)) at = changes(most) ? firstOf(changes, at, most) : 0;
      else if (at > 1 && changes(at - 1)) at = firstOf(changes, 0, at - 1);
      if (at > 0) cliffs.push({ dimension, changeMm: (sign * at) / 10, piecesThen: counted(at) });
    }
  }
  return cliffs;
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

/** The cliff that takes the smallest change; null where there is none. */
export const nearest = (cliffs: readonly Cliff[]): Cliff | null =>
  cliffs.reduce<Cliff | null>(
    (best, cliff) =>
      best === null || Math.abs(cliff.changeMm) < Math.abs(best.changeMm) ? cliff : best,
    null,
  );

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

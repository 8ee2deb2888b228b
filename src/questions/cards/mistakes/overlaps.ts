/** Which pieces of a rack overlap another or stand out over its walls, by plain distances. */
import { outlineOf } from '../../../racking/outline.js';
import { usableOf, type Rack } from '../../../racking/rack.js';
import type { Vessel } from '../../../racking/vessel.js';
import { gapsOf, type Gaps } from '../../../racking/verify.js';
import type { Placed } from '../../../racking/meeting.js';

/** Overlaps smaller than this are roundings, mm. */
const NOTHING_MM = -0.01;

export const gapsIn = (vessel: Vessel, rack: Rack, placed: readonly Placed[]): Gaps => {
  const { x, y } = usableOf(rack);
  return gapsOf(outlineOf(vessel), placed, x, y);
};

/** True for each piece that overlaps another or a wall. */
export function atFault(vessel: Vessel, rack: Rack, placed: readonly Placed[]): boolean[] {
  const reach = vessel.rimMm + 2 * (vessel.handleMm ?? 0);
  return placed.map(
    (one, i) =>
      gapsIn(vessel, rack, [one]).wallMm < NOTHING_MM ||
      placed.some(
        (other, j) =>
          i !== j &&
          Math.abs(other.x - one.x) < reach &&
          Math.abs(other.y - one.y) < reach &&
          gapsIn(vessel, rack, [one, other]).betweenMm < NOTHING_MM,
      ),
  );
}

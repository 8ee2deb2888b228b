/**
 * What is wrong with the measures of a vessel or of a rack by itself, as data.
 */
import type { Fault, Path } from '../quantities/flaw.js';
import { usableOf } from './rack.js';
import type { Rack } from './rack.js';
import { ASSUMED_HANDLE_WIDTH_MM } from './vessel.js';
import type { Vessel } from './vessel.js';

export const problem = (path: Path, value: unknown, rule: string, remedy: string): Fault => ({
  path,
  value,
  rule,
  remedy,
  message: `"${path.join('.')}" is ${typeof value === 'number' ? value : value === undefined ? 'missing' : JSON.stringify(value)}, but ${rule}. ${remedy}`,
});

const amiss = (value: number, least: number, open: boolean): boolean =>
  !Number.isFinite(value) || (open ? value <= least : value < least);

/** All that is wrong with a vessel by itself; `path` is where it stands. */
export function vesselProblems(vessel: Vessel, path: Path = []): Fault[] {
  const found: Fault[] = [];
  const length = (key: keyof Vessel, value: number | undefined, orNone: boolean): void => {
    if (value === undefined) return;
    if (amiss(value, 0, !orNone))
      found.push(
        problem(
          [...path, key],
          value,
          orNone ? 'it cannot be negative' : 'it must be more than 0',
          'Measure the piece, in mm (mass in g).',
        ),
      );
  };
  length('rimMm', vessel.rimMm, false);
  length('rimAcrossMm', vessel.rimAcrossMm, false);
  length('footMm', vessel.footMm, true);
  length('heightMm', vessel.heightMm, false);
  length('handleMm', vessel.handleMm, true);
  length('handleWidthMm', vessel.handleWidthMm, false);
  length('massG', vessel.massG, true);
  length('depthMm', vessel.depthMm, false);
  const handle = vessel.handleMm ?? 0;
  if (handle > vessel.rimMm) {
    found.push(
      problem(
        [...path, 'handleMm'],
        handle,
        `a handle stands out by no more than the rim is wide, ${vessel.rimMm} mm`,
        'Measure from the rim outwards, not from the middle of the cup.',
      ),
    );
  }
  const width = vessel.handleWidthMm ?? ASSUMED_HANDLE_WIDTH_MM;
  const across = vessel.rimAcrossMm ?? vessel.rimMm;
  if (handle > 0 && width > Math.min(across, vessel.rimMm)) {
    found.push(
      problem(
        [...path, 'handleWidthMm'],
        width,
        `a handle is no wider than the rim, ${Math.min(across, vessel.rimMm)} mm`,
        'Measure the handle across, seen from above.',
      ),
    );
  }
  if (handle > 0 && vessel.handleTip === 'round' && width > vessel.rimMm + 2 * handle) {
    found.push(
      problem(
        [...path, 'handleWidthMm'],
        width,
        'a round handle is no wider than it is long',
        'State `handleTip: flat`.',
      ),
    );
  }
  return found;
}

/** All that is wrong with a rack by itself. */
export function rackProblems(rack: Rack, path: Path = []): Fault[] {
  const found: Fault[] = [];
  const check = (
    key: string,
    value: number | null | undefined,
    least: number,
    open: boolean,
    remedy: string,
  ): void => {
    if (value === undefined || value === null) return;
    if (amiss(value, least, open))
      found.push(
        problem(
          [...path, key],
          value,
          open ? `it must be more than ${least}` : `it cannot be less than ${least}`,
          remedy,
        ),
      );
  };
  check('usableMm', rack.usableMm, 0, true, 'Measure the rack inside, wall to wall.');
  check('usableAcrossMm', rack.usableAcrossMm, 0, true, 'Measure the rack inside, wall to wall.');
  check('emptyMassG', rack.emptyMassG, 0, false, 'Weigh the empty rack, in g.');
  check(
    'maxMassG',
    rack.maxMassG,
    0,
    true,
    'State the largest mass of a loaded rack, in g, or leave it out.',
  );
  check(
    'clearanceMm',
    rack.clearanceMm,
    0,
    false,
    'State the gap between pieces as 0 or more, in mm; pieces cannot overlap.',
  );
  check(
    'innerHeightMm',
    rack.innerHeightMm,
    0,
    true,
    'Measure from the floor of the rack to what is above it.',
  );
  const outer = rack.outerMm;
  const { x, y } = usableOf(rack);
  if (outer !== undefined && Math.max(x, y) > outer) {
    found.push(
      problem(
        [...path, 'outerMm'],
        outer,
        `a rack is no smaller outside than inside, ${Math.max(x, y)} mm`,
        'Exchange the two measures.',
      ),
    );
  }
  if (rack.kind === 'grid') {
    const cells = rack.cells as number | undefined;
    if (cells === undefined || !Number.isInteger(cells) || cells < 1)
      found.push(
        problem(
          [...path, 'cells'],
          cells,
          'a compartment rack has a whole number of compartments each way',
          'A rack of 25 has 5.',
        ),
      );
    const opening = rack.openingMm as number | undefined;
    if (opening === undefined || amiss(opening, 0, true)) {
      found.push(
        problem(
          [...path, 'openingMm'],
          opening,
          'a compartment rack needs the opening of its compartments',
          'Measure one compartment, wall to wall; a rack of 25 has about 88 mm.',
        ),
      );
    } else if (cells !== undefined && opening * cells > Math.min(x, y) + 1e-9) {
      found.push(
        problem(
          [...path, 'openingMm'],
          opening,
          `${cells} openings cannot be wider than the inside of the rack, ${Math.min(x, y)} mm`,
          'Measure one compartment and the inside again.',
        ),
      );
    }
    check('extenders', rack.extenders, 0, false, 'Count the extenders put on.');
    check('extenderMm', rack.extenderMm, 0, true, 'Measure the height an extender adds.');
  }
  if (rack.kind === 'peg') {
    check('slots', rack.slots, 1, false, 'Count the slots along one row of pegs.');
    check('pitchMm', rack.pitchMm, 0, true, 'Measure from one peg to the next.');
    check(
      'waterGapMm',
      rack.waterGapMm,
      0,
      false,
      'State the gap between two pieces as 0 or more, in mm.',
    );
    check(
      'triedMm',
      rack.triedMm,
      0,
      true,
      'Put two saucers in the rack and measure from one to the other.',
    );
    if (rack.leanDeg !== undefined && !(rack.leanDeg >= 0 && rack.leanDeg < 60))
      found.push(
        problem(
          [...path, 'leanDeg'],
          rack.leanDeg,
          'a piece on edge leans by 0° to 60°',
          'Measure the lean from upright.',
        ),
      );
  }
  if (rack.kind === 'basket') {
    check('layers', rack.layers, 1, false, 'State 1 layer or more.');
    if (rack.coverShare !== undefined && !(rack.coverShare > 0 && rack.coverShare <= 1))
      found.push(
        problem(
          [...path, 'coverShare'],
          rack.coverShare,
          'it is a share between 0 and 1',
          'Leave it out for 0.6.',
        ),
      );
  }
  return found;
}

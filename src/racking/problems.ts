/**
 * Why a vessel does not go in a rack, or in any of them, as data.
 */
import { cos, sin } from '../elementary/angles.js';
import { problem, rackProblems, vesselProblems } from './measures.js';
import type { Fault, Path } from '../quantities/flaw.js';
import { LEAN_DEG } from './pegs.js';
import { clearanceOf, extendersFor, tallestOf, usableOf } from './rack.js';
import type { Rack } from './rack.js';
import { depthOf, isCutlery, isFlatware, widestOf } from './vessel.js';
import type { Vessel } from './vessel.js';

/** More pieces than any rack takes: a measure is wrong, and working out how they would lie could take minutes. */
const MOST_PIECES = 1000;

/** Why this vessel cannot stand in this rack at all: [] where it can. Room on the floor is judged elsewhere. */
export function pairProblems(vessel: Vessel, rack: Rack, path: Path = []): Fault[] {
  if (isCutlery(vessel) !== (rack.kind === 'basket')) {
    return [
      problem(
        [...path, 'shape'],
        vessel.shape,
        isCutlery(vessel) ? 'cutlery needs a basket' : 'a basket takes cutlery only',
        isCutlery(vessel) ? 'Wash it in a cutlery basket.' : 'Choose another kind of rack.',
      ),
    ];
  }
  if (rack.kind === 'peg' && !isFlatware(vessel))
    return [
      problem(
        [...path, 'shape'],
        vessel.shape,
        'a peg rack takes saucers and plates',
        'Choose an open or a compartment rack.',
      ),
    ];
  const { x, y } = usableOf(rack);
  const least = Math.sqrt((x * y) / MOST_PIECES);
  if (rack.kind === 'open' && Math.min(vessel.rimMm, vessel.rimAcrossMm ?? Infinity) < least)
    return [
      problem(
        [...path, 'rimMm'],
        vessel.rimMm,
        `"${rack.id}" would take more than ${MOST_PIECES.toLocaleString('en')} of it`,
        'Check the rim and the inside of the rack, in mm.',
      ),
    ];
  const tall = standingHeight(vessel, rack);
  const limit = tallestOf(rack);
  if (tall > limit + 1e-9) {
    const more = extendersFor(tall, rack);
    const remedy =
      more > 0
        ? `Put ${more} extender${more > 1 ? 's' : ''} on it, if the machine takes the rack that high, or choose a taller rack.`
        : 'Choose a taller rack.';
    return [
      problem(
        [...path, 'heightMm'],
        vessel.heightMm,
        `"${rack.id}" takes no more than ${limit} mm`,
        remedy,
      ),
    ];
  }
  return [];
}

/** Height of the piece as it stands in the rack, mm: on edge and leaning in a peg rack, lying in a basket. */
export function standingHeight(vessel: Vessel, rack: Rack): number {
  if (rack.kind === 'basket') return 0;
  if (rack.kind !== 'peg') return vessel.heightMm;
  const lean = ((rack.leanDeg ?? LEAN_DEG) * Math.PI) / 180;
  return vessel.rimMm * cos(lean) + depthOf(vessel) * sin(lean);
}

/** The vessels that none of the racks takes, with the measure that is at fault, and the faults of each by itself. */
export function fitProblems(
  vessels: readonly Vessel[],
  racks: readonly Rack[],
  pieces: (vessel: Vessel, rack: Rack) => number,
): Fault[] {
  const found = [
    ...vessels.flatMap((vessel, i) => vesselProblems(vessel, ['vessels', i])),
    ...racks.flatMap((rack, i) => rackProblems(rack, ['racks', i])),
  ];
  if (found.length > 0) return found;
  return vessels.flatMap((vessel, i) => {
    if (racks.some((rack) => pieces(vessel, rack) > 0)) return [];
    const path = ['vessels', i];
    const suitable = racks.filter(
      (rack) => pairProblems({ ...vessel, heightMm: 1 }, rack).length === 0,
    );
    if (suitable.length === 0)
      return [
        problem(
          [...path, 'shape'],
          vessel.shape,
          'no rack takes this kind of piece',
          'Add a rack of a kind that does.',
        ),
      ];
    const tallest = Math.max(...suitable.map(tallestOf));
    if (vessel.heightMm > tallest)
      return [
        problem(
          [...path, 'heightMm'],
          vessel.heightMm,
          `the tallest rack takes ${tallest} mm`,
          'Add a taller rack or extenders, or wash this piece by hand.',
        ),
      ];
    const widest = Math.max(
      ...suitable.map(
        (rack) =>
          (rack.kind === 'grid' ? rack.openingMm : Math.min(usableOf(rack).x, usableOf(rack).y)) -
          2 * clearanceOf(rack),
      ),
    );
    const field = widestOf(vessel) > widest || (vessel.handleMm ?? 0) === 0 ? 'rimMm' : 'handleMm';
    return [
      problem(
        [...path, field],
        vessel[field],
        `the widest rack or compartment takes ${widest} mm, handle included`,
        'Add a rack with larger compartments or an open one, or wash this piece by hand.',
      ),
    ];
  });
}

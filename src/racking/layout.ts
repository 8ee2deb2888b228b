/**
 * Pieces per rack from the shape of the vessel: one layer, inverted.
 *
 * What is promised is exactness for the pattern named and the measures given, not that no cleverer heap
 * exists; so every answer says how many millimetres it is from losing or gaining a row.
 */
import { cliffIn, EITHER_WAY, growthUntilLoss, MORE, nearestCliff } from './cliffs.js';
import type { Cliff, Loading } from './cliffs.js';
import { compartmentPositions, smallestSquareOpening } from './compartments.js';
import { planAreaOf } from './outline.js';
import { fullestOpenLayout, holds, patternFor } from './open-rack.js';
import type { LoadingRule, NamedPattern, OpenPattern } from './open-rack.js';
import { memory } from './memory.js';
import { pegLoad, pegPositions } from './pegs.js';
import { pairProblems } from './problems.js';
import { rackProblems, vesselProblems } from './measures.js';
import type { Fault } from '../quantities/flaw.js';
import { EMPTY_MASS_G, clearanceOf, usableOf } from './rack.js';
import type { Rack } from './rack.js';
import type { Placed } from './meeting.js';
import type { Vessel } from './vessel.js';
import { openSearch, massLimit, floorPieces } from './open-search.js';

/** What keeps one more piece out. wall: handles that may not stand out over the walls, or the floor is too small for a piece. */
export type Binding = 'opening' | 'height' | 'neighbour' | 'wall' | 'mass' | 'kind';
export type PatternName = OpenPattern | 'compartments' | 'on edge' | 'loose';

export interface RackLayout {
  readonly pieces: number;
  /** Centre of the rim and direction of the handle of every piece, mm from a corner of the clear inside; empty for loose cutlery. */
  readonly positions: readonly Placed[];
  readonly pattern: PatternName;
  readonly angleDeg: number;
  readonly binds: Binding;
  /** Plan area of the pieces over the clear inside of the rack; on edge, the share of the length and width they cover. */
  readonly areaShare: number;
  /** The smallest change of one measure that changes the count; null: none within 12.8 mm. */
  readonly cliff: Cliff | null;
  /** The smallest growth of one measure that loses pieces, and the smallest cut of the rim that gains some. */
  readonly loss: Cliff | null;
  readonly rimGain: Cliff | null;
  /** How much the rim may grow before this pattern loses pieces, mm (rounded down to 0.01); null: by more than 20 mm, or not said (loose cutlery). */
  readonly slackMm: number | null;
  /** Rack and pieces, g. */
  readonly loadedMassG: number;
  /** Why nothing goes in; [] where something does. */
  readonly problems: readonly Fault[];
}

/** Pieces of a vessel in one rack; 0 where it does not go in or a measure is wrong. */
export function piecesPerRack(vessel: Vessel, rack: Rack, rule: LoadingRule = 'best'): number {
  return counts(keyOf(vessel, rack, rule), () => {
    if (problemsOf(vessel, rack).length > 0) return 0;
    return Math.min(massLimit(vessel, rack), floorPieces(vessel, rack, rule));
  });
}

const problemsOf = (vessel: Vessel, rack: Rack): Fault[] => {
  const own = [...vesselProblems(vessel, ['vessel']), ...rackProblems(rack, ['rack'])];
  return own.length > 0 ? own : pairProblems(vessel, rack, ['vessel']);
};

/** Of racks that are not open, and of none: what stands for a pattern where none is chosen. */
const ALONE: NamedPattern = { pattern: 'grid', angleDeg: 0 };

/** A pattern in which the rack takes so many pieces, null where none does; quicker than counting. */
function patternOf(
  vessel: Vessel,
  rack: Rack,
  rule: LoadingRule,
  pieces: number,
  first?: NamedPattern,
): NamedPattern | null {
  if (pieces <= 0) return ALONE;
  if (problemsOf(vessel, rack).length > 0 || massLimit(vessel, rack) < pieces) return null;
  if (rack.kind === 'open') return patternFor(openSearch(vessel, rack, rule, first), pieces);
  return floorPieces(vessel, rack, rule) >= pieces ? ALONE : null;
}

/**
 * How a vessel stands in a rack. Wrong measures and pairs that cannot be come back as `problems` with no
 * pieces; no error is thrown for them.
 *
 * An answer is remembered by its measures.
 *
 * @param rule which way the handles point; a named pattern asks for that one alone
 */
export const rackLayout = (vessel: Vessel, rack: Rack, rule: LoadingRule = 'best'): RackLayout =>
  layouts(keyOf(vessel, rack, rule), () => layoutOf(vessel, rack, rule));

function layoutOf(vessel: Vessel, rack: Rack, rule: LoadingRule): RackLayout {
  const problems = problemsOf(vessel, rack);
  const broken = problems.some(
    (p) =>
      !(
        p.path.length === 2 &&
        (p.path[1] === 'heightMm' || p.path[1] === 'shape') &&
        p.path[0] === 'vessel'
      ),
  );
  const placed = problems.length > 0 ? nothing(rack) : placedIn(vessel, rack, rule);
  const limit = massLimit(vessel, rack);
  const pieces = problems.length > 0 ? 0 : Math.min(limit, placed.pieces);
  const fixed: NamedPattern | undefined =
    rack.kind === 'open' && placed.pieces > 0
      ? { pattern: placed.pattern as OpenPattern, angleDeg: placed.angleDeg }
      : undefined;
  // Searched when they are asked for: drawings and counts of racks do without, and each takes longer than the layout.
  const sought = (seek: (loading: Loading) => Cliff | null): (() => Cliff | null) =>
    once(() =>
      // Cutlery lies as it falls: millimetres say nothing there.
      broken || rack.kind === 'basket'
        ? null
        : seek({
            count: (changed) => piecesPerRack(changed, rack, rule),
            patternFor: (other, least) => patternOf(other, rack, rule, least),
            takesAlike: (other, least, first) =>
              patternOf(other, rack, rule, least, first) !== null,
          }),
    );
  const now = fixed ?? ALONE;
  const cliff = sought((loading) => nearestCliff(EITHER_WAY, vessel, pieces, now, loading));
  const loss = sought((loading) => nearestCliff(MORE, vessel, pieces, now, loading));
  const rimGain = sought((loading) => cliffIn(['rim', -1], vessel, pieces, now, loading));
  const slackMm = once(() =>
    pieces === 0 || rack.kind === 'basket'
      ? null
      : growthUntilLoss(vessel, (grown) => patternOf(grown, rack, fixed ?? rule, pieces) !== null),
  );
  return {
    pieces,
    positions: placed.positions.slice(0, pieces),
    pattern: placed.pattern,
    angleDeg: placed.angleDeg,
    binds: binding(vessel, rack, problems, pieces, placed, limit),
    areaShare: shareUsed(vessel, rack, pieces),
    get cliff() {
      return cliff();
    },
    get loss() {
      return loss();
    },
    get rimGain() {
      return rimGain();
    },
    get slackMm() {
      return slackMm();
    },
    loadedMassG: (rack.emptyMassG ?? EMPTY_MASS_G) + pieces * vessel.massG,
    problems: problems.length > 0 || pieces > 0 ? problems : [noRoom(vessel, rack)],
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}

interface Placing {
  readonly pieces: number;
  readonly positions: readonly Placed[];
  readonly pattern: PatternName;
  readonly angleDeg: number;
}

const nothing = (rack: Rack): Placing => ({
  pieces: 0,
  positions: [],
  pattern:
    rack.kind === 'open'
      ? 'grid'
      : rack.kind === 'grid'
        ? 'compartments'
        : rack.kind === 'peg'
          ? 'on edge'
          : 'loose',
  angleDeg: 0,
});

function placedIn(vessel: Vessel, rack: Rack, rule: LoadingRule): Placing {
  if (rack.kind === 'open')
    return fullestOpenLayout(openSearch(vessel, rack, rule)) ?? nothing(rack);
  const pieces = floorPieces(vessel, rack, rule);
  if (rack.kind === 'grid' && pieces > 0) {
    const { angleDeg } = smallestSquareOpening(vessel, clearanceOf(rack), rule);
    return {
      pieces,
      positions: compartmentPositions(vessel, rack, angleDeg),
      pattern: 'compartments',
      angleDeg,
    };
  }
  return {
    ...nothing(rack),
    pieces,
    positions: rack.kind === 'peg' ? pegPositions(vessel, rack) : [],
  };
}

function binding(
  vessel: Vessel,
  rack: Rack,
  problems: readonly Fault[],
  pieces: number,
  placed: Placing,
  limit: number,
): Binding {
  if (problems.length > 0)
    return problems.some((p) => p.path.at(-1) === 'heightMm') ? 'height' : 'kind';
  if (limit < placed.pieces) return 'mass';
  if (rack.kind === 'grid') return 'opening';
  if (rack.kind === 'peg')
    return pieces === 0 || pegLoad(vessel, rack).alongLimit === 'length' ? 'wall' : 'neighbour';
  if (rack.kind === 'basket') return pieces === 0 ? 'wall' : 'neighbour';
  if (pieces <= 1) return 'wall';
  if ((vessel.handleMm ?? 0) <= 0) return 'neighbour';
  const same: NamedPattern = { pattern: placed.pattern as OpenPattern, angleDeg: placed.angleDeg };
  return holds({ ...openSearch(vessel, rack, same), handlesOverWalls: true }, pieces + 1)
    ? 'wall'
    : 'neighbour';
}

function shareUsed(vessel: Vessel, rack: Rack, pieces: number): number {
  const { x, y } = usableOf(rack);
  if (pieces === 0) return 0;
  if (rack.kind === 'basket')
    return (
      (pieces * vessel.rimMm * (vessel.rimAcrossMm ?? vessel.rimMm)) / (x * y * (rack.layers ?? 1))
    );
  if (rack.kind === 'peg') {
    const load = pegLoad(vessel, rack);
    return (
      (load.rows * vessel.rimMm * ((load.along - 1) * load.spacingMm + load.coversMm)) / (x * y)
    );
  }
  return (pieces * planAreaOf(vessel)) / (x * y);
}

function noRoom(vessel: Vessel, rack: Rack): Fault {
  const path = ['vessel', 'rimMm'];
  const { x, y } = usableOf(rack);
  const room = rack.kind === 'grid' ? rack.openingMm : Math.min(x, y);
  const rule =
    rack.kind === 'grid'
      ? `the compartments of "${rack.id}" take no more than ${room} mm, handle included`
      : `"${rack.id}" is ${room} mm inside, gaps and handle included`;
  const remedy =
    rack.kind === 'grid'
      ? 'Choose a rack with larger compartments or an open one.'
      : 'Choose a larger rack, or wash this piece by hand.';
  return {
    path,
    value: vessel.rimMm,
    rule,
    remedy,
    message: `"${path.join('.')}" is ${vessel.rimMm}, but ${rule}. ${remedy}`,
  };
}

/** Handles straight against handles at 45°, and the best of all: which is better depends on the vessel. */
export interface HandleFinding {
  readonly straight: number;
  readonly at45: number;
  readonly best: number;
}

export const handleFinding = (vessel: Vessel, rack: Rack): HandleFinding => ({
  straight: piecesPerRack(vessel, rack, 'straight'),
  at45: piecesPerRack(vessel, rack, 'at45'),
  best: piecesPerRack(vessel, rack, 'best'),
});

const counts = memory<number>();
const layouts = memory<RackLayout>();
const keyOf = (vessel: Vessel, rack: Rack, rule: LoadingRule): string =>
  JSON.stringify([vessel, rack, rule]);

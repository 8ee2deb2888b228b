/** Mistakes of the rack that is chosen, and of saucers and spoons: touching, no compartments, too small ones, a heap. */
import { english } from '../../../tell/words.js';
import { rackKindIds } from '../../../catalogue/catalogue.js';
import { rackLayout } from '../../../racking/layout.js';
import { LEAN_DEG, pegLoad, LEAST_GAP_MM } from '../../../racking/pegs.js';
import { usableOf, type Rack } from '../../../racking/rack.js';
import { depthOf, type Vessel } from '../../../racking/vessel.js';
import { rackOf } from '../../../scenario/rack-geometry.js';
import type { PieceAbove } from '../../../tell/drawings/rack-view.js';
import type { Mistake, MistakeDesk } from './mistake.js';
import { ownPieces, typicalPiece } from './pieces-at-hand.js';

/** Saucers beside one another: on edge in a peg rack, flat in an open one. */
export function saucers(desk: MistakeDesk): Mistake {
  const { formats, scenario } = desk;
  const say = english.mistakes.saucers;
  const at = ownPieces(scenario, ['saucer', 'plate'])[0] ?? typicalPiece('saucer', 'peg');
  const { vessel, rack, ware } = at;
  const { x, y } = usableOf(rack);
  if (rack.kind !== 'peg') {
    const pieces = at.layout.positions.map((one) => ({ ...one, vessel }));
    const [dx, dy] = [(x - vessel.rimMm) / 3, (y - vessel.rimMm) / 3];
    return {
      id: 'saucers',
      title: say.title,
      text: say.flat(formats.count(at.layout.pieces)),
      ware,
      wrong: {
        from: 'above',
        rack,
        pieces: Array.from({ length: 16 }, (_, i) => ({
          vessel,
          x: vessel.rimMm / 2 + (i % 4) * dx,
          y: vessel.rimMm / 2 + Math.floor(i / 4) * dy,
          angleDeg: 0,
          wrong: true,
        })),
      },
      right: { from: 'above', rack, pieces },
    };
  }
  const { along, spacingMm } = pegLoad(vessel, rack);
  const row = (many: number, step: number): number[] =>
    Array.from({ length: many }, (_, i) => x / 2 + (i - (many - 1) / 2) * step);
  const leanDeg = rack.leanDeg ?? LEAN_DEG;
  const tight = depthOf(vessel);
  const view = { from: 'edge', rack, vessel, leanDeg } as const;
  return {
    id: 'saucers',
    title: say.title,
    text: say.text(formats.length(rack.waterGapMm ?? LEAST_GAP_MM)),
    ware,
    wrong: { ...view, along: row(Math.floor((along * spacingMm) / tight), tight), wrong: true },
    right: { ...view, along: row(along, spacingMm), wrong: false },
  };
}

const standing = (vessel: Vessel, rack: Rack): PieceAbove[] =>
  rackLayout(vessel, rack).positions.map((one) => ({ ...one, vessel }));

/** A glass as it stands without compartments; null where this house washes its glasses so. */
export function flat(desk: MistakeDesk): Mistake | null {
  const { formats, scenario } = desk;
  const own = ownPieces(scenario, ['glass']);
  if (own.some(({ rack }) => rack.kind !== 'grid')) return null;
  const { ware, vessel, rack, layout } = own[0] ?? typicalPiece('tumbler', 'grid-25');
  const open = rackOf('open', scenario.racks)!;
  return {
    id: 'flat',
    title: english.mistakes.flat.title,
    text: english.mistakes.flat.text(formats.count(layout.pieces)),
    ware,
    wrong: {
      from: 'above',
      rack: open,
      pieces: standing(vessel, open).map((piece) => ({ ...piece, wrong: true })),
    },
    right: { from: 'above', rack, pieces: standing(vessel, rack) },
  };
}

/** The finest compartment rack that takes a glass, and the next finer one, which does not. */
export function narrow(desk: MistakeDesk): Mistake {
  const { formats, scenario } = desk;
  const { ware, vessel } =
    ownPieces(scenario, ['glass', 'cup', 'mug'])[0] ?? typicalPiece('tumbler', 'grid-25');
  const grids = rackKindIds().flatMap((id) => {
    const rack = rackOf(id, scenario.racks);
    return rack?.kind === 'grid' ? [rack] : [];
  });
  grids.sort((a, b) => b.openingMm - a.openingMm);
  const fits = grids.filter((rack) => rackLayout(vessel, rack).pieces > 0);
  const right = fits.at(-1);
  const wrong = grids.find((rack) => right !== undefined && rack.openingMm < right.openingMm);
  // Too small or too large for all: a typical glass shows it.
  if (right === undefined || wrong === undefined || wrong.openingMm >= vessel.rimMm)
    return narrow({ ...desk, scenario: { ...scenario, ware: {} } });
  const share = usableOf(wrong).x / wrong.cells;
  return {
    id: 'narrow',
    title: english.mistakes.narrow.title,
    text: english.mistakes.narrow.text(
      formats.length(vessel.rimMm),
      formats.length(wrong.openingMm),
      formats.count(right.cells * right.cells),
    ),
    ware,
    wrong: {
      from: 'above',
      rack: wrong,
      // Every second place: wedged pieces leave no room beside them.
      pieces: Array.from({ length: wrong.cells * wrong.cells }, (_, i) => ({
        vessel,
        x: ((i % wrong.cells) + 0.5) * share,
        y: (Math.floor(i / wrong.cells) + 0.5) * share,
        angleDeg: rackLayout(vessel, right).positions[0]!.angleDeg,
        wrong: true,
      })).filter((_, i) => (Math.floor(i / wrong.cells) + (i % wrong.cells)) % 2 === 0),
    },
    right: { from: 'above', rack: right, pieces: standing(vessel, right) },
  };
}

/** Spoons in one another, and spread. */
export function spoons(desk: MistakeDesk): Mistake {
  const own = ownPieces(desk.scenario, ['spoon']).find(({ rack }) => rack.kind === 'basket');
  const { ware, vessel, rack } = own ?? typicalPiece('teaspoon', 'cutlery');
  const { x, y } = usableOf(rack);
  const many = 24;
  const columns = 3;
  const spread = Array.from({ length: many }, (_, i) => ({
    vessel,
    x: (((i % columns) + 0.5) * x) / columns,
    y: ((Math.floor(i / columns) + 0.5) * y) / (many / columns),
    angleDeg: i % 2 === 0 ? 0 : 180,
  }));
  const heap = Array.from({ length: many }, (_, i) => ({
    vessel,
    x: x / 2 + 9 * (i % 3),
    y: y / 2 + (i - many / 2) * 10,
    angleDeg: 8 * ((i % 5) - 2),
    wrong: true,
  }));
  return {
    id: 'spoons',
    ...english.mistakes.spoons,
    ware,
    wrong: { from: 'above', rack, pieces: heap },
    right: { from: 'above', rack, pieces: spread },
  };
}

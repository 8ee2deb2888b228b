/** Mistakes of how a piece stands, seen from the side: upright, one inside another, too tall. */
import { english } from '../../../tell/words.js';
import { extendersFor, tallestOf, usableOf, type Rack } from '../../../racking/rack.js';
import type { Vessel } from '../../../racking/vessel.js';
import { halfWidthAt, type PieceBeside } from '../../../tell/drawings/rack-view.js';
import type { Mistake, MistakeDesk } from './mistake.js';
import { ownPieces, typicalPiece, type AtHand } from './pieces-at-hand.js';

/** Wall of a cup or glass, mm (assumed): how far one goes into another hangs on it. */
const WALL_MM = 3;
/** Share of its height at which a handle stops the rim of the next cup (assumed). */
const HANDLE_STOPS = 0.6;
/** A jug that is too tall, by how much. */
const TOO_TALL = 1.1;
const GAP_MM = 8;

const cupOf = ({ scenario }: MistakeDesk): AtHand =>
  ownPieces(scenario, ['cup', 'mug', 'glass', 'bowl'])[0] ?? typicalPiece('medium-cup', 'open');

/** As many as stand beside one another in the rack, four at most. */
function row(vessel: Vessel, rack: Rack): number[] {
  const wide = vessel.rimMm + (vessel.handleMm ?? 0) + GAP_MM;
  const many = Math.max(1, Math.min(4, Math.floor(usableOf(rack).x / wide)));
  const share = usableOf(rack).x / many;
  return Array.from({ length: many }, (_, i) => (i + 0.5) * share - (vessel.handleMm ?? 0) / 2);
}

const inARow = (vessel: Vessel, rack: Rack): PieceBeside[] =>
  row(vessel, rack).map((x) => ({ vessel, x, baseMm: 0, inverted: true }));

export function upright(desk: MistakeDesk): Mistake {
  const { ware, vessel, rack } = cupOf(desk);
  const right = inARow(vessel, rack);
  return {
    id: 'upright',
    ...english.mistakes.upright,
    ware,
    wrong: {
      from: 'side',
      rack,
      roofMm: null,
      pieces: right.map((piece) => ({ ...piece, inverted: false, wrong: true })),
    },
    right: { from: 'side', rack, roofMm: null, pieces: right },
  };
}

/** How much higher a piece stands that is put over another: where the taper of the walls, or the handle, stops it. */
export function nestedBy(vessel: Vessel): number {
  const taper = (vessel.rimMm / 2 - halfWidthAt(vessel, 0)) / vessel.heightMm;
  const byWall = taper > 0 ? WALL_MM / taper : vessel.heightMm;
  const byHandle = (vessel.handleMm ?? 0) > 0 ? HANDLE_STOPS * vessel.heightMm : 0;
  return Math.min(vessel.heightMm, Math.max(byWall, byHandle));
}

export function nested(desk: MistakeDesk): Mistake {
  const { ware, vessel, rack } = cupOf(desk);
  const right = inARow(vessel, rack);
  const over = right.map((piece) => ({ ...piece, baseMm: nestedBy(vessel), wrong: true }));
  return {
    id: 'nested',
    ...english.mistakes.nested,
    ware,
    wrong: { from: 'side', rack, roofMm: null, pieces: [...over, ...right] },
    right: { from: 'side', rack, roofMm: null, pieces: right },
  };
}

/** A glass in a compartment rack without the extender it needs; where the house has none, a jug that is taller than its rack takes. */
export function tall(desk: MistakeDesk): Mistake {
  const { formats, scenario } = desk;
  const say = english.mistakes.tall;
  const needs = ownPieces(scenario, ['glass', 'cup', 'mug']).find(
    ({ vessel, rack }) => extendersFor(vessel.heightMm, rack) > 0,
  );
  if (needs !== undefined) {
    const { ware, vessel, rack } = needs;
    const more = extendersFor(vessel.heightMm, rack);
    const bare = rack.innerHeightMm!;
    const withThem = bare + more * (rack.kind === 'grid' ? (rack.extenderMm ?? 0) : 0);
    const pieces = inARow(vessel, rack);
    return {
      id: 'tall',
      title: say.title,
      text: say.extender(
        formats.length(vessel.heightMm),
        formats.length(bare),
        formats.count(more),
        more === 1,
      ),
      ware,
      wrong: {
        from: 'side',
        rack,
        roofMm: bare,
        pieces: pieces.map((piece) => ({ ...piece, wrong: true })),
      },
      right: { from: 'side', rack, roofMm: withThem, pieces },
    };
  }
  const { ware, vessel, rack } = cupOf(desk);
  const limited = Number.isFinite(tallestOf(rack)) ? rack : typicalPiece('medium-cup', 'open').rack;
  const limit = tallestOf(limited);
  const jug: Vessel = {
    ...vessel,
    shape: 'jug',
    rimMm: 110,
    footMm: 120,
    heightMm: TOO_TALL * limit,
  };
  const pieces = inARow(vessel, limited);
  return {
    id: 'tall',
    title: say.title,
    text: say.text(formats.length(limit)),
    ware,
    wrong: {
      from: 'side',
      rack: limited,
      roofMm: limit,
      pieces: [
        { vessel: jug, x: pieces[0]!.x + 20, baseMm: 0, inverted: true, wrong: true },
        ...pieces.slice(2),
      ],
    },
    right: { from: 'side', rack: limited, roofMm: limit, pieces },
  };
}

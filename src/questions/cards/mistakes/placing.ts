/** Mistakes of how pieces lie in an open rack, seen from above: one too many, handles that hit, over the edge, half-empty, mixed. */
import { english } from '../../../tell/words.js';
import { usableOf } from '../../../racking/rack.js';
import type { Placed } from '../../../racking/meeting.js';
import type { PieceAbove } from '../../../tell/drawings/rack-view.js';
import { spell } from '../card.js';
import { loadTimes } from '../facts.js';
import { meanMs } from '../../../engine/durations.js';
import type { Mistake, MistakeDesk } from './mistake.js';
import { atFault, gapsIn } from './overlaps.js';
import { ownPieces, sharesGlass, typicalPiece, type AtHand } from './pieces-at-hand.js';

const TURNS = Array.from({ length: 24 }, (_, i) => i * 15);
/** How far a rack is loaded askew in the picture of what stands out, mm. */
const ASKEW_MM = 22;

/** The first ware of the house that stands in an open rack; with a handle, if it must have one. */
function inOpenRack({ scenario }: MistakeDesk, handled = false): AtHand {
  const own = ownPieces(scenario, ['cup', 'mug', 'bowl', 'glass']).find(
    ({ vessel, rack }) => rack.kind === 'open' && (!handled || (vessel.handleMm ?? 0) > 0),
  );
  return own ?? typicalPiece('medium-cup', 'open');
}

const allOf = ({ vessel }: AtHand, placed: readonly Placed[]): PieceAbove[] =>
  placed.map(({ x, y, angleDeg }) => ({ vessel, x, y, angleDeg }));

const marked = (at: AtHand, placed: readonly Placed[]): PieceAbove[] => {
  const wrong = atFault(at.vessel, at.rack, placed);
  return allOf(at, placed).map((piece, i) => ({ ...piece, wrong: wrong[i]! }));
};

/** The layout as it is, and one piece more in the middle, on the others. */
export function tooMany(desk: MistakeDesk): Mistake {
  const { formats } = desk;
  const at = inOpenRack(desk);
  const { x, y } = usableOf(at.rack);
  const right = allOf(at, at.layout.positions);
  const extra = { vessel: at.vessel, x: x / 2, y: y / 2, angleDeg: 35, wrong: true };
  return {
    id: 'too-many',
    title: english.mistakes.tooMany.title,
    text: english.mistakes.tooMany.text(
      formats.count(at.layout.pieces),
      formats.count(at.layout.pieces + 1),
    ),
    ware: at.ware,
    wrong: { from: 'above', rack: at.rack, pieces: [...right, extra] },
    right: { from: 'above', rack: at.rack, pieces: right },
  };
}

/** The same places with the handles turned to where they come closest; null: they never meet. */
export function handles(desk: MistakeDesk): Mistake | null {
  const { formats } = desk;
  const at = inOpenRack(desk, true);
  const turned = TURNS.map((angleDeg) => at.layout.positions.map((one) => ({ ...one, angleDeg })));
  const gaps = turned.map((placed) => gapsIn(at.vessel, at.rack, placed).betweenMm);
  const worst = gaps.indexOf(Math.min(...gaps));
  if (gaps[worst]! >= 0) return null;
  return {
    id: 'handles',
    title: english.mistakes.handles.title,
    text: english.mistakes.handles.text(formats.count(at.layout.pieces)),
    ware: at.ware,
    wrong: { from: 'above', rack: at.rack, pieces: marked(at, turned[worst]!) },
    right: { from: 'above', rack: at.rack, pieces: allOf(at, at.layout.positions) },
  };
}

/** The whole load pushed to one side. */
export function overTheEdge(desk: MistakeDesk): Mistake {
  const at = inOpenRack(desk);
  const moved = at.layout.positions.map((one) => ({ ...one, x: one.x + ASKEW_MM }));
  return {
    id: 'over',
    ...english.mistakes.over,
    ware: at.ware,
    wrong: { from: 'above', rack: at.rack, pieces: marked(at, moved) },
    right: { from: 'above', rack: at.rack, pieces: allOf(at, at.layout.positions) },
  };
}

export function halfEmpty(desk: MistakeDesk): Mistake {
  const { formats, scenario } = desk;
  const say = english.mistakes.half;
  const at = inOpenRack(desk);
  const { machineMs, racks } = loadTimes(scenario);
  const full = at.layout.pieces * racks;
  const half = Math.floor(at.layout.pieces / 2) * racks;
  const each = (pieces: number): string => spell(machineMs / pieces);
  const { partLoadWait } = scenario.washing;
  return {
    id: 'half',
    title: say.title,
    text: `${say.text(spell(machineMs), formats.count(full), formats.count(half), each(full), each(half))} ${partLoadWait === null ? say.full : say.wait(spell(meanMs(partLoadWait)))}`,
    ware: at.ware,
    wrong: {
      from: 'above',
      rack: at.rack,
      pieces: allOf(at, at.layout.positions.slice(0, half / racks)),
    },
    right: { from: 'above', rack: at.rack, pieces: allOf(at, at.layout.positions) },
  };
}

/** Every third cup a glass; null where glass and china share racks in this house. */
export function mixed(desk: MistakeDesk): Mistake | null {
  const { scenario } = desk;
  if (sharesGlass(scenario)) return null;
  const china = ownPieces(scenario, ['cup', 'mug', 'bowl']).find(
    ({ rack }) => rack.kind === 'open',
  );
  const at = china ?? typicalPiece('medium-cup', 'open');
  const glass = ownPieces(scenario, ['glass'])[0] ?? typicalPiece('tumbler', 'grid-25');
  const right = allOf(at, at.layout.positions);
  return {
    id: 'mixed',
    ...english.mistakes.mixed,
    ware: at.ware,
    wrong: {
      from: 'above',
      rack: at.rack,
      pieces: right.map((piece, i) =>
        i % 3 === 1 ? { ...piece, vessel: glass.vessel, wrong: true } : piece,
      ),
    },
    right: { from: 'above', rack: at.rack, pieces: right },
  };
}

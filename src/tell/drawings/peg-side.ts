/**
 * One row of a peg rack from the side, to scale: how the pieces lean, and that no two faces touch.
 */
import { cos, sin } from '../../elementary/angles.js';
import { LEAN_DEG, pegLoad, pegPositions } from '../../racking/pegs.js';
import { usableOf } from '../../racking/rack.js';
import type { PegRack } from '../../racking/rack.js';
import { depthOf } from '../../racking/vessel.js';
import type { Vessel } from '../../racking/vessel.js';
import { mm } from './piece-path.js';

/** Height of a leaning piece above the floor of the rack, mm. */
function heightOf(vessel: Vessel, rack: PegRack): number {
  const lean = ((rack.leanDeg ?? LEAN_DEG) * Math.PI) / 180;
  return vessel.rimMm * cos(lean) + depthOf(vessel) * sin(lean);
}

/**
 * The row as lines of SVG, a unit a millimetre, in a frame that begins at (left, top); and the height it takes.
 * A piece is the box round it: overall depth by diameter.
 */
export function pegSide(
  vessel: Vessel,
  rack: PegRack,
  left: number,
  top: number,
): { readonly lines: readonly string[]; readonly height: number } {
  const lean = rack.leanDeg ?? LEAN_DEG;
  const { along } = pegLoad(vessel, rack);
  const [depth, rim, tall] = [depthOf(vessel), vessel.rimMm, heightOf(vessel, rack)];
  const row = pegPositions(vessel, rack).slice(0, along);
  return {
    lines: [
      `<g transform="translate(${mm(left)} ${mm(top + tall)}) scale(1 -1)">`,
      `<path d="M0 0H${mm(usableOf(rack).x)}" stroke="currentColor" stroke-width="1.6"/>`,
      ...row.map(
        ({ x }) =>
          `<rect x="${mm(-depth / 2)}" y="${mm(-rim / 2)}" width="${mm(depth)}" height="${mm(rim)}" transform="translate(${mm(x)} ${mm(tall / 2)}) rotate(${mm(-lean)})" stroke="currentColor" stroke-width="1"/>`,
      ),
      '</g>',
    ],
    height: tall,
  };
}

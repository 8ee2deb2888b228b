/**
 * The outline of a piece as an SVG path, about the centre of its rim, handle to the right; y points up.
 */
import { square } from '../../elementary/powers.js';
import { ASSUMED_HANDLE_WIDTH_MM } from '../../racking/vessel.js';
import type { Vessel } from '../../racking/vessel.js';

/** A length for SVG: three decimals at most. */
export const mm = (value: number): string => String(Math.round(value * 1000) / 1000);

export function piecePath(vessel: Vessel): string {
  const footprint = vessel.footprint ?? 'round';
  const round = footprint === 'round';
  const a = (round ? Math.max(vessel.rimMm, vessel.footMm ?? 0) : vessel.rimMm) / 2;
  const b = round ? a : (vessel.rimAcrossMm ?? vessel.rimMm) / 2;
  const beyond = vessel.rimMm / 2 + (vessel.handleMm ?? 0);
  const half = Math.min((vessel.handleWidthMm ?? ASSUMED_HANDLE_WIDTH_MM) / 2, b);
  const root = footprint === 'square' ? a : a * Math.sqrt(1 - square(half / b));
  const handled = (vessel.handleMm ?? 0) > 0 && beyond > a;
  if (!handled)
    return footprint === 'square'
      ? `M${mm(a)} ${mm(-b)}V${mm(b)}H${mm(-a)}V${mm(-b)}Z`
      : `M${mm(a)} 0A${mm(a)} ${mm(b)} 0 1 1 ${mm(-a)} 0A${mm(a)} ${mm(b)} 0 1 1 ${mm(a)} 0Z`;
  const tip = tipPath(vessel.handleTip === 'round', root, beyond, half);
  const body =
    footprint === 'square'
      ? `V${mm(b)}H${mm(-a)}V${mm(-b)}H${mm(root)}`
      : `A${mm(a)} ${mm(b)} 0 1 1 ${mm(root)} ${mm(-half)}`;
  return `M${mm(root)} ${mm(-half)}${tip}${body}Z`;
}

/** From the lower root of the handle round its tip to the upper one. */
function tipPath(round: boolean, root: number, beyond: number, half: number): string {
  if (!round) return `H${mm(beyond)}V${mm(half)}H${mm(root)}`;
  const bend = Math.max(root, beyond - half);
  return `H${mm(bend)}A${mm(beyond - bend)} ${mm(half)} 0 0 1 ${mm(bend)} ${mm(half)}H${mm(root)}`;
}

/** The outline of a piece of cutlery about its middle, bowl or end to the right: a bowl at the end of a stem, or a bar. */
export function cutleryPath({ shape, rimMm, rimAcrossMm }: Vessel): string {
  const [long, broad] = [rimMm, rimAcrossMm ?? rimMm];
  const bowl = shape === 'spoon' ? 0.7 * broad : broad / 6;
  const stem = broad / 6;
  return `M${mm(-long / 2)} ${mm(-stem)}H${mm(long / 2 - 2 * bowl)}A${mm(bowl)} ${mm(shape === 'spoon' ? broad / 2 : stem)} 0 1 1 ${mm(long / 2 - 2 * bowl)} ${mm(stem)}H${mm(-long / 2)}Z`;
}

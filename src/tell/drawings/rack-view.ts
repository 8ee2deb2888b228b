/**
 * A rack as a small picture beside a word: from above, from the side, or along the rows of saucers. What is
 * drawn is data, so that a picture can be checked as well as looked at.
 *
 * One unit is a millimetre. Pieces that are wrong are drawn heavier and in another tint.
 */
import { standingHeight } from '../../racking/problems.js';
import { usableOf, type PegRack, type Rack } from '../../racking/rack.js';
import { depthOf, isCutlery, type Vessel } from '../../racking/vessel.js';
import { escapeHtml } from '../escape-html.js';
import { cutleryPath, mm, piecePath } from './piece-path.js';
import { floor } from './rack-floor.js';

/** Centre of the rim and direction of the handle, mm from a corner of the clear inside. */
export interface PieceAbove {
  readonly vessel: Vessel;
  readonly x: number;
  readonly y: number;
  readonly angleDeg: number;
  readonly wrong?: boolean;
}
/** `x`: middle, mm from the left wall; `baseMm`: how high above the floor it stands. */
export interface PieceBeside {
  readonly vessel: Vessel;
  readonly x: number;
  readonly baseMm: number;
  readonly inverted: boolean;
  readonly wrong?: boolean;
}
export type RackView =
  | { readonly from: 'above'; readonly rack: Rack; readonly pieces: readonly PieceAbove[] }
  | {
      readonly from: 'side';
      readonly rack: Rack;
      /** Clear height that is drawn as a line; null: none. */
      readonly roofMm: number | null;
      readonly pieces: readonly PieceBeside[];
    }
  | {
      readonly from: 'edge';
      readonly rack: PegRack;
      readonly vessel: Vessel;
      readonly leanDeg: number;
      /** Middle of each saucer along the row, mm from the wall. */
      readonly along: readonly number[];
      readonly wrong: boolean;
    };

const MARGIN = 14;
/** Lines of the floor against those of a large drawing: these are seen small. */
const FLOOR = 3;
const FINE = '#56b4e9';
const WRONG = '#d55e00';

/** SVG of one view. @param label what is seen, for those who cannot see it */
export function drawView(view: RackView, label: string): string {
  const { x: width } = usableOf(view.rack);
  const height = heightOf(view);
  const marks =
    view.from === 'above' ? above(view) : view.from === 'side' ? side(view) : edge(view);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-MARGIN} ${-MARGIN} ${mm(width + 2 * MARGIN)} ${mm(height + 2 * MARGIN)}" role="img" aria-label="${escapeHtml(label)}" fill="none" color="inherit">`,
    `<g transform="translate(0 ${mm(height)}) scale(1 -1)">`,
    ...marks,
    '</g>',
    '</svg>',
  ].join('');
}

function heightOf(view: RackView): number {
  if (view.from === 'above') return usableOf(view.rack).y;
  if (view.from === 'edge') return standingHeight(view.vessel, view.rack) + 30;
  const tallest = view.pieces.map(({ baseMm, vessel }) => baseMm + vessel.heightMm);
  return Math.max(view.roofMm ?? 0, ...tallest) + 20;
}

const tinted = (d: string, wrong: boolean, line = wrong ? 4 : 2.2): string =>
  `<path d="${d}" fill="${wrong ? WRONG : FINE}" fill-opacity="${wrong ? '0.45' : '0.28'}" stroke="currentColor" stroke-width="${mm(line)}" stroke-linejoin="round"/>`;

function above({ rack, pieces }: Extract<RackView, { from: 'above' }>): string[] {
  const { x, y } = usableOf(rack);
  return [
    `<rect width="${mm(x)}" height="${mm(y)}" rx="8" stroke="currentColor" stroke-width="3"/>`,
    ...floor(rack, FLOOR),
    ...pieces.map(
      ({ vessel, wrong = false, ...at }) =>
        `<g transform="translate(${mm(at.x)} ${mm(at.y)}) rotate(${mm(at.angleDeg)})">${isCutlery(vessel) ? tinted(cutleryPath(vessel), wrong, 2) : tinted(piecePath(vessel), wrong)}</g>`,
    ),
  ];
}

/** The floor of the rack on its feet, the clear height, and the pieces. */
function side({ rack, roofMm, pieces }: Extract<RackView, { from: 'side' }>): string[] {
  const { x } = usableOf(rack);
  return [
    `<path d="M0 0H${mm(x)}M0 0V40M${mm(x)} 0V40" stroke="currentColor" stroke-width="5"/>`,
    ...(roofMm === null
      ? []
      : [
          `<path d="M0 ${mm(roofMm)}H${mm(x)}" stroke="currentColor" stroke-width="3" stroke-dasharray="14 8"/>`,
        ]),
    ...pieces.map(
      ({ vessel, inverted, wrong = false, ...at }) =>
        `<g transform="translate(${mm(at.x)} ${mm(at.baseMm + (inverted ? vessel.heightMm : 0))})${inverted ? ' scale(1 -1)' : ''}">${tinted(profilePath(vessel), wrong)}${inverted ? '' : water(vessel)}</g>`,
    ),
  ];
}

/** Half the width at the foot: as given, else three fifths of the rim (assumed, for a picture). */
const footHalf = ({ footMm, rimMm }: Vessel): number => (footMm ?? 0.6 * rimMm) / 2;

/** Half the width of the body at a height above its foot, mm; straight from foot to rim. */
export const halfWidthAt = (vessel: Vessel, heightMm: number): number =>
  footHalf(vessel) + ((vessel.rimMm / 2 - footHalf(vessel)) * heightMm) / vessel.heightMm;

/** A piece upright from the side about the middle of its foot, handle to the right. */
function profilePath(vessel: Vessel): string {
  const { rimMm, heightMm, handleMm = 0 } = vessel;
  const [foot, rim] = [footHalf(vessel), rimMm / 2];
  const body = `M${mm(-foot)} 0L${mm(-rim)} ${mm(heightMm)}H${mm(rim)}L${mm(foot)} 0Z`;
  if (handleMm <= 0) return body;
  const [low, high] = [0.25 * heightMm, 0.85 * heightMm];
  const tip = rim + handleMm;
  return `${body}M${mm(halfWidthAt(vessel, high))} ${mm(high)}H${mm(tip - 10)}Q${mm(tip)} ${mm(high)} ${mm(tip)} ${mm(high - 10)}V${mm(low + 10)}Q${mm(tip)} ${mm(low)} ${mm(tip - 10)} ${mm(low)}H${mm(halfWidthAt(vessel, low))}`;
}

/** Water that stays in a piece that stands upright. */
function water(vessel: Vessel): string {
  const level = 0.75 * vessel.heightMm;
  const [foot, wide] = [footHalf(vessel) - 3, halfWidthAt(vessel, level) - 3];
  return `<path d="M${mm(-foot)} 4L${mm(-wide)} ${mm(level)}H${mm(wide)}L${mm(foot)} 4Z" fill="currentColor" fill-opacity="0.35"/>`;
}

/** Saucers from the side, leaning. */
function edge({
  rack,
  vessel,
  leanDeg,
  along,
  wrong,
}: Extract<RackView, { from: 'edge' }>): string[] {
  const { x } = usableOf(rack);
  const [long, thick] = [vessel.rimMm, depthOf(vessel)];
  const middle = standingHeight(vessel, rack) / 2;
  return [
    `<path d="M0 0H${mm(x)}M0 0V40M${mm(x)} 0V40" stroke="currentColor" stroke-width="5"/>`,
    ...along.map(
      (at) =>
        `<g transform="translate(${mm(at)} ${mm(middle)}) rotate(${mm(-leanDeg)})">${tinted(`M${mm(-thick / 2)} ${mm(-0.2 * long)}L${mm(thick / 2)} ${mm(-long / 2)}V${mm(long / 2)}L${mm(-thick / 2)} ${mm(0.2 * long)}Z`, wrong)}</g>`,
    ),
  ];
}

/** A tick or a cross as wide as the letters beside it; words say the same. */
export const tickOrCross = (right: boolean): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-20 -20 40 40" role="img" aria-hidden="true" class="card-mark" fill="none"><circle r="18" stroke="currentColor" stroke-width="3"/><path d="${right ? 'M-9 1L-3 8L10 -7' : 'M-8 -8L8 8M8 -8L-8 8'}" stroke="currentColor" stroke-width="5" stroke-linecap="round"/></svg>`;

/** A rack with its pieces, seen from above, to scale: what a trainer prints and hangs by the machine. */
import type { RackLayout } from '../../racking/layout.js';
import { usableOf, type Rack } from '../../racking/rack.js';
import { depthOf, isFlatware, type Vessel } from '../../racking/vessel.js';
import { cleanText } from '../clean-text.js';
import { escapeHtml } from '../escape-html.js';
import { english, type Words } from '../words.js';

export interface RackDrawingOptions {
  /** Name of the ware and of the rack, for people. */
  readonly ware: string;
  readonly rack: string;
  readonly words?: Words;
}

const MARGIN = 26;
const HEAD = 54;
const FOOT = 44;

/** One SVG document; lines in the text's own colour, so that it stands on light and dark. Millimetres are its units. */
export function drawRack(layout: RackLayout, vessel: Vessel, rack: Rack, options: RackDrawingOptions): string {
  const say = (options.words ?? english).racks;
  const { x: width, y: depth } = usableOf(rack);
  const outer = { width: width + 2 * MARGIN, height: depth + 2 * MARGIN + HEAD + FOOT };
  const ware = cleanText(options.ware);
  const kind = cleanText(options.rack);
  const title = say.drawingTitle(ware, layout.pieces, kind);
  const foot = say.drawingFoot(layout);
  const pieces = layout.positions.map((at) => (isFlatware(vessel) && rack.kind === 'peg' ? onEdge(vessel, at) : standing(vessel, at)));
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${outer.width} ${outer.height}" width="${outer.width}" height="${outer.height}" role="img" fill="none" stroke="currentColor" font-family="Helvetica, Arial, sans-serif">
<title>${escapeHtml(title)}</title>
<desc>${escapeHtml(`${say.drawingWords(ware, kind, width, depth)} ${foot}`)}</desc>
<g fill="currentColor" stroke="none"><text x="${MARGIN}" y="26" font-size="19" font-weight="bold">${escapeHtml(title)}</text>
<text x="${MARGIN}" y="46" font-size="13">${escapeHtml(say.drawingScale(width, depth))}</text></g>
<g transform="translate(${MARGIN} ${MARGIN + HEAD})">
<rect x="-9" y="-9" width="${width + 18}" height="${depth + 18}" rx="10" stroke-width="2.5"/>
<rect x="0" y="0" width="${width}" height="${depth}" stroke-width="0.8"/>
${compartments(rack, width, depth)}<g stroke-width="1.4" fill="#0072B2" fill-opacity="0.13">
${pieces.join('\n')}
</g></g>
<text x="${MARGIN}" y="${outer.height - 16}" font-size="13" fill="currentColor" stroke="none">${escapeHtml(foot)}</text>
</svg>
`;
}

const round = (mm: number): string => String(Math.round(mm * 100) / 100);

function compartments(rack: Rack, width: number, depth: number): string {
  if (rack.kind !== 'grid') return '';
  const walls = Array.from({ length: rack.cells - 1 }, (_, index) => {
    const [x, y] = [(width * (index + 1)) / rack.cells, (depth * (index + 1)) / rack.cells];
    return `M${round(x)} 0V${depth}M0 ${round(y)}H${width}`;
  });
  return `<path d="${walls.join('')}" stroke-width="0.8" stroke-dasharray="5 3"/>\n`;
}

interface At {
  readonly x: number;
  readonly y: number;
  readonly angleDeg: number;
}

/** A piece inverted: its rim, its foot, and the handle as a bar. */
function standing(vessel: Vessel, { x, y, angleDeg }: At): string {
  const radius = vessel.rimMm / 2;
  const handle = vessel.handleMm ?? 0;
  const half = (vessel.handleWidthMm ?? 14) / 2;
  const start = Math.sqrt(Math.max(0, radius * radius - half * half));
  const bar = handle > 0 ? `<path d="M${round(start)} ${round(-half)}H${round(radius + handle)}V${round(half)}H${round(start)}"/>` : '';
  const foot = vessel.footMm === undefined ? '' : `<circle r="${round(vessel.footMm / 2)}" fill="none" stroke-width="0.7"/>`;
  return `<g transform="translate(${round(x)} ${round(y)}) rotate(${round(angleDeg)})"><circle r="${round(radius)}"/>${foot}${bar}</g>`;
}

/** A saucer or plate on edge, seen from above: a narrow band as wide as the piece. */
function onEdge(vessel: Vessel, { x, y }: At): string {
  const thick = depthOf(vessel);
  return `<rect x="${round(x - thick / 2)}" y="${round(y - vessel.rimMm / 2)}" width="${round(thick)}" height="${round(vessel.rimMm)}" rx="${round(thick / 2)}"/>`;
}

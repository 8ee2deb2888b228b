/**
 * A loaded rack to scale, seen from above, as one SVG string: for a screen, and for a wall beside the machine.
 *
 * One unit is a millimetre. Lines and letters take the colour of the text around them, so that the drawing
 * reads on light and on dark paper; the two tints differ in brightness as well as in hue.
 */
import type { RackLayout } from '../../racking/layout.js';
import { pegLoad } from '../../racking/pegs.js';
import { OUTER_MM, usableOf } from '../../racking/rack.js';
import type { Rack } from '../../racking/rack.js';
import { depthOf } from '../../racking/vessel.js';
import type { Vessel } from '../../racking/vessel.js';
import { mm, piecePath } from './piece-path.js';

export interface RackDrawingOptions {
  /** Heading, such as the ware and the rack; absent: the id of the rack. */
  readonly title?: string | undefined;
  /** Start of the ids in the drawing; must differ between drawings on one page. */
  readonly id?: string | undefined;
  /** Width on the page, CSS pixels; absent: as wide as there is room. */
  readonly widthPx?: number | undefined;
}

const MARGIN = 12;
const HEADING = 44;
const UNDER = 128;
const ONE_WAY = '#56b4e9';
const OTHER_WAY = '#b35900';

const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);

/** SVG of one rack; the texts are escaped. */
export function drawRack(layout: RackLayout, vessel: Vessel, rack: Rack, options: RackDrawingOptions = {}): string {
  const inside = usableOf(rack);
  const wall = Math.max(6, ((rack.outerMm ?? OUTER_MM) - Math.max(inside.x, inside.y)) / 2);
  const [width, height] = [inside.x + 2 * (wall + MARGIN), inside.y + 2 * wall + MARGIN + HEADING + UNDER];
  const id = escaped(options.id ?? 'rack-drawing');
  const title = options.title ?? rack.id;
  const lines = captions(layout, vessel);
  // y points up inside the rack, as angles are counted, and down on the page.
  const [left, bottom] = [MARGIN + wall, HEADING + wall + inside.y];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-labelledby="${id}-title ${id}-desc"${options.widthPx === undefined ? '' : ` width="${mm(options.widthPx)}"`} font-family="system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif" fill="none" stroke="none" color="inherit">`,
    `<title id="${id}-title">${escaped(title)}</title>`,
    `<desc id="${id}-desc">${escaped(`Seen from above, to scale. ${lines.join(' ')}`)}</desc>`,
    `<text x="${mm(MARGIN)}" y="29" font-size="21" font-weight="600" fill="currentColor"${fitted(title, 21, width)}>${escaped(title)}</text>`,
    `<rect x="${mm(MARGIN)}" y="${HEADING}" width="${mm(inside.x + 2 * wall)}" height="${mm(inside.y + 2 * wall)}" rx="14" stroke="currentColor" stroke-width="1.6"/>`,
    `<g transform="translate(${mm(left)} ${mm(bottom)}) scale(1 -1)">`,
    `<rect width="${mm(inside.x)}" height="${mm(inside.y)}" rx="3" stroke="currentColor" stroke-width="0.8" stroke-opacity="0.6"/>`,
    ...floor(rack),
    ...pieces(layout, vessel, rack),
    '</g>',
    ...widthLine(left, bottom + wall + 16, inside.x),
    ...lines.map((line, i) => `<text x="${mm(MARGIN)}" y="${mm(bottom + wall + 52 + (i === 0 ? 0 : 6 + 22 * i))}" font-size="${i === 0 ? 21 : 15}"${i === 0 ? ' font-weight="600"' : ''} fill="currentColor"${fitted(line, i === 0 ? 21 : 15, width)}>${escaped(line)}</text>`),
    '</svg>',
  ].join('\n');
}

/** Lines too long for the drawing are set narrower rather than cut. */
const fitted = (text: string, size: number, width: number): string =>
  text.length * size * 0.55 > width - 2 * MARGIN ? ` textLength="${mm(width - 2 * MARGIN)}" lengthAdjust="spacingAndGlyphs"` : '';

/** Compartments or rows of pegs, faint. */
function floor(rack: Rack): string[] {
  const { x, y } = usableOf(rack);
  if (rack.kind === 'grid') {
    const [dx, dy] = [x / rack.cells, y / rack.cells];
    return Array.from({ length: rack.cells ** 2 }, (_, i) => {
      const [cx, cy] = [((i % rack.cells) + 0.5) * dx, (Math.floor(i / rack.cells) + 0.5) * dy];
      const half = rack.openingMm / 2;
      return `<rect x="${mm(cx - half)}" y="${mm(cy - half)}" width="${mm(2 * half)}" height="${mm(2 * half)}" rx="3" stroke="currentColor" stroke-width="0.8" stroke-opacity="0.45"/>`;
    });
  }
  if (rack.kind === 'basket') {
    const line = (at: number): string => `<path d="M${mm((at * x) / 16)} 0V${mm(y)}M0 ${mm((at * y) / 16)}H${mm(x)}" stroke="currentColor" stroke-width="0.5" stroke-opacity="0.25"/>`;
    return Array.from({ length: 15 }, (_, i) => line(i + 1));
  }
  return [];
}

function pieces(layout: RackLayout, vessel: Vessel, rack: Rack): string[] {
  if (rack.kind === 'peg') return onEdge(layout, vessel, rack);
  const outline = piecePath(vessel);
  const foot = (vessel.footMm ?? 0) > 0 && (vessel.footMm ?? 0) < vessel.rimMm ? `<circle r="${mm((vessel.footMm ?? 0) / 2)}" stroke="currentColor" stroke-width="0.7" stroke-opacity="0.55"/>` : '';
  const drawn = layout.positions.map((p) => {
    const tint = p.angleDeg === layout.angleDeg ? ONE_WAY : OTHER_WAY;
    return `<g transform="translate(${mm(p.x)} ${mm(p.y)}) rotate(${mm(p.angleDeg)})"><path d="${outline}" fill="${tint}" fill-opacity="0.28" stroke="currentColor" stroke-width="1.2" stroke-linejoin="round"/>${foot}</g>`;
  });
  const first = layout.positions[0];
  return first === undefined ? drawn : [...drawn, rimLabel(first, vessel)];
}

/** The rim of one piece, measured across it. */
function rimLabel(at: { readonly x: number; readonly y: number }, vessel: Vessel): string {
  const text = `${mm(Math.round(vessel.rimMm * 10) / 10)}`;
  const half = vessel.rimMm / 2;
  const size = Math.min(18, Math.max(10, vessel.rimMm / 5));
  return (vessel.footprint ?? 'round') === 'round'
    ? `<g transform="translate(${mm(at.x)} ${mm(at.y)}) scale(1 -1)"><path d="M${mm(-half)} 0H${mm(half)}M${mm(-half)} -4V4M${mm(half)} -4V4" stroke="currentColor" stroke-width="0.9"/><text y="${mm(-size * 0.35)}" font-size="${mm(size)}" text-anchor="middle" fill="currentColor">${text}</text></g>`
    : '';
}

/** Leaning pieces from above: what each covers of the length, its upper edge drawn heavier. */
function onEdge(layout: RackLayout, vessel: Vessel, rack: Extract<Rack, { kind: 'peg' }>): string[] {
  const load = pegLoad(vessel, rack);
  const across = vessel.rimMm;
  const thick = Math.min(depthOf(vessel), load.spacingMm);
  return layout.positions.map((p) => {
    const [x, y] = [p.x - thick / 2, p.y - across / 2];
    return `<g><rect x="${mm(x)}" y="${mm(y)}" width="${mm(thick)}" height="${mm(across)}" rx="${mm(Math.min(thick / 2, 8))}" fill="${ONE_WAY}" fill-opacity="0.28" stroke="currentColor" stroke-width="1"/><path d="M${mm(x + 2)} ${mm(y + 6)}V${mm(y + across - 6)}" stroke="currentColor" stroke-width="1.6"/></g>`;
  });
}

/** A dimension line under the rack: its clear inside. */
const widthLine = (left: number, y: number, length: number): string[] => [
  `<path d="M${mm(left)} ${mm(y)}H${mm(left + length)}M${mm(left)} ${mm(y - 5)}v10M${mm(left + length)} ${mm(y - 5)}v10" stroke="currentColor" stroke-width="0.9"/>`,
  `<text x="${mm(left + length / 2)}" y="${mm(y + 16)}" font-size="13" text-anchor="middle" fill="currentColor">${mm(length)} mm inside</text>`,
];

/** What the picture says, in words: count and pattern, then how near a change is, then what binds. */
export function captions(layout: RackLayout, vessel: Vessel): string[] {
  const { pieces: n, cliff, slackMm } = layout;
  const lines = [`${n} ${n === 1 ? 'piece' : 'pieces'}${n === 0 ? '' : `, ${patternText(layout, vessel)}`}`];
  if (n === 0) return [...lines, ...layout.problems.slice(0, 2).map((problem) => `${problem.rule[0]!.toUpperCase()}${problem.rule.slice(1)}.`)];
  lines.push(slackMm === null ? 'The rim could be 20 mm wider in this pattern.' : `Slack: ${tenths(slackMm)} mm more rim before this pattern loses pieces.`);
  if (cliff !== null) lines.push(`${tenths(Math.abs(cliff.changeMm))} mm ${cliff.changeMm < 0 ? 'less' : 'more'} ${DIMENSION[cliff.dimension]}: ${cliff.piecesThen} instead of ${n}.`);
  lines.push(BINDS[layout.binds]);
  return lines;
}

/** Rounded down, so that no slack is promised that is not there. */
const tenths = (value: number): string => (Math.floor(value * 10 + 1e-9) / 10).toFixed(1);

const DIMENSION = { rim: 'rim', handle: 'handle', handleWidth: 'width of handle', height: 'height', depth: 'depth' } as const;

const BINDS = {
  opening: 'The opening of the compartments sets the number.',
  height: 'The height of the rack sets the number.',
  neighbour: 'Neighbours keep one more piece out.',
  wall: 'The walls keep one more piece out.',
  mass: 'The mass of the loaded rack sets the number.',
  kind: 'This kind of rack does not take this kind of piece.',
} as const;

function patternText(layout: RackLayout, vessel: Vessel): string {
  if (layout.pattern === 'compartments') return handleText(layout, vessel, 'one a compartment');
  if (layout.pattern === 'on edge') return 'on edge';
  if (layout.pattern === 'loose') return 'loose in the basket';
  return handleText(layout, vessel, { grid: 'in a grid', staggered: 'in staggered rows', turned: 'every second row turned' }[layout.pattern]);
}

function handleText(layout: RackLayout, vessel: Vessel, pattern: string): string {
  if ((vessel.handleMm ?? 0) <= 0) return pattern;
  const angle = layout.angleDeg % 90;
  return `${pattern}, handles ${angle === 0 ? 'straight' : `at ${mm(Math.round(angle * 10) / 10)}°`}`;
}

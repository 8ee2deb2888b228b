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
import { plainMetric, type Measures } from '../measures.js';
import { english, type Words } from '../words.js';
import { pegSide } from './peg-side.js';
import { cutleryPath, mm, piecePath } from './piece-path.js';
import { floor } from './rack-floor.js';
import { changedMeasure } from '../words/dimensions.js';

export interface RackDrawingOptions {
  /** Heading, such as the ware and the rack; absent: the id of the rack. */
  readonly title?: string | undefined;
  /** Start of the ids in the drawing; must differ between drawings on one page. */
  readonly id?: string | undefined;
  /** Width on the page, CSS pixels; absent: as wide as there is room. */
  readonly widthPx?: number | undefined;
  /** Height of letters where it stands on a card, which says all but the measures in words. */
  readonly onCard?: number | undefined;
  /** How lengths are written; absent: in millimetres. The drawing itself stays in millimetres. */
  readonly measures?: Measures | undefined;
}

const MARGIN = 12;
const HEADING = 44;
const ONE_WAY = '#56b4e9';
const OTHER_WAY = '#b35900';
/** Sizes of heading and text, and of a letter's width against its height on average. */
const LARGE = 21;
const SMALL = 15;
const LETTER = 0.54;

const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);

/** SVG of one rack; the texts are escaped. */
export function drawRack(
  layout: RackLayout,
  vessel: Vessel,
  rack: Rack,
  options: RackDrawingOptions = {},
): string {
  const { measures = plainMetric, onCard } = options;
  const top = onCard === undefined ? HEADING : MARGIN;
  const letters = onCard ?? SMALL;
  const say = english.charts.drawing;
  const inside = usableOf(rack);
  const wall = Math.max(6, ((rack.outerMm ?? OUTER_MM) - Math.max(inside.x, inside.y)) / 2);
  const width = inside.x + 2 * (wall + MARGIN);
  const id = escaped(options.id ?? 'rack-drawing');
  const title = options.title ?? rack.id;
  const [count, ...said] = captions(layout, vessel, measures, say);
  const lines = said.flatMap((text) =>
    wrapped(text, Math.floor((width - 2 * MARGIN) / (SMALL * LETTER))),
  );
  // y points up inside the rack, as angles are counted, and down on the page.
  const [left, bottom] = [MARGIN + wall, top + wall + inside.y];
  const side =
    rack.kind === 'peg' && layout.pieces > 0
      ? pegSide(vessel, rack, left, bottom + wall + 31 + letters)
      : null;
  const under = bottom + wall + (side === null ? 0 : side.height + 31 + letters);
  const height = under + (onCard === undefined ? 66 + 22 * lines.length : 16 + onCard) + MARGIN;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-labelledby="${id}-title ${id}-desc"${options.widthPx === undefined ? '' : ` width="${mm(options.widthPx)}"`} font-family="system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif" fill="none" color="inherit">`,
    `<title id="${id}-title">${escaped(title)}</title>`,
    `<desc id="${id}-desc">${escaped([side === null ? say.fromAbove : say.fromAboveAndSide, `${count}.`, ...said].join(' '))}</desc>`,
    ...(onCard === undefined
      ? [
          lineOfText(
            title,
            29,
            Math.min(LARGE, (width - 2 * MARGIN) / (LETTER * title.length)),
            true,
          ),
        ]
      : []),
    `<rect x="${mm(MARGIN)}" y="${top}" width="${mm(inside.x + 2 * wall)}" height="${mm(inside.y + 2 * wall)}" rx="14" stroke="currentColor" stroke-width="1.6"/>`,
    `<g transform="translate(${mm(left)} ${mm(bottom)}) scale(1 -1)">`,
    `<rect width="${mm(inside.x)}" height="${mm(inside.y)}" rx="3" stroke="currentColor" stroke-width="0.8" stroke-opacity="0.6"/>`,
    ...floor(rack),
    ...pieces(layout, vessel, rack, measures, letters),
    '</g>',
    ...(side?.lines ?? []),
    ...widthLine(
      left,
      bottom + wall + 14,
      inside.x,
      say.inside(measures.length(inside.x)),
      letters,
    ),
    ...(onCard === undefined
      ? [
          lineOfText(count!, under + 58, LARGE, true),
          ...lines.map((line, i) => lineOfText(line, under + 84 + 22 * i - 2, SMALL, false)),
        ]
      : []),
    '</svg>',
  ].join('\n');
}

const lineOfText = (text: string, y: number, size: number, heavy: boolean): string =>
  `<text x="${MARGIN}" y="${mm(y)}" font-size="${mm(size)}"${heavy ? ' font-weight="600"' : ''} fill="currentColor">${escaped(text)}</text>`;

/** Broken between words into lines of at most so many letters. */
function wrapped(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

function pieces(
  layout: RackLayout,
  vessel: Vessel,
  rack: Rack,
  measures: Measures,
  letters: number,
): string[] {
  if (rack.kind === 'peg') return onEdge(layout, vessel, rack);
  if (rack.kind === 'basket') return loose(layout, vessel, rack);
  const outline = piecePath(vessel);
  const foot =
    (vessel.footMm ?? 0) > 0 && (vessel.footMm ?? 0) < vessel.rimMm
      ? `<circle r="${mm((vessel.footMm ?? 0) / 2)}" stroke="currentColor" stroke-width="0.7" stroke-opacity="0.55"/>`
      : '';
  const drawn = layout.positions.map((p) => {
    const tint = p.angleDeg === layout.angleDeg ? ONE_WAY : OTHER_WAY;
    return `<g transform="translate(${mm(p.x)} ${mm(p.y)}) rotate(${mm(p.angleDeg)})"><path d="${outline}" fill="${tint}" fill-opacity="0.28" stroke="currentColor" stroke-width="1.2" stroke-linejoin="round"/>${foot}</g>`;
  });
  const first = layout.positions[0];
  return first === undefined ? drawn : [...drawn, rimLabel(first, vessel, measures, letters)];
}

/** The rim of one piece, measured across it; the unit stands with the width of the rack. */
function rimLabel(
  at: { readonly x: number; readonly y: number },
  vessel: Vessel,
  measures: Measures,
  letters: number,
): string {
  const text = escaped(measures.length(vessel.rimMm).split('\u00A0')[0]!);
  const half = vessel.rimMm / 2;
  const size = Math.min(letters, vessel.rimMm / 2.4);
  return (vessel.footprint ?? 'round') === 'round'
    ? `<g transform="translate(${mm(at.x)} ${mm(at.y)}) scale(1 -1)"><path d="M${mm(-half)} 0H${mm(half)}M${mm(-half)} -4V4M${mm(half)} -4V4" stroke="currentColor" stroke-width="0.9"/><text y="${mm(-size * 0.35)}" font-size="${mm(size)}" text-anchor="middle" fill="currentColor">${text}</text></g>`
    : '';
}

/** Leaning pieces from above: what each covers of the length, its upper edge drawn heavier. */
function onEdge(
  layout: RackLayout,
  vessel: Vessel,
  rack: Extract<Rack, { kind: 'peg' }>,
): string[] {
  const load = pegLoad(vessel, rack);
  const across = vessel.rimMm;
  const thick = Math.min(depthOf(vessel), load.spacingMm);
  return layout.positions.map((p) => {
    const [x, y] = [p.x - thick / 2, p.y - across / 2];
    return `<g><rect x="${mm(x)}" y="${mm(y)}" width="${mm(thick)}" height="${mm(across)}" rx="${mm(Math.min(thick / 2, 8))}" fill="${ONE_WAY}" fill-opacity="0.28" stroke="currentColor" stroke-width="1"/><path d="M${mm(x + 2)} ${mm(y + 6)}V${mm(y + across - 6)}" stroke="currentColor" stroke-width="1.6"/></g>`;
  });
}

/** Cutlery side by side, to show how many and how large; it lies as it falls. Not drawn where layers overlap. */
function loose(layout: RackLayout, vessel: Vessel, rack: Rack): string[] {
  const { x, y } = usableOf(rack);
  const [long, broad] = [vessel.rimMm, vessel.rimAcrossMm ?? vessel.rimMm];
  const columns = Math.max(1, Math.floor(x / long));
  const rows = Math.ceil(layout.pieces / columns);
  if (long > x || rows * broad > y) return [];
  const [dx, dy] = [x / columns, y / rows];
  const shape = cutleryPath(vessel);
  return Array.from({ length: layout.pieces }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return `<path transform="translate(${mm((column + 0.5) * dx)} ${mm((row + 0.5) * dy)})${row % 2 === 1 ? ' rotate(180)' : ''}" d="${shape}" fill="${ONE_WAY}" fill-opacity="0.28" stroke="currentColor" stroke-width="0.9" stroke-linejoin="round"/>`;
  });
}

/** A dimension line under the rack: its clear inside. */
const widthLine = (
  left: number,
  y: number,
  length: number,
  label: string,
  letters: number,
): string[] => [
  `<path d="M${mm(left)} ${mm(y)}H${mm(left + length)}M${mm(left)} ${mm(y - 5)}v10M${mm(left + length)} ${mm(y - 5)}v10" stroke="currentColor" stroke-width="0.9"/>`,
  `<text x="${mm(left + length / 2)}" y="${mm(y + 3 + letters)}" font-size="${letters}" text-anchor="middle" fill="currentColor">${escaped(label)}</text>`,
];

/** What the picture says, in words: the count; then the pattern, how near a change is, and what binds. */
function captions(
  layout: RackLayout,
  vessel: Vessel,
  { length, room, enough }: Measures,
  say: Words['charts']['drawing'],
): string[] {
  const { pieces: n, cliff, slackMm } = layout;
  const count = say.pieces(n);
  if (n === 0)
    return [
      count,
      ...layout.problems
        .slice(0, 2)
        .map(
          (problem) =>
            `${problem.rule[0]!.toUpperCase()}${problem.rule.slice(1)}. ${problem.remedy}`,
        ),
    ];
  const lines = [count, patternText(layout, vessel, say)];
  if (layout.pattern === 'loose') return lines;
  lines.push(slackMm === null ? say.slackAmple(length(AMPLE_MM)) : say.slack(room(slackMm)));
  if (cliff !== null)
    lines.push(
      say.cliff(
        changedMeasure(
          cliff.dimension,
          enough(Math.abs(cliff.changeMm)),
          cliff.changeMm < 0 ? 'less' : 'more',
        ),
        cliff.piecesThen,
        n,
      ),
    );
  lines.push(say.binds[layout.binds]);
  return lines;
}

/** Slack beyond which the layout says no more. */
const AMPLE_MM = 20;

function patternText(layout: RackLayout, vessel: Vessel, say: Words['charts']['drawing']): string {
  const pattern = say.pattern[layout.pattern];
  if ((vessel.handleMm ?? 0) <= 0) return `${pattern}.`;
  const angle = layout.angleDeg % 90;
  return say.handles(pattern, angle === 0 ? null : mm(Math.round(angle * 10) / 10));
}

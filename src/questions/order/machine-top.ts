/** Drawing: the machine top from above, to scale, with every stack where it stands. */
import { cos, sin } from '../../elementary/angles.js';
import { HANDLE_WIDTH_MM } from '../../ordering/shelf-packing.js';
import type { StorageLayout, TopStack } from '../../ordering/storage.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { palette } from '../../tell/charts/style.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { plainMetric, type Measures } from '../../tell/measures.js';
import { english } from '../../tell/words.js';

const COLOURS = [
  palette.sky,
  palette.orange,
  palette.green,
  palette.purple,
  palette.blue,
  palette.vermilion,
];
/** Millimetres of the drawing round the top, for words and the scale. */
const MARGIN = 38;
/** To the front and right: handles all one way, into the gap between neighbours, to the maker's hand. */
const HANDLE_ANGLE = Math.PI / 4;

/** One SVG element; a unit is a millimetre, and it fills the width it is given. Text takes the colour around it. */
export function drawMachineTop(layout: StorageLayout, measures: Measures = plainMetric): string {
  const say = english.charts.drawing;
  const { widthMm, depthMm } = layout.top;
  // Not below 10 px where the picture is as wide as a phone.
  const letters = Math.max(23, Math.ceil((widthMm + 2 * MARGIN) / 33));
  const line = letters + 3;
  const named = layout.lines.filter((line) => line.onTop + line.inReserve > 0);
  const colourOf = new Map(
    layout.lines
      .filter((line) => line.onTop > 0)
      .map((line, index) => [line.ware, COLOURS[index % COLOURS.length]!]),
  );
  const height = MARGIN * 2 + depthMm + line * (named.length + 1);
  const legendTop = MARGIN * 2 + depthMm + line;
  const parts = [
    rect(MARGIN, MARGIN, widthMm, depthMm, 'fill="none" stroke="currentColor" stroke-width="2"'),
    text(MARGIN + widthMm / 2, MARGIN - 10, say.back, 'middle'),
    text(MARGIN + widthMm / 2, MARGIN + depthMm + 26, say.front, 'middle'),
    ...scaleBar(MARGIN + widthMm, MARGIN + depthMm + 10, measures),
    ...layout.stacks.map((stack) => stackOf(stack, colourOf.get(stack.ware)!)),
    ...(layout.stacks.length === 0
      ? [text(MARGIN + widthMm / 2, MARGIN + depthMm / 2, say.empty, 'middle')]
      : []),
    ...named.map((held, index) => {
      const y = legendTop + index * line;
      const mark =
        held.onTop === 0
          ? ''
          : `<circle cx="${MARGIN + 9}" cy="${y - 6}" r="9" fill="${colourOf.get(held.ware)!}" fill-opacity="0.55" stroke="currentColor"/>`;
      return (
        mark +
        text(
          MARGIN + 28,
          y,
          shorten(cleanText(say.onTop(held.name, held.onTop, held.inReserve, held.trigger)), 60),
          'start',
        )
      );
    }),
  ];
  const label = escapeHtml(
    say.top(measures.length(widthMm), measures.length(depthMm), layout.stacks.length),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${label}" viewBox="0 0 ${round(widthMm + MARGIN * 2)} ${round(height)}" width="100%" font-size="${letters}" font-family="'Helvetica Neue', Helvetica, Arial, sans-serif">${parts.join('')}</svg>`;
}

/** A stack: its outline with the handle, and how many pieces stand on each other. */
function stackOf({ xMm, yMm, diameterMm, handleMm, pieces }: TopStack, colour: string): string {
  const [x, y, radius] = [MARGIN + xMm, MARGIN + yMm, diameterMm / 2];
  const reach = (length: number): string =>
    `${round(x + cos(HANDLE_ANGLE) * length)} ${round(y + sin(HANDLE_ANGLE) * length)}`;
  const handle =
    handleMm > 0
      ? `<path d="M${reach(radius)} L${reach(radius + handleMm)}" stroke="${colour}" stroke-width="${HANDLE_WIDTH_MM}" stroke-linecap="butt"/>`
      : '';
  return `${handle}<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius)}" fill="${colour}" fill-opacity="0.55" stroke="currentColor" stroke-width="1.5"/>${text(x, y + 8, `${pieces}`, 'middle')}`;
}

/** A round length of the reader's unit: 100 mm, or 4 inches. */
function scaleBar(right: number, y: number, { units, length }: Measures): readonly string[] {
  const long = units === 'us' ? 101.6 : 100;
  return [
    `<path d="M${round(right - long)} ${y - 4}v8M${round(right - long)} ${y}h${long}M${right} ${y - 4}v8" fill="none" stroke="currentColor" stroke-width="2"/>`,
    text(right - long / 2, y + 26, length(long), 'middle'),
  ];
}

const rect = (x: number, y: number, width: number, height: number, look: string): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" ${look}/>`;

const text = (x: number, y: number, words: string, anchor: 'start' | 'middle'): string =>
  `<text x="${round(x)}" y="${round(y)}" text-anchor="${anchor}" fill="currentColor">${escapeHtml(words)}</text>`;

/** Hundredths of a millimetre are enough, and keep the bytes the same everywhere. */
const round = (mm: number): number => Math.round(mm * 100) / 100;

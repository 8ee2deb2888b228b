/** Chart: where the pieces of one ware are, from opening until all is clean. */
import { cleanText, shorten } from '../../../tell/clean-text.js';
import type { Evidence } from '../answer.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips } from '../../../tell/charts/hover.js';
import {
  clockAxis,
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';
import { english } from '../../../tell/words.js';

export interface PlacesInput {
  readonly evidence: Evidence;
  /** Index of the ware in the evidence. */
  readonly ware: number;
  readonly name: string;
  /** Pieces of it in the stock. */
  readonly stock: number;
  readonly openingMinute: number | null;
}

/** From the table round to the shelf: neighbours differ in lightness as well as in hue. */
const colours = [
  palette.blue,
  palette.sky,
  palette.purple,
  palette.orange,
  palette.vermilion,
  palette.green,
  '#8FD3BD',
  '#8C8C8C',
];

export function placesThroughRush(input: PlacesInput, context: ChartContext): ChartSpec {
  const { formats, locale } = context;
  const say = english.charts.places;
  const name = shorten(cleanText(input.name), 40);
  const { steps, places, until, step } = shown(input);
  const stack = places.map((place) => input.evidence.places[place]!);
  const values = steps.flatMap(({ minute, counts }) =>
    places.map((place, order) => ({
      minute,
      order,
      place: input.evidence.places[place]!,
      pieces: counts[place]!,
    })),
  );
  const sums = steps.map(({ minute, counts }) => ({
    minute,
    counts,
    sum: counts.reduce((a, b) => a + b, 0),
  }));
  const peak = sums.reduce(
    (best, one) => (one.sum > best.sum ? one : best),
    sums[0] ?? { minute: 0, counts: [], sum: 0 },
  );
  const main = peak.counts.reduce(
    (best, pieces, place) => (pieces > (peak.counts[best] ?? 0) ? place : best),
    0,
  );
  const off = input.evidence.offShelf[input.ware]?.q95.slice(0, steps.length) ?? [];
  const stock = english.answer.pieces(formats.count(input.stock), name, input.stock === 1);
  const sentence = sums.map(({ minute, counts, sum }, i) => {
    const [time, most] = [formats.clock(minute), off[i] ?? 0];
    if (Math.round(sum) === 0)
      return { at: minute, sentence: say.sentenceNone(time, stock, formats.count(most)) };
    const fullest = counts.reduce(
      (best, pieces, place) => (pieces > (counts[best] ?? 0) ? place : best),
      0,
    );
    return {
      at: minute,
      sentence: say.sentence(
        time,
        formats.count(Math.round(sum)),
        stock,
        input.evidence.places[fullest] ?? '',
        formats.count(Math.round(counts[fullest] ?? 0)),
        formats.count(most),
      ),
    };
  });
  const top = Math.max(1, 1.12 * Math.max(input.stock, peak.sum, ...off));
  const x = {
    field: 'minute',
    type: 'quantitative' as const,
    scale: { domain: [0, until], nice: false },
    axis: clockAxis(
      until,
      formats,
      input.openingMinute === null ? english.charts.timeSinceOpening : english.charts.timeOfDay,
      input.openingMinute,
    ),
  };
  const y = {
    type: 'quantitative' as const,
    title: say.pieces,
    scale: { domain: [0, top], nice: false },
    axis: { format: ',d', tickMinStep: 1 },
  };
  return {
    ...framed({
      title: say.title(name, formats.decimal(peak.sum, 0), formats.clock(peak.minute)),
      description: say.description(
        name,
        input.evidence.places[main] ?? '',
        formats.percent(peak.sum > 0 ? (peak.counts[main] ?? 0) / peak.sum : 0, 0),
        formats.count(input.stock),
      ),
      locale,
    }),
    width: PLOT_WIDTH,
    height: 240,
    layer: [
      {
        data: { values },
        mark: {
          type: 'area',
          line: { color: 'currentColor', strokeWidth: 0.6, opacity: 0.6 },
          opacity: 0.9,
        },
        encoding: {
          x,
          y: { ...y, field: 'pieces', stack: 'zero' },
          order: { field: 'order', type: 'quantitative' },
          color: {
            field: 'place',
            type: 'nominal',
            scale: {
              domain: stack,
              range: places.map((place) => colours[place % colours.length]!),
            },
            sort: stack,
          },
        },
      },
      {
        data: { values: off.map((pieces, i) => ({ minute: i * step, pieces })) },
        mark: { type: 'line', color: 'currentColor', strokeDash: [5, 4], strokeWidth: 1.5 },
        encoding: { x, y: { ...y, field: 'pieces' } },
      },
      {
        data: { values: off.length === 0 ? [] : [{ ...highest(off, step), label: say.q95 }] },
        mark: { type: 'text', align: 'left', baseline: 'bottom', dy: -5, dx: -10 },
        encoding: { x, y: { ...y, field: 'pieces' }, text: { field: 'label', type: 'nominal' } },
      },
      {
        data: { values: [{ pieces: input.stock }] },
        mark: { type: 'rule', color: 'currentColor', strokeWidth: 1.5 },
        encoding: { y: { ...y, field: 'pieces' } },
      },
      {
        data: {
          values: [
            { minute: 0, pieces: input.stock, label: say.stock(formats.count(input.stock)) },
          ],
        },
        mark: { type: 'text', align: 'left', baseline: 'bottom', dy: -5, dx: 4, fontWeight: 600 },
        encoding: { x, y: { ...y, field: 'pieces' }, text: { field: 'label', type: 'nominal' } },
      },
      ...tellingStrips(sentence, x),
    ],
  };
}

export function placesThroughRushTable(input: PlacesInput): ChartTable {
  const say = english.charts.places;
  const { steps, places } = shown(input);
  return {
    caption: say.caption(shorten(cleanText(input.name), 60)),
    columns: [
      { title: say.time, as: 'clock' },
      ...places.map((place) => ({ title: input.evidence.places[place]!, as: 'decimal' as const })),
      { title: say.q95, as: 'count' },
    ],
    rows: steps.map(({ minute, counts }, i) => [
      minute,
      ...places.map((place) => counts[place]!),
      input.evidence.offShelf[input.ware]?.q95[i] ?? null,
    ]),
  };
}

/** Steps up to the moment when all is back on the shelf, and the places that hold anything at any time. */
function shown({ evidence, ware }: PlacesInput) {
  const all = evidence.mean[ware] ?? [];
  const isBusy = (counts: readonly number[]): boolean => counts.some((pieces) => pieces > 0.05);
  const last = all.findLastIndex(isBusy);
  const steps = all
    .slice(0, Math.max(2, Math.min(all.length, last + 2)))
    .map((counts, i) => ({ minute: i * evidence.stepMinutes, counts }));
  const places = evidence.places
    .map((_, place) => place)
    .filter((place) => steps.some(({ counts }) => (counts[place] ?? 0) > 0));
  return {
    steps,
    places,
    step: evidence.stepMinutes,
    until: (steps.length - 1) * evidence.stepMinutes,
  };
}

const highest = (off: readonly number[], step: number): { minute: number; pieces: number } => {
  const pieces = Math.max(...off);
  return { minute: off.indexOf(pieces) * step, pieces };
};

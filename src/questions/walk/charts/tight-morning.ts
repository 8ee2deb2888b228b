/** Chart: one tight morning, where the pieces of the scarcest ware are, against the stock. */
import { cleanText, shorten } from '../../../tell/clean-text.js';
import { chart, type Chart, type ChartTable } from '../../../tell/charts/chart-table.js';
import {
  clockAxis,
  framed,
  palette,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';
import { english } from '../../../tell/words.js';
import type { TightMorning } from '../tight-morning.js';

export interface TightMorningInput {
  readonly morning: TightMorning;
  readonly name: string;
  readonly openingMinute: number | null;
}

const COLOURS = [palette.blue, palette.orange, palette.vermilion, palette.green];

interface Size {
  readonly width: number;
  readonly height: number;
  readonly legendColumns: number;
}
const WIDE: Size = { width: 600, height: 155, legendColumns: 4 };
const MOMENTS_ON_A_PHONE = 45;
/** About as wide as a phone, so that letters keep their size there. */
const NARROW: Size = { width: 270, height: 190, legendColumns: 2 };

export function tightMorningChart(input: TightMorningInput, context: ChartContext): Chart {
  return {
    ...chart('tight-morning', spec(input, context, WIDE), tableOf(input)),
    narrow: spec({ ...input, morning: thinned(input.morning) }, context, NARROW),
  };
}

/** Of moments that a phone cannot keep apart the one with most pieces off the shelf, so that the tightest stays. */
export function thinned(morning: TightMorning): TightMorning {
  const until = morning.moments.at(-1)?.minute ?? 0;
  const off = ({ counts }: TightMorning['moments'][number]): number =>
    counts.reduce((sum, pieces) => sum + pieces, 0);
  const kept = new Map<number, TightMorning['moments'][number]>();
  for (const moment of morning.moments) {
    const slot = until === 0 ? 0 : Math.floor((moment.minute / until) * MOMENTS_ON_A_PHONE);
    const known = kept.get(slot);
    if (known === undefined || off(moment) > off(known)) kept.set(slot, moment);
  }
  return { ...morning, moments: [...kept.values()] };
}

function spec(
  { morning, name, openingMinute }: TightMorningInput,
  { formats, locale }: ChartContext,
  { width, height, legendColumns }: Size,
): ChartSpec {
  const say = english.charts.tight;
  const { moments, stock, tightest } = morning;
  const short = shorten(cleanText(name), 40);
  const until = moments.at(-1)?.minute ?? 1;
  const values = moments.flatMap(({ minute, counts }) =>
    counts.map((pieces, order) => ({ minute, order, stage: say.stages[order]!, pieces })),
  );
  const x = {
    field: 'minute',
    type: 'quantitative' as const,
    scale: { domain: [0, until], nice: false },
    axis: clockAxis(
      until,
      formats,
      openingMinute === null ? english.charts.timeSinceOpening : english.charts.timeOfDay,
      openingMinute,
    ),
  };
  // Above the line of the stock stand words, and nothing can be there to be read off.
  const upToStock = { condition: { test: `datum.value > ${stock}`, value: 0 }, value: 1 };
  const y = {
    type: 'quantitative' as const,
    title: say.pieces,
    scale: { domain: [0, Math.max(1, stock * 1.16)], nice: false },
    axis: { format: ',d', tickMinStep: 1, gridOpacity: upToStock, labelOpacity: upToStock },
  };
  const left = Math.max(0, tightest.left);
  // Nothing to have, and nothing was missed: no moment is tighter than another.
  const unused = stock === 0 && tightest.left === 0;
  const moment = unused ? [] : [{ minute: tightest.minute, pieces: stock - left }];
  const all = unused ? [] : [{ minute: 0, pieces: stock, label: say.stock(formats.count(stock)) }];
  const toTheLeft = tightest.minute > until / 2;
  return {
    ...framed({
      title: unused
        ? say.unused
        : say.title(
            left === 0
              ? say.none(english.answer.pieces('', short, false).replace(/^ ?(?:× )?/, ''))
              : english.answer.pieces(formats.count(left), short, left === 1),
            formats.clock(tightest.minute),
            left === 1,
          ),
      description: unused
        ? say.unusedWhy
        : say.description(short, formats.count(stock), formats.count(left)),
      locale,
    }),
    width,
    height,
    layer: [
      {
        data: { values },
        mark: { type: 'area', interpolate: 'step-after', opacity: 0.9 },
        encoding: {
          x,
          y: { ...y, field: 'pieces', stack: 'zero' },
          order: { field: 'order', type: 'quantitative' },
          color: {
            field: 'stage',
            type: 'nominal',
            scale: { domain: [...say.stages], range: COLOURS },
            sort: [...say.stages],
            legend: { columns: legendColumns, columnPadding: 10, labelFontSize: 12 },
          },
        },
      },
      {
        data: { values: [{ pieces: stock }] },
        mark: { type: 'rule', color: 'currentColor', strokeWidth: 2 },
        encoding: { y: { ...y, field: 'pieces' } },
      },
      {
        data: { values: all },
        mark: { type: 'text', align: 'left', baseline: 'bottom', dy: -5, dx: 2, fontWeight: 600 },
        encoding: { x, y: { ...y, field: 'pieces' }, text: { field: 'label', type: 'nominal' } },
      },
      {
        data: { values: moment },
        mark: { type: 'rule', color: 'currentColor', strokeDash: [3, 3] },
        encoding: { x },
      },
      {
        data: { values: moment.map((one) => ({ ...one, label: say.left(formats.count(left)) })) },
        mark: {
          type: 'text',
          align: toTheLeft ? 'right' : 'left',
          baseline: 'bottom',
          dy: -5,
          dx: toTheLeft ? -5 : 5,
        },
        encoding: {
          x,
          y: { ...y, datum: stock },
          text: { field: 'label', type: 'nominal' },
        },
      },
    ],
  } as ChartSpec;
}

function tableOf({ morning, name }: TightMorningInput): ChartTable {
  const say = english.charts.tight;
  return {
    caption: say.caption(shorten(cleanText(name), 60)),
    columns: [
      { title: english.charts.places.time, as: 'clock' },
      ...say.stages.map((title) => ({ title, as: 'count' as const })),
    ],
    rows: morning.moments.map(({ minute, counts }) => [minute, ...counts]),
  };
}

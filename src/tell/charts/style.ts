/**
 * How charts look: calm type, few lines, colours that hold for colour-blind readers, and ink that takes
 * the colour of the text around it, so that one picture serves light and dark pages and print.
 */
import type { Config, TopLevelSpec } from 'vega-lite';
import { shorten } from '../clean-text.js';
import { safeLocale, type Formats } from '../format.js';
import { evenLines } from './text-width.js';

/** A Vega-Lite 6 specification: plain data. */
export type ChartSpec = TopLevelSpec;

/** One layer of a layered chart. */
export type ChartLayer = Extract<ChartSpec, { layer: unknown }>['layer'][number];

/**
 * Colours that stay apart under the three common kinds of colour blindness: Okabe & Ito, "Color
 * Universal Design" (2008), as printed by Wong, "Points of view: Color blindness", Nature Methods
 * 2011;8:441. Their yellow and black are left out: one is lost on white, the other on dark.
 */
export const palette = {
  orange: '#E69F00',
  sky: '#56B4E9',
  green: '#009E73',
  blue: '#0072B2',
  vermilion: '#D55E00',
  purple: '#CC79A7',
} as const;

/** Width of the plotting area; pictures are about 470 px wide in all, so that their type stays readable on a phone. */
export const PLOT_WIDTH = 390;
const TITLE_SIZE = 14;
const FONT = "'Helvetica Neue', Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

/** What of the report's context charts need. */
export interface ChartContext {
  readonly locale: string;
  readonly formats: Formats;
}

/** d3's number locale for the tag: only the marks that Vega's formats read. */
function numberMarks(locale: string): {
  decimal: string;
  thousands: string;
  grouping: number[];
  currency: [string, string];
} {
  const parts = new Intl.NumberFormat(safeLocale(locale)).formatToParts(-1_234_567.5);
  const of = (type: string, otherwise: string): string =>
    (parts.find((part) => part.type === type)?.value ?? otherwise).replace(/[\u00A0\u202F]/g, ' ');
  return {
    decimal: of('decimal', '.'),
    thousands: of('group', ','),
    grouping: [3],
    currency: ['', ''],
  };
}

/** Shared configuration. `ink`: colour of text and lines; the default is that of the text around the picture. */
export function chartConfig(locale: string, ink = 'currentColor'): Config {
  const text = {
    labelColor: ink,
    titleColor: ink,
    labelFont: FONT,
    titleFont: FONT,
    labelFontSize: 12,
    titleFontSize: 12,
  };
  return {
    aria: false,
    background: 'transparent',
    font: FONT,
    locale: { number: numberMarks(locale) },
    view: { stroke: null },
    title: {
      anchor: 'start',
      frame: 'bounds',
      color: ink,
      font: FONT,
      fontSize: TITLE_SIZE,
      fontWeight: 600,
      lineHeight: 19,
      offset: 14,
    },
    axis: {
      ...text,
      titleFontWeight: 'normal',
      titlePadding: 8,
      labelPadding: 5,
      tickSize: 4,
      tickColor: ink,
      domainColor: ink,
      domainOpacity: 0.5,
      tickOpacity: 0.5,
      gridColor: ink,
      gridOpacity: 0.12,
      labelOverlap: 'greedy',
      labelFlush: false,
    },
    axisY: {
      domain: false,
      ticks: false,
      tickCount: 5,
      titleAlign: 'left',
      titleAnchor: 'end',
      titleAngle: 0,
      titleX: 0,
      titleY: -12,
      titleBaseline: 'bottom',
    },
    axisX: { grid: false },
    legend: {
      ...text,
      title: null,
      orient: 'bottom',
      direction: 'horizontal',
      columns: 3,
      columnPadding: 18,
      symbolSize: 110,
      rowPadding: 4,
      offset: 12,
      labelLimit: 200,
    },
    text: { color: ink, font: FONT, fontSize: 12 },
    rule: { color: ink },
  };
}

/** An axis of shares as the letter writes them, `24 %`. */
export const percentAxis = (format: '.0%' | '.1%' = '.0%') => ({
  format,
  labelExpr: `replace(datum.label, '%', '\u00A0%')`,
});

export interface Frame {
  readonly title: string;
  /** What the picture shows and says, for those who cannot see it. */
  readonly description: string;
  readonly locale: string;
}

/** The part that every chart's specification begins with. */
export const framed = ({ title, description, locale }: Frame) =>
  ({
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    title: { text: evenLines(shorten(title, 160), PLOT_WIDTH + 40, TITLE_SIZE, true) },
    description: shorten(description, 600),
    padding: 6,
    config: chartConfig(locale),
  }) satisfies Partial<ChartSpec>;

/** The same chart without its title, to stand under a heading that says it. */
export function withoutTitle(spec: ChartSpec): ChartSpec {
  const { title: _, ...rest } = spec;
  return rest;
}

/** The title of a chart as one line of text. */
export function titleOf(spec: ChartSpec): string {
  const { title } = spec;
  if (title === undefined) return '';
  const text = typeof title === 'object' && 'text' in title ? title.text : title;
  return Array.isArray(text) ? text.join(' ') : typeof text === 'string' ? text : '';
}

/** Settings of a time axis in minutes from opening, its labels as clock times at round moments. */
export function clockAxis(
  untilMinute: number,
  formats: Formats,
  title: string,
  openingMinute: number | null,
) {
  const every = untilMinute <= 150 ? 30 : untilMinute <= 420 ? 60 : 120;
  const first = openingMinute === null ? 0 : (every - (openingMinute % every)) % every;
  const values: number[] = [];
  for (let minute = first; minute <= untilMinute; minute += every) values.push(minute);
  const labels = Object.fromEntries(
    values.map((minute) => [String(minute), formats.clock(minute)]),
  );
  return { title, values, labelExpr: `(${JSON.stringify(labels)})[datum.value]` };
}

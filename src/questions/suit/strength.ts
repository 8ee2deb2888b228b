/** Chart: strength by drink, in the house with its tolerance band, and to take away. */
import type { SuitAnswer } from '../../suiting/answer.js';
import { textWidth } from '../../tell/charts/text-width.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { inVolumeUnit, volumeUnit } from '../../tell/measures.js';
import { english, type Words } from '../../tell/words.js';
import type { ChartTable } from '../../tell/charts/chart-table.js';
import { withSentence, telling } from '../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../tell/charts/style.js';

interface Point {
  readonly drink: string;
  readonly where: string;
  readonly strength: number;
  /** What a paper cup of unmeasured brim may make of it; equal to `strength` otherwise. */
  readonly low: number;
  readonly high: number;
}

type Drink = SuitAnswer['drinks'][number];

/** Width that names may take beside the plot, px. */
const LABEL_WIDTH = 190;

/** Names that tell drinks apart: the id stands beside a name that two drinks bear. */
export function drinkLabels(drinks: readonly Pick<Drink, 'drink' | 'name'>[]): string[] {
  const short = ({ name }: Pick<Drink, 'drink' | 'name'>): string => shorten(cleanText(name), 28);
  return drinks.map((one) =>
    drinks.filter((other) => short(other) === short(one)).length > 1
      ? `${shorten(cleanText(one.name), 16)} (${shorten(one.drink, 12)})`
      : short(one),
  );
}

function points(drinks: readonly Drink[], say: Words['charts']['strength']): Point[] {
  const labels = drinkLabels(drinks);
  return drinks.flatMap(({ house, takeaway, ratioLow, ratioHigh }, i) => {
    const drink = labels[i]!;
    const alone = (where: string, strength: number): Point => ({
      drink,
      where,
      strength,
      low: strength,
      high: strength,
    });
    const atHome = house === null ? [] : [alone(say.house, house.solidsPer100Ml)];
    if (takeaway === null) return atHome;
    const away = alone(say.takeaway, takeaway.solidsPer100Ml);
    if (house === null || ratioLow === null || ratioHigh === null) return [...atHome, away];
    return [
      ...atHome,
      { ...away, low: house.solidsPer100Ml * ratioLow, high: house.solidsPer100Ml * ratioHigh },
    ];
  });
}

/** @returns null where no drink could be computed */
export function strengthByDrink(
  answer: Pick<SuitAnswer, 'drinks' | 'parity'>,
  context: ChartContext,
): ChartSpec | null {
  const say = english.charts.strength;
  const values = points(answer.drinks, say);
  if (values.length === 0) return null;
  const { formats, locale } = context;
  const unsure = values.filter(({ low, high }) => high > low);
  const grams = (value: number): string => formats.decimal(value, 2);
  const shown = values.map((one) => {
    const sentence = say.sentence(one.drink, one.where, grams(one.strength));
    return {
      ...one,
      sentence:
        one.high > one.low
          ? say.sentenceBetween(sentence, grams(one.low), grams(one.high))
          : sentence,
    };
  });
  const compared = answer.drinks.filter((drink) => drink.level !== null);
  const apart = compared.filter((drink) => drink.level === false).length;
  const bands = values
    .filter(
      (one) =>
        one.where === say.house &&
        values.some((other) => other.drink === one.drink && other !== one),
    )
    .map(({ drink, strength }) => ({
      drink,
      from: strength * (1 - answer.parity),
      to: strength * (1 + answer.parity),
    }));
  const [least, most] = [
    Math.min(...values.map(({ low }) => low)),
    Math.max(...values.map(({ high }) => high)),
  ];
  // Shots beside long drinks would squeeze the rest together; on a scale of ratios all bands are equally wide.
  const scale =
    most / least > 4
      ? { type: 'log' as const, nice: false, domain: [least * 0.85, most * 1.15] }
      : { zero: false, nice: true, padding: 9 };
  const x = {
    type: 'quantitative' as const,
    title: say.x,
    scale,
    axis: { format: '~r', tickCount: 6, grid: true },
  };
  const y = {
    field: 'drink',
    type: 'nominal' as const,
    title: null,
    sort: [...new Set(values.map(({ drink }) => drink))],
    axis: { labelLimit: LABEL_WIDTH },
  };
  const longest = Math.max(0, ...values.map(({ drink }) => textWidth(drink, 12, false)));
  const where = { field: 'where', type: 'nominal' as const, title: null };
  const domain = compared.length === 0 ? [say.house] : [say.house, say.takeaway];
  return {
    ...framed({
      title:
        compared.length === 0
          ? say.titleHouse
          : apart === 0
            ? say.titleAlike
            : say.title(formats.count(apart), formats.count(compared.length)),
      description: say.description(formats.percent(answer.parity, 0)),
      locale,
    }),
    // Long names take from the plot, so that letters can be read on a phone.
    width: Math.min(PLOT_WIDTH - 90, 440 - Math.min(LABEL_WIDTH, longest)),
    height: { step: 32 },
    layer: [
      {
        data: { values: bands },
        mark: { type: 'bar', height: 18, color: '#888888', opacity: 0.35 },
        encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y },
      },
      ...(unsure.length === 0
        ? []
        : [
            {
              data: { values: unsure },
              mark: { type: 'rule' as const, color: palette.vermilion, strokeWidth: 2 },
              encoding: { x: { ...x, field: 'low' }, x2: { field: 'high' }, y },
            },
          ]),
      {
        data: { values: shown },
        mark: { type: 'point', ...telling, filled: true, size: 110, opacity: 1 },
        encoding: {
          x: { ...x, field: 'strength' },
          y,
          color: { ...where, scale: { domain, range: [palette.blue, palette.vermilion] } },
          shape: { ...where, scale: { domain, range: ['circle', 'triangle-up'] } },
          ...withSentence,
        },
      },
    ],
  };
}

/** The figures behind the picture. */
export function strengthByDrinkTable(
  answer: Pick<SuitAnswer, 'drinks'>,
  { formats }: Pick<ChartContext, 'formats'>,
): ChartTable {
  const say = english.charts.strength;
  const liquid = (ml: number): number => inVolumeUnit(ml, formats.units);
  const labels = drinkLabels(answer.drinks);
  return {
    caption: say.caption,
    columns: [
      { title: say.drink, as: 'text' },
      { title: say.served, as: 'text' },
      {
        title: say.liquid(volumeUnit(formats.units)),
        as: formats.units === 'us' ? 'decimal' : 'count',
      },
      { title: say.strength, as: 'text' },
      { title: say.ratio, as: 'text' },
    ],
    rows: answer.drinks.flatMap(({ house, takeaway, ratio }, i) => [
      ...(house === null
        ? []
        : [
            [
              labels[i]!,
              say.house,
              liquid(house.servedMl),
              formats.decimal(house.solidsPer100Ml, 2),
              null,
            ],
          ]),
      ...(takeaway === null
        ? []
        : [
            [
              labels[i]!,
              say.takeaway,
              liquid(takeaway.servedMl),
              formats.decimal(takeaway.solidsPer100Ml, 2),
              ratio === null ? null : formats.decimal(ratio, 2),
            ],
          ]),
    ]),
  };
}

/** Chart: strength by drink, in the house with its tolerance band, and to take away. */
import type { SuitAnswer } from '../../suiting/answer.js';
import { cleanText, shorten } from '../clean-text.js';
import type { ChartTable } from './chart-table.js';
import { framed, palette, PLOT_WIDTH, type ChartContext, type ChartSpec } from './style.js';

const words = {
  title: (apart: string, drinks: string): string => `Not alike in the house and to take away: ${apart} of ${drinks} drinks`,
  titleAlike: 'Every drink tastes alike in the house and to take away',
  titleHouse: 'Strength of the drinks in the house',
  description: (band: string): string =>
    `Grams of coffee solids in 100 ml of each drink, in the house and to take away. A grey bar is the band of ${band} either way of house strength within which they taste alike. A line through the takeaway mark is what a paper cup of unmeasured brim may make of it.`,
  x: 'coffee solids, g in 100 ml',
  house: 'in the house',
  takeaway: 'to take away',
  caption: 'Strength of the drinks',
  drink: 'Drink',
  served: 'Served',
  strength: 'Solids, g in 100 ml',
  liquid: 'Liquid, ml',
  ratio: 'Away over house',
};

interface Point {
  readonly drink: string;
  readonly where: string;
  readonly strength: number;
  /** What a paper cup of unmeasured brim may make of it; equal to `strength` otherwise. */
  readonly low: number;
  readonly high: number;
}

type Drink = SuitAnswer['drinks'][number];

/** Names that tell drinks apart: the id stands beside a name that two drinks bear. */
export function drinkLabels(drinks: readonly Pick<Drink, 'drink' | 'name'>[]): string[] {
  const short = ({ name }: Pick<Drink, 'drink' | 'name'>): string => shorten(cleanText(name), 28);
  return drinks.map((one) => (drinks.filter((other) => short(other) === short(one)).length > 1 ? `${shorten(cleanText(one.name), 16)} (${shorten(one.drink, 12)})` : short(one)));
}

function points(drinks: readonly Drink[]): Point[] {
  const labels = drinkLabels(drinks);
  return drinks.flatMap(({ house, takeaway, ratioLow, ratioHigh }, i) => {
    const drink = labels[i]!;
    const alone = (where: string, strength: number): Point => ({ drink, where, strength, low: strength, high: strength });
    const atHome = house === null ? [] : [alone(words.house, house.solidsPer100Ml)];
    if (takeaway === null) return atHome;
    const away = alone(words.takeaway, takeaway.solidsPer100Ml);
    if (house === null || ratioLow === null || ratioHigh === null) return [...atHome, away];
    return [...atHome, { ...away, low: house.solidsPer100Ml * ratioLow, high: house.solidsPer100Ml * ratioHigh }];
  });
}

/** @returns null where no drink could be computed */
export function strengthByDrink(answer: Pick<SuitAnswer, 'drinks' | 'parity'>, context: ChartContext): ChartSpec | null {
  const values = points(answer.drinks);
  if (values.length === 0) return null;
  const { formats, locale } = context;
  const compared = answer.drinks.filter((drink) => drink.level !== null);
  const apart = compared.filter((drink) => drink.level === false).length;
  const bands = values
    .filter((one) => one.where === words.house && values.some((other) => other.drink === one.drink && other !== one))
    .map(({ drink, strength }) => ({ drink, from: strength * (1 - answer.parity), to: strength * (1 + answer.parity) }));
  const [least, most] = [Math.min(...values.map(({ low }) => low)), Math.max(...values.map(({ high }) => high))];
  // Shots beside long drinks would squeeze the rest together; on a scale of ratios all bands are equally wide.
  const scale = most / least > 4 ? { type: 'log' as const, nice: false, domain: [least * 0.85, most * 1.15] } : { zero: false, nice: true };
  const x = { type: 'quantitative' as const, title: words.x, scale, axis: { format: '~r', tickCount: 6, grid: true } };
  const y = { field: 'drink', type: 'nominal' as const, title: null, sort: [...new Set(values.map(({ drink }) => drink))], axis: { labelLimit: 190 } };
  const where = { field: 'where', type: 'nominal' as const, title: null };
  const domain = compared.length === 0 ? [words.house] : [words.house, words.takeaway];
  return {
    ...framed({
      title: compared.length === 0 ? words.titleHouse : apart === 0 ? words.titleAlike : words.title(formats.count(apart), formats.count(compared.length)),
      description: words.description(formats.percent(answer.parity, 0)),
      locale,
    }),
    width: PLOT_WIDTH - 90,
    height: { step: 32 },
    layer: [
      { data: { values: bands }, mark: { type: 'bar', height: 18, color: '#888888', opacity: 0.35 }, encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y } },
      { data: { values: values.filter(({ low, high }) => high > low) }, mark: { type: 'rule', color: palette.vermilion, strokeWidth: 2 }, encoding: { x: { ...x, field: 'low' }, x2: { field: 'high' }, y } },
      {
        data: { values },
        mark: { type: 'point', filled: true, size: 110, opacity: 1 },
        encoding: {
          x: { ...x, field: 'strength' },
          y,
          color: { ...where, scale: { domain, range: [palette.blue, palette.vermilion] } },
          shape: { ...where, scale: { domain, range: ['circle', 'triangle-up'] } },
          tooltip: [
            { field: 'drink', type: 'nominal', title: words.drink },
            { field: 'where', type: 'nominal', title: words.served },
            { field: 'strength', type: 'quantitative', format: '.2f', title: words.strength },
          ],
        },
      },
    ],
  };
}

/** The figures behind the picture. */
export function strengthByDrinkTable(answer: Pick<SuitAnswer, 'drinks'>, { formats }: Pick<ChartContext, 'formats'>): ChartTable {
  const labels = drinkLabels(answer.drinks);
  return {
    caption: words.caption,
    columns: [
      { title: words.drink, as: 'text' },
      { title: words.served, as: 'text' },
      { title: words.liquid, as: 'count' },
      { title: words.strength, as: 'text' },
      { title: words.ratio, as: 'text' },
    ],
    rows: answer.drinks.flatMap(({ house, takeaway, ratio }, i) => [
      ...(house === null ? [] : [[labels[i]!, words.house, house.servedMl, formats.decimal(house.solidsPer100Ml, 2), null]]),
      ...(takeaway === null ? [] : [[labels[i]!, words.takeaway, takeaway.servedMl, formats.decimal(takeaway.solidsPer100Ml, 2), ratio === null ? null : formats.decimal(ratio, 2)]]),
    ]),
  };
}

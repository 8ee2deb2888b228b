/** Chart: how each drink cools from pouring, from a cold and from a warmed vessel. */
import type { SuitAnswer } from '../../suiting/answer.js';
import type { ChartTable } from './chart-table.js';
import { drinkLabels } from './strength.js';
import { framed, palette, PLOT_WIDTH, type ChartContext, type ChartSpec } from './style.js';

const words = {
  title: (drink: string, degrees: string): string => `A warmed cup keeps the first sip of ${drink} ${degrees} °C hotter`,
  description: (low: string, high: string, minute: string): string =>
    `Temperature of each drink through the stay, estimated for still air and a full vessel. The shaded band, ${low} to ${high} °C, is what most guests like; the dashed line at ${minute} is the first sip. What a guest leaves in the cup cools faster.`,
  x: 'minutes from pouring',
  y: 'drink, °C',
  cold: 'cold vessel',
  warmed: 'warmed vessel',
  caption: 'Temperature of the drinks from pouring, °C',
  minute: 'Minute',
  drink: 'Drink',
  from: 'From a',
};

type Cooled = Pick<SuitAnswer, 'drinks' | 'firstSipMin'>;

const inks = [palette.blue, palette.vermilion, palette.green, palette.purple, palette.orange, palette.sky] as const;

/** Drinks shown at most: more lines cannot be told apart. The table behind the picture has them all. */
const MOST = inks.length;

/** @returns null where no drink's heat could be computed */
export function coolingOfDrinks(answer: Cooled, context: ChartContext): ChartSpec | null {
  const { formats, locale } = context;
  const labels = drinkLabels(answer.drinks);
  const warm = answer.drinks.flatMap(({ warmth }, i) => (warmth === null ? [] : [{ drink: labels[i]!, warmth }])).slice(0, MOST);
  const first = warm[0];
  if (first === undefined) return null;
  const most = warm.reduce((best, one) => (one.warmth.warmedWorthC > best.warmth.warmedWorthC ? one : best), first);
  const { lowC, highC } = first.warmth.preferred;
  const values = warm.flatMap(({ drink, warmth }) => [
    ...warmth.curves.coldC.map((tempC, minute) => ({ drink, from: words.cold, minute, tempC })),
    ...warmth.curves.warmedC.map((tempC, minute) => ({ drink, from: words.warmed, minute, tempC })),
  ]);
  const last = Math.max(...values.map(({ minute }) => minute));
  const x = { type: 'quantitative' as const, title: words.x, scale: { domain: [0, last], nice: false }, axis: { tickCount: 8, format: 'd' } };
  const y = { type: 'quantitative' as const, title: words.y, scale: { zero: false }, axis: { format: 'd' } };
  return {
    ...framed({
      title: words.title(most.drink, formats.decimal(most.warmth.warmedWorthC, 0)),
      description: words.description(formats.count(lowC), formats.count(highC), formats.minutes(answer.firstSipMin)),
      locale,
    }),
    width: PLOT_WIDTH,
    height: 240,
    layer: [
      {
        data: { values: [{ from: 0, to: last, low: lowC, high: highC }] },
        mark: { type: 'rect', color: palette.green, opacity: 0.14 },
        encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y: { ...y, field: 'low' }, y2: { field: 'high' } },
      },
      { data: { values: [{ minute: answer.firstSipMin }] }, mark: { type: 'rule', strokeDash: [2, 3], opacity: 0.7 }, encoding: { x: { ...x, field: 'minute' } } },
      {
        data: { values },
        mark: { type: 'line', strokeWidth: 2 },
        encoding: {
          x: { ...x, field: 'minute' },
          y: { ...y, field: 'tempC' },
          color: { field: 'drink', type: 'nominal', title: null, sort: null, scale: { domain: warm.map(({ drink }) => drink), range: inks.slice(0, warm.length) } },
          strokeDash: { field: 'from', type: 'nominal', title: null, scale: { domain: [words.cold, words.warmed], range: [[1, 0], [6, 4]] }, legend: { orient: 'top', offset: 30, symbolSize: 500, symbolStrokeWidth: 2 } },
          tooltip: [
            { field: 'drink', type: 'nominal', title: words.drink },
            { field: 'from', type: 'nominal', title: words.from },
            { field: 'minute', type: 'quantitative', title: words.x },
            { field: 'tempC', type: 'quantitative', format: '.1f', title: words.y },
          ],
        },
      },
    ],
  };
}

/** The figures behind the picture: every fifth minute, two columns a drink. */
export function coolingOfDrinksTable(answer: Cooled): ChartTable {
  const labels = drinkLabels(answer.drinks);
  const warm = answer.drinks.flatMap(({ warmth }, i) => (warmth === null ? [] : [{ drink: labels[i]!, curves: warmth.curves }]));
  const longest = Math.max(0, ...warm.map(({ curves }) => curves.coldC.length));
  const minutes = Array.from({ length: longest }, (_, minute) => minute).filter((minute) => minute % 5 === 0 || minute === longest - 1);
  return {
    caption: words.caption,
    columns: [
      { title: words.minute, as: 'count' },
      ...warm.flatMap(({ drink }) => [{ title: `${drink}, ${words.cold}`, as: 'decimal' as const }, { title: `${drink}, ${words.warmed}`, as: 'decimal' as const }]),
    ],
    rows: minutes.map((minute) => [minute, ...warm.flatMap(({ curves }) => [curves.coldC[minute] ?? null, curves.warmedC[minute] ?? null])]),
  };
}

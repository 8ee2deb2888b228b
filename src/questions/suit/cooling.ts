/** Chart: how each drink cools from pouring, from a cold and from a warmed vessel. */
import type { SuitAnswer } from '../../suiting/answer.js';
import { degreeSign, onThermometer, type Units } from '../../tell/measures.js';
import { english } from '../../tell/words.js';
import type { ChartTable } from '../../tell/charts/chart-table.js';
import { tellingStrips } from '../../tell/charts/hover.js';
import { drinkLabels } from './strength.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../tell/charts/style.js';

type Cooled = Pick<SuitAnswer, 'drinks' | 'firstSipMin'>;

const inks = [
  palette.blue,
  palette.vermilion,
  palette.green,
  palette.purple,
  palette.orange,
  palette.sky,
] as const;

/** Drinks shown at most: more lines cannot be told apart. The table behind the picture has them all. */
const MOST = inks.length;

/** @returns null where no drink's heat could be computed */
export function coolingOfDrinks(answer: Cooled, context: ChartContext): ChartSpec | null {
  const say = english.charts.cooling;
  const { formats, locale } = context;
  const degrees = (celsius: number): number => onThermometer(celsius, formats.units);
  const labels = drinkLabels(answer.drinks);
  const warm = answer.drinks
    .flatMap(({ warmth }, i) => (warmth === null ? [] : [{ drink: labels[i]!, warmth }]))
    .slice(0, MOST);
  const first = warm[0];
  if (first === undefined) return null;
  const most = warm.reduce(
    (best, one) => (one.warmth.warmedWorthC > best.warmth.warmedWorthC ? one : best),
    first,
  );
  const { lowC, highC } = first.warmth.preferred;
  const values = warm.flatMap(({ drink, warmth }) => [
    ...warmth.curves.coldC.map((tempC, minute) => ({
      drink,
      from: say.cold,
      minute,
      degrees: degrees(tempC),
    })),
    ...warmth.curves.warmedC.map((tempC, minute) => ({
      drink,
      from: say.warmed,
      minute,
      degrees: degrees(tempC),
    })),
  ]);
  const sentence = warm
    .reduce(
      (longest, one) =>
        one.warmth.curves.coldC.length > longest.length ? one.warmth.curves.coldC : longest,
      first.warmth.curves.coldC,
    )
    .map((_, minute) => {
      const list = warm.flatMap(({ drink, warmth: { curves } }) => {
        const [cold, warmed] = [curves.coldC[minute], curves.warmedC[minute]];
        return cold === undefined || warmed === undefined
          ? []
          : [say.sentenceOne(drink, formats.temperature(cold), formats.temperature(warmed))];
      });
      return {
        at: minute,
        sentence: say.sentence(`${formats.count(minute)}\u00A0min`, list.join('; ')),
      };
    });
  const last = Math.max(...values.map(({ minute }) => minute));
  const x = {
    type: 'quantitative' as const,
    title: say.x,
    scale: { domain: [0, last], nice: false },
    axis: { tickCount: 8, format: 'd' },
  };
  const y = {
    type: 'quantitative' as const,
    title: say.y(degreeSign(formats.units)),
    scale: { zero: false },
    axis: { format: 'd' },
  };
  return {
    ...framed({
      title: say.title(most.drink, formats.warmer(most.warmth.warmedWorthC)),
      description: say.description(
        formats.temperature(lowC),
        formats.temperature(highC),
        formats.minutes(answer.firstSipMin),
      ),
      locale,
    }),
    width: PLOT_WIDTH,
    height: 240,
    layer: [
      {
        data: { values: [{ from: 0, to: last, low: degrees(lowC), high: degrees(highC) }] },
        mark: { type: 'rect', color: palette.green, opacity: 0.14 },
        encoding: {
          x: { ...x, field: 'from' },
          x2: { field: 'to' },
          y: { ...y, field: 'low' },
          y2: { field: 'high' },
        },
      },
      {
        data: { values: [{ minute: answer.firstSipMin }] },
        mark: { type: 'rule', strokeDash: [2, 3], opacity: 0.7 },
        encoding: { x: { ...x, field: 'minute' } },
      },
      {
        data: { values },
        mark: { type: 'line', strokeWidth: 2 },
        encoding: {
          x: { ...x, field: 'minute' },
          y: { ...y, field: 'degrees' },
          color: {
            field: 'drink',
            type: 'nominal',
            title: null,
            sort: null,
            scale: { domain: warm.map(({ drink }) => drink), range: inks.slice(0, warm.length) },
          },
          strokeDash: {
            field: 'from',
            type: 'nominal',
            title: null,
            scale: {
              domain: [say.cold, say.warmed],
              range: [
                [1, 0],
                [6, 4],
              ],
            },
            legend: { orient: 'top', offset: 30, symbolSize: 500, symbolStrokeWidth: 2 },
          },
        },
      },
      ...tellingStrips(sentence, x),
    ],
  };
}

/** The figures behind the picture: every fifth minute, two columns a drink. */
export function coolingOfDrinksTable(answer: Cooled, units: Units = 'metric'): ChartTable {
  const say = english.charts.cooling;
  const degrees = (celsius: number | undefined): number | null =>
    celsius === undefined ? null : onThermometer(celsius, units);
  const labels = drinkLabels(answer.drinks);
  const warm = answer.drinks.flatMap(({ warmth }, i) =>
    warmth === null ? [] : [{ drink: labels[i]!, curves: warmth.curves }],
  );
  const longest = Math.max(0, ...warm.map(({ curves }) => curves.coldC.length));
  const minutes = Array.from({ length: longest }, (_, minute) => minute).filter(
    (minute) => minute % 5 === 0 || minute === longest - 1,
  );
  return {
    caption: say.caption(degreeSign(units)),
    columns: [
      { title: say.minute, as: 'count' },
      ...warm.flatMap(({ drink }) => [
        { title: `${drink}, ${say.cold}`, as: 'decimal' as const },
        { title: `${drink}, ${say.warmed}`, as: 'decimal' as const },
      ]),
    ],
    rows: minutes.map((minute) => [
      minute,
      ...warm.flatMap(({ curves }) => [
        degrees(curves.coldC[minute]),
        degrees(curves.warmedC[minute]),
      ]),
    ]),
  };
}

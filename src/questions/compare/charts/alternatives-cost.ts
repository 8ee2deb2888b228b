/** Chart: how much more or less than the house as it is each alternative costs, with the interval of that. */
import { annuityFactor } from '../../../comparing/annuity.js';
import type { ComparedAlternative, Comparison } from '../answer.js';
import { cleanText, shorten } from '../../../tell/clean-text.js';
import { english } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingRows } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

const parts = ['ware', 'machines', 'staff', 'running', 'losses'] as const;

/** Present value by part; the parts add up to the total. */
function partsOf(
  { now, year, total }: ComparedAlternative,
  years: number,
): Record<(typeof parts)[number], number> {
  const ware = now.ware + now.racks + now.freight;
  const staff = year.staff * years;
  const running = (year.water + year.energy + year.chemicals + year.service) * years;
  const losses = (year.breakage + year.lost + year.other) * years + now.other;
  return { ware, staff, running, losses, machines: total - ware - staff - running - losses };
}

/**
 * What is to be planned for is left out: less money for fewer guests is no saving.
 * @throws RangeError where nothing is ranked beside the base
 */
export function alternativesCost(
  comparison: Comparison,
  { formats, locale }: ChartContext,
): ChartSpec {
  const say = english.compare.charts;
  const money = (amount: number): string =>
    formats.money(Math.round(amount)).replace(/[.,]00(?!\d)/, '');
  const bars = rankedOf(comparison).flatMap((id) => {
    const one = comparison.alternatives.find((other) => other.id === id)!;
    const against = one.totalAgainstBase;
    if (against === null) return [];
    const { difference, low, high } = against;
    const less = difference < 0;
    const sentence = say.sentenceCost(
      shorten(cleanText(one.name), 60),
      money(Math.abs(difference)),
      less,
      money(low),
      money(high),
    );
    return [
      {
        name: shorten(cleanText(one.name), 30),
        sentence,
        difference,
        low,
        high,
        side: less ? say.less : say.more,
        label: `${less ? '' : '+'}${money(difference)}`,
        at: less ? Math.max(0, high) : Math.max(high, 0),
      },
    ];
  });
  if (bars.length === 0)
    throw new RangeError('a chart of alternatives needs at least one beside the base');
  const names = bars.map(({ name }) => name);
  const [least, most] = [
    Math.min(0, ...bars.map(({ low }) => low)),
    Math.max(0, ...bars.map(({ high }) => high)),
  ];
  const room = most - least || 1;
  const y = {
    field: 'name',
    type: 'nominal' as const,
    sort: names,
    title: null,
    axis: { labelLimit: 210, ticks: false, domain: false },
  };
  const x = {
    type: 'quantitative' as const,
    title: say.cost(comparison.currency),
    scale: { domain: [least - 0.03 * room, most + 0.3 * room], nice: false },
    axis: { format: ',d', tickCount: 4, grid: true },
  };
  const first = bars[0]!;
  return {
    ...framed({
      title:
        first.difference < 0
          ? say.costTitle(
              first.name,
              money(-first.difference),
              formats.count(comparison.horizonYears),
            )
          : say.costTitleBase,
      description: say.costDescription,
      locale,
    }),
    width: PLOT_WIDTH - 150,
    height: { step: 34 },
    layer: [
      {
        data: { values: bars },
        mark: { type: 'bar', height: { band: 0.55 } },
        encoding: {
          y,
          x: { ...x, field: 'difference' },
          color: {
            field: 'side',
            type: 'nominal',
            scale: { domain: [say.less, say.more], range: [palette.green, palette.orange] },
          },
        },
      },
      {
        data: { values: bars },
        mark: { type: 'rule', strokeWidth: 2.5 },
        encoding: { y, x: { ...x, field: 'low' }, x2: { field: 'high' } },
      },
      {
        data: { values: [{ zero: 0 }] },
        mark: { type: 'rule', opacity: 0.6 },
        encoding: { x: { ...x, field: 'zero' } },
      },
      {
        data: { values: bars },
        mark: { type: 'text', align: 'left', dx: 7 },
        encoding: { y, x: { ...x, field: 'at' }, text: { field: 'label', type: 'nominal' } },
      },
      ...tellingRows(bars, y),
    ],
  };
}

const rankedOf = ({ ranking: { order, notRanked } }: Comparison): readonly string[] =>
  order.filter((id) => !notRanked.includes(id));

/** Present value of every choice by what it is made of. */
export function alternativesCostTable(comparison: Comparison): ChartTable {
  const say = english.compare;
  const years = annuityFactor(comparison.discount, comparison.horizonYears);
  return {
    caption: `${say.charts.captions.cost}, ${comparison.currency}`,
    columns: [
      { title: say.head.alternative, as: 'text' },
      ...parts.map((part) => ({ title: say.charts.parts[part], as: 'count' as const })),
      { title: say.charts.total, as: 'count' },
    ],
    rows: rankedOf(comparison).map((id) => {
      const one = comparison.alternatives.find((other) => other.id === id)!;
      const of = partsOf(one, years);
      return [cleanText(one.name), ...parts.map((part) => of[part]), one.total];
    }),
  };
}

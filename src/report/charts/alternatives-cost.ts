/** Chart: what the alternatives cost over the years, by what that is made of, with the interval of the difference. */
import { annuityFactor } from '../../comparing/annuity.js';
import type { ComparedAlternative, Comparison } from '../../study/compare-answer.js';
import { cleanText, shorten } from '../clean-text.js';
import { english, type Words } from '../words.js';
import type { ChartTable } from './chart-table.js';
import { framed, palette, PLOT_WIDTH, type ChartContext, type ChartSpec } from './style.js';

const parts = ['ware', 'machines', 'staff', 'running', 'losses'] as const;
const colours = [palette.blue, palette.orange, palette.sky, palette.green, palette.purple];

/** Present value by part; the parts add up to the total. */
function partsOf({ now, year, total }: ComparedAlternative, years: number): Record<(typeof parts)[number], number> {
  const ware = now.ware + now.racks + now.freight;
  const staff = year.staff * years;
  const running = (year.water + year.energy + year.chemicals) * years;
  const losses = (year.breakage + year.lost + year.paperCups + year.other) * years + now.other;
  return { ware, staff, running, losses, machines: total - ware - staff - running - losses };
}

export function alternativesCost(comparison: Comparison, { formats, locale }: ChartContext, words: Words = english): ChartSpec {
  const say = words.compare.charts;
  const years = annuityFactor(comparison.discount, comparison.horizonYears);
  const byTotal = comparison.ranking.order.map((id) => comparison.alternatives.find((one) => one.id === id)!);
  const names = byTotal.map(({ name }) => shorten(cleanText(name), 30));
  const bars = byTotal.flatMap((one, at) => {
    const of = partsOf(one, years);
    let start = 0;
    return parts.map((part) => {
      const from = start;
      start += of[part];
      return { name: names[at]!, part: say.parts[part], from, to: start };
    });
  });
  const base = comparison.alternatives[0]!;
  const ends = byTotal.flatMap((one, at) => (one.totalAgainstBase === null ? [] : [{ name: names[at]!, low: base.total + one.totalAgainstBase.low, high: base.total + one.totalAgainstBase.high }]));
  const labels = byTotal.map((one, at) => ({ name: names[at]!, at: Math.max(one.total, ends.find((end) => end.name === names[at])?.high ?? 0), label: formats.money(Math.round(one.total)).replace(/[.,]00$/, '') }));
  const top = Math.max(...labels.map(({ at }) => at));
  const y = { field: 'name', type: 'nominal' as const, sort: names, title: null, axis: { labelLimit: 210, ticks: false, domain: false } };
  const scale = { domain: [0, top * 1.22], nice: false };
  const x = { type: 'quantitative' as const, title: say.cost(comparison.currency), scale, axis: { format: ',d', tickCount: 5, grid: true } };
  return {
    ...framed({ title: say.costTitle(names[0]!, labels[0]!.label), description: say.costDescription, locale }),
    width: PLOT_WIDTH,
    height: { step: 34 },
    layer: [
      {
        data: { values: bars },
        mark: { type: 'bar', height: { band: 0.62 } },
        encoding: { y, x: { ...x, field: 'from' }, x2: { field: 'to' }, color: { field: 'part', type: 'nominal', sort: parts.map((part) => say.parts[part]), scale: { domain: parts.map((part) => say.parts[part]), range: colours }, legend: { columns: 3 } } },
      },
      { data: { values: ends }, mark: { type: 'rule', strokeWidth: 2.5 }, encoding: { y, x: { ...x, field: 'low' }, x2: { field: 'high' } } },
      { data: { values: labels }, mark: { type: 'text', align: 'left', dx: 6 }, encoding: { y, x: { ...x, field: 'at' }, text: { field: 'label', type: 'nominal' } } },
    ],
  };
}

export function alternativesCostTable(comparison: Comparison, words: Words = english): ChartTable {
  const say = words.compare;
  const years = annuityFactor(comparison.discount, comparison.horizonYears);
  return {
    caption: `${say.charts.captions.cost}, ${comparison.currency}`,
    columns: [{ title: say.head.alternative, as: 'text' }, ...parts.map((part) => ({ title: say.charts.parts[part], as: 'count' as const })), { title: say.charts.cost(comparison.currency), as: 'count' }],
    rows: comparison.ranking.order.map((id) => {
      const one = comparison.alternatives.find((other) => other.id === id)!;
      const of = partsOf(one, years);
      return [cleanText(one.name), ...parts.map((part) => of[part]), one.total];
    }),
  };
}

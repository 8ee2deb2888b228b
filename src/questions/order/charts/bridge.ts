/** Chart: from one figure to another in steps, each bar beginning where the one before ended. */
import { cleanText } from '../../../tell/clean-text.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { withSentence, telling } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

export interface BridgeStep {
  readonly name: string;
  /** Added; taken off where negative. */
  readonly value: number;
  /** Figure written at the bar. */
  readonly label: string;
}

export interface BridgeInput {
  readonly title: string;
  readonly description: string;
  /** In order; what they come to is the last bar. */
  readonly steps: readonly BridgeStep[];
  readonly total: { readonly name: string; readonly label: string };
}

interface Bar {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly label: string;
}

function barsOf({ steps, total }: BridgeInput): Bar[] {
  let at = 0;
  const bars = steps.map(({ name, value, label }) => {
    const from = at;
    at += value;
    return { name, from, to: at, value, label };
  });
  return [...bars, { name: total.name, from: 0, to: at, value: at, label: total.label }];
}

export function bridgeChart(input: BridgeInput, { locale }: ChartContext): ChartSpec {
  const bars = barsOf(input).map((bar, index, all) => ({
    ...bar,
    end: Math.max(bar.from, bar.to),
    kind: index === all.length - 1 ? 'total' : bar.value < 0 ? 'less' : 'more',
    sentence: cleanText(`${bar.name}: ${bar.label}`),
  }));
  const most = Math.max(1, ...bars.map(({ end }) => end));
  const y = {
    field: 'name',
    type: 'nominal' as const,
    sort: bars.map(({ name }) => name),
    title: null,
    axis: { labelLimit: 210, ticks: false, domain: false },
  };
  const scale = { domain: [0, 1.25 * most], nice: false };
  return {
    ...framed({ title: input.title, description: input.description, locale }),
    width: PLOT_WIDTH - 190,
    height: { step: 24 },
    data: { values: bars },
    layer: [
      {
        mark: { type: 'bar', ...telling },
        encoding: {
          y,
          x: {
            field: 'from',
            type: 'quantitative',
            title: null,
            scale,
            axis: { format: ',d', tickCount: 4 },
          },
          x2: { field: 'to' },
          color: {
            field: 'kind',
            type: 'nominal',
            legend: null,
            scale: {
              domain: ['more', 'less', 'total'],
              range: [palette.sky, palette.orange, palette.blue],
            },
          },
          ...withSentence,
        },
      },
      {
        mark: { type: 'text', align: 'left', baseline: 'middle', dx: 5 },
        encoding: {
          y,
          x: { field: 'end', type: 'quantitative', scale },
          text: { field: 'label', type: 'nominal' },
        },
      },
    ],
  };
}

/** The figures behind the picture. */
export const bridgeTable = (input: BridgeInput, step: string, amount: string): ChartTable => ({
  caption: input.title,
  columns: [
    { title: step, as: 'text' },
    { title: amount, as: 'text' },
  ],
  rows: barsOf(input).map(({ name, label }) => [name, label]),
});

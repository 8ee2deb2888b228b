/** Chart: what the ware costs more or less than as written, with each input at either end of its range. */
import type { MovesAnswer } from '../answer.js';
import { cleanText, shorten } from '../../../tell/clean-text.js';
import { inputName } from '../../../tell/input-name.js';
import { english } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { withSentence, telling } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

const MOST = 10;

/** Few days have a price of their own, so ends are differences to what is written, on the same days. */
const againstTheAnswer = ({ inputs, stockCost }: MovesAnswer): MovesAnswer['inputs'] =>
  inputs.map((input) => ({ ...input, low: input.low - stockCost, high: input.high - stockCost }));

export function whatMovesTheOrder(
  moves: MovesAnswer,
  currency: string,
  { formats, locale }: ChartContext,
): ChartSpec {
  const say = english.compare.charts;
  const moving = againstTheAnswer(moves)
    .filter(({ low, high }) => low !== high)
    .toSorted((a, b) => Math.abs(b.high - b.low) - Math.abs(a.high - a.low))
    .slice(0, MOST);
  // On two lines, so that the names leave room for the picture on a phone.
  const names = moving.map(({ path, basis }) => `${shorten(inputName(path), 28)}\n(${basis})`);
  const lines = moving.map(({ low, high }, at) => ({ name: names[at]!, low, high }));
  const ends = moving.flatMap(({ path, low, high, lowValue, highValue }, at) => {
    const end = (cost: number, value: string, which: string) => ({
      name: names[at]!,
      cost,
      end: which,
      sentence: say.sentenceMoves(
        shorten(inputName(path), 60),
        shorten(cleanText(value), 60),
        `${cost > 0 ? '+' : ''}${formats.money(cost)}`,
      ),
    });
    return [end(low, lowValue, say.low), end(high, highValue, say.high)];
  });
  const y = {
    field: 'name',
    type: 'nominal' as const,
    sort: names,
    title: null,
    axis: {
      labelExpr: "split(datum.label, '\\n')",
      labelLimit: 300,
      ticks: false,
      domain: false,
      grid: false,
    },
  };
  const x = {
    type: 'quantitative' as const,
    title: say.moves(currency),
    scale: { zero: false, nice: true, padding: 9 },
    axis: { format: '+,d', grid: true, tickCount: 5 },
  };
  const first = moving[0];
  return {
    ...framed({
      title:
        first === undefined
          ? say.movesTitleNone
          : say.movesTitle(
              shorten(inputName(first.path), 60),
              formats.money(Math.abs(first.high - first.low)),
            ),
      description: say.movesDescription,
      locale,
    }),
    width: PLOT_WIDTH - 170,
    height: { step: 34 },
    layer: [
      {
        data: { values: [{ cost: 0 }] },
        mark: { type: 'rule', strokeDash: [5, 4], opacity: 0.7 },
        encoding: { x: { ...x, field: 'cost' } },
      },
      {
        data: { values: lines },
        mark: { type: 'rule', strokeWidth: 2, opacity: 0.5 },
        encoding: { y, x: { ...x, field: 'low' }, x2: { field: 'high' } },
      },
      {
        data: { values: ends },
        mark: { type: 'point', ...telling, filled: true, size: 90, opacity: 1 },
        encoding: {
          ...withSentence,
          y,
          x: { ...x, field: 'cost' },
          color: {
            field: 'end',
            type: 'nominal',
            scale: { domain: [say.low, say.high], range: [palette.sky, palette.vermilion] },
          },
          shape: {
            field: 'end',
            type: 'nominal',
            scale: { domain: [say.low, say.high], range: ['circle', 'diamond'] },
          },
        },
      },
    ],
  };
}

export function whatMovesTheOrderTable(moves: MovesAnswer): ChartTable {
  const { movesHead: head, charts } = english.compare;
  const flat = (title: string): string => title.replace('\n', ' ');
  return {
    caption: charts.captions.moves,
    columns: [
      { title: head.input, as: 'text' },
      { title: head.basis, as: 'text' },
      { title: flat(head.low), as: 'count' },
      { title: flat(head.high), as: 'count' },
    ],
    rows: againstTheAnswer(moves).map(({ path, basis, low, high }) => [
      inputName(path),
      basis,
      low,
      high,
    ]),
  };
}

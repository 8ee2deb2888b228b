/** The curve of risk that a letter shows: all ware together, with what each stock on it costs. */
import type { Answer } from './answer.js';
import type { Study } from './study.js';
import type { RiskCurve } from './charts/risk-against-stock.js';

/** @returns one curve; a list, as letters keep several of older versions */
export function riskCurves(answer: Answer, risk: Study['risk']): RiskCurve[] {
  const total = (stock: readonly number[]): number =>
    stock.reduce((sum, pieces) => sum + pieces, 0);
  const costOf = (stock: readonly number[]): number =>
    answer.stock.reduce(
      (sum, { unitCost, have }, i) => sum + unitCost * Math.max(0, stock[i]! - have),
      0,
    );
  return [
    {
      level: answer.level,
      chosen: total(answer.stock.map(({ pieces }) => pieces)),
      points: risk.together().map(({ stock, risk: share }) => ({
        stock: total(stock),
        cost: costOf(stock),
        risk: share.share,
        low: share.low,
        high: share.high,
      })),
    },
  ];
}

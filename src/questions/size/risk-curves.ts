/** The curves of risk that a letter shows: all ware together, then the ware that decides most. */
import type { Answer } from './answer.js';
import type { Study } from './study.js';
import type { RiskCurve } from './charts/risk-against-stock.js';

export function riskCurves(answer: Answer, risk: Study['risk']): RiskCurve[] {
  const total = (stock: readonly number[]): number =>
    stock.reduce((sum, pieces) => sum + pieces, 0);
  const tightest = Math.max(
    0,
    answer.stock.findIndex(({ ware }) => ware === answer.tightest.ware),
  );
  const line = answer.stock[tightest]!;
  return [
    {
      ware: null,
      level: answer.level,
      chosen: total(answer.stock.map(({ pieces }) => pieces)),
      points: risk.together().map(({ stock, risk }) => ({
        stock: total(stock),
        risk: risk.share,
        low: risk.low,
        high: risk.high,
      })),
    },
    {
      ware: line.name,
      level: answer.level,
      chosen: line.pieces,
      points: risk.alone(tightest).map(({ stock, risk }) => ({
        stock: stock[tightest]!,
        risk: risk.share,
        low: risk.low,
        high: risk.high,
      })),
    },
  ];
}

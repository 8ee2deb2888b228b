/** The larger par of an order that allows for inputs that are not known exactly. */
import type { Runner } from '../../cafe/runner.js';
import type { House } from '../../scenario/edited.js';
import { allowForInputs, type DrawnDays } from '../size/allow-for-inputs.js';
import type { Answer, InputsAnswer } from '../size/answer.js';

export interface Allowance {
  readonly found: InputsAnswer;
  /** The par that allows for the inputs, by ware; null: the plain one costs as much, and is kept. */
  readonly stock: Readonly<Record<string, number>> | null;
}

export async function allowanceOf(
  house: House,
  plain: Answer,
  runner: Runner,
  days?: DrawnDays,
): Promise<Allowance> {
  const found = await allowForInputs(house, plain, runner, days);
  const dearer = found.spend > plain.spend;
  return {
    found,
    stock: dearer
      ? Object.fromEntries(found.stock.map(({ ware, pieces }) => [ware, pieces]))
      : null,
  };
}

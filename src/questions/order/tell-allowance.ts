/** An order that allows for inputs that are not known exactly: how long its par lasts, and what the safety costs. */
import type { Formats } from '../../tell/format.js';
import { inputsMethod } from '../size/tell-inputs.js';
import { moneyIn } from './money.js';
import type { OrderStudy } from './study.js';
import { say } from './words.js';

/** What stands in the lead, and how it was worked out; both '' where inputs were taken as they are. */
export function allowanceTexts(
  { allowingForInputs, answer, sheet, unquoted }: OrderStudy,
  { count, percent, money }: Formats,
): { readonly lead: string; readonly method: string } {
  if (allowingForInputs === undefined) return { lead: '', method: '' };
  const { plain, held, plainPieces, plainSpend, plainTotalMinor, inputs } = allowingForInputs;
  const added = answer.stock.reduce((sum, { pieces }) => sum + pieces, 0) - plainPieces;
  const inOrder = moneyIn(sheet);
  const price = unquoted
    ? say.safetyUnquoted(money(answer.spend - plainSpend))
    : say.safety(inOrder(sheet.totals.totalMinor - plainTotalMinor), inOrder(plainTotalMinor));
  const method = inputsMethod(allowingForInputs, answer.level, { count, percent });
  return {
    lead:
      answer.rushLevel === undefined
        ? say.enough(count(inputs), percent(plain.level))
        : `${say.allowing(count(inputs), percent(held.level), percent(held.low), percent(held.high))} ${say.allowed(count(added), percent(plain.level))} ${price}`,
    method,
  };
}

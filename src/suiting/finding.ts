/** A finding, and what all of them are drawn from. */
import type { Consequence, DrinkAnswer, Finding, WareAnswer } from './answer.js';
import type { Basis } from './facts.js';
import type { Reads } from './reads.js';
import type { SuitInput } from './input.js';

export interface FindingsInput {
  readonly drinks: readonly DrinkAnswer[];
  readonly ware: readonly WareAnswer[];
  readonly reads: Reads;
  readonly input: SuitInput;
}

export const make = (
  consequence: Consequence,
  code: string,
  about: string,
  path: string,
  weight: number,
  basis: Basis,
  message: string,
): Finding => ({ consequence, code, about, message, basis, path, weight });

export const shareOf = (drink: DrinkAnswer, { input }: FindingsInput): number =>
  input.menu.find((d) => d.id === drink.drink)?.share ?? 0;

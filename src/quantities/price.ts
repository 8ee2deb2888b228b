/**
 * The price of ware as suppliers quote it: of a piece ("4.20 EUR"), or of many where a piece costs parts of a cent
 * ("4.50 EUR a hundred", "81 EUR a carton").
 */
import {
  amountText,
  inMinor,
  minorDigits,
  parseCurrency,
  parseMoney,
  toMinor,
  type Money,
} from './money.js';
import { bad, good, type Parsed } from './parsed.js';
import { quantity, type Quantity } from './quantity.js';
import { splitNumber } from './unit-sizes.js';

type Pack = 'carton' | 'sleeve';
/** What the amount buys: so many pieces, or a pack; absent: one piece. */
export type Price = Money & { readonly per?: number | Pack };

const counted = { piece: 1, hundred: 100, 100: 100, thousand: 1000, 1000: 1000, '1,000': 1000 };
const ending = '(?:(?<=\\s)(?:a|per)\\s+|/\\s*)(piece|hundred|thousand|carton|sleeve|1,?000|100)';
const quoted = new RegExp(`^(.*\\S)\\s*${ending}$`);

/** Reads a price; `pack`: what the pieces are packed in, where its price may be given. */
export function parsePrice(input: unknown, pack?: Pack): Parsed<Price> {
  const found = typeof input === 'string' ? quoted.exec(input.trim()) : null;
  if (found === null) {
    const price = parseMoney(input);
    return price.ok ? price : (tooFine(input) ?? price);
  }
  const [, amount, many] = found;
  const price = parseMoney(amount);
  if (!price.ok) return price;
  const per = Object.entries(counted).find(([name]) => name === many)?.[1];
  if (per === 1) return price;
  const remedy = `write the price of a piece, a hundred${pack ? `, a thousand or a ${pack}` : ' or a thousand'}, such as "4.50 EUR a hundred"`;
  if ('staffHours' in price.value) return bad('is in staff hours for many pieces', remedy);
  if (per === undefined && many !== pack)
    return bad(`is the price of a ${many}, and how much a ${many} holds is not said here`, remedy);
  return good({ ...price.value, per: per ?? pack! });
}

/** What to say of a price of a piece in parts of the smallest coin; null where something else is wrong with it. */
function tooFine(input: unknown): Parsed<never> | null {
  const split = typeof input === 'string' ? splitNumber(input) : null;
  const code = parseCurrency(split?.rest);
  if (split === null || !code.ok) return null;
  const decimals = minorDigits(code.value);
  const ofHundred = toMinor(split.digits, decimals + 2);
  const minor = ofHundred ?? toMinor(split.digits, decimals + 3);
  return minor === null || toMinor(split.digits, decimals) !== null
    ? null
    : bad(
        `has more decimals than ${code.value} has (${decimals})`,
        `write "${amountText(minor, code.value)} a ${ofHundred === null ? 'thousand' : 'hundred'}"`,
      );
}

/** A price that may be of a hundred, a thousand, or a pack of this kind. */
const priced = (pack?: Pack): Quantity<Price> =>
  quantity('money', (input) => parsePrice(input, pack), {
    type: 'string',
    pattern: `^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)\\s*([A-Z]{3}|staff\\s+hours?)\\s*(${ending})?\\s*$`,
    examples: ['4.20 EUR', '4.50 EUR a hundred', ...(pack ? [`81 EUR a ${pack}`] : [])],
    description: 'What a piece costs, with the currency; or "a hundred", "a thousand", a pack.',
  });

export const price = priced();
export const priceInCartons = priced('carton');
export const priceInSleeves = priced('sleeve');

/** Minor units that so many pieces cost, `pack` of them to a carton or sleeve; parts of a unit are kept. */
export function priceMinor(
  price: Price,
  pieces: number,
  pack: number,
  staffHourMinor: number,
): number {
  const { per = 1 } = price;
  return (inMinor(price, staffHourMinor) * pieces) / (typeof per === 'number' ? per : pack);
}

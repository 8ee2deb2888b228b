/**
 * How large units are, in the unit used inside: mm, ml, g.
 *
 * Exact by definition: NIST Handbook 44, appendix C (inch 25.4 mm, US gallon 231 cubic inches, pound
 * 0.45359237 kg); the imperial fluid ounce is 1/160 of 4.54609 l.
 */
export const MM_PER_INCH = 25.4;
/** 231/128 cubic inches. */
export const ML_PER_FLUID_OUNCE = 29.5735295625;
export const G_PER_POUND = 453.59237;
export const G_PER_OUNCE = G_PER_POUND / 16;

type Sizes = Readonly<Record<string, number>>;

export const lengths: Sizes = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
};

export const volumes: Sizes = {
  ml: 1,
  mL: 1,
  cl: 10,
  cL: 10,
  dl: 100,
  dL: 100,
  l: 1000,
  L: 1000,
  'fl oz': ML_PER_FLUID_OUNCE,
  'US fl oz': ML_PER_FLUID_OUNCE,
  'imp fl oz': 28.4130625,
  'US gal': 128 * ML_PER_FLUID_OUNCE,
};

export const masses: Sizes = { g: 1, kg: 1000, oz: G_PER_OUNCE, lb: G_PER_POUND };

/** Units that a reader with US units is used to; all others of a length, a volume or a mass are metric or imperial. */
export const usUnits: ReadonlySet<string> = new Set([
  'in',
  'inch',
  'inches',
  'fl oz',
  'US fl oz',
  'US gal',
  'oz',
  'lb',
  '°F',
  'F',
]);

const NUMBER = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?`;
const numberThenRest = new RegExp(`^(${NUMBER})\\s*(.*)$`, 'u');

/** "7 fl oz" → 7 and "fl oz"; null where the text does not begin with a number. */
export function splitNumber(
  text: string,
): { readonly number: number; readonly digits: string; readonly rest: string } | null {
  const found = numberThenRest.exec(text.trim());
  if (found === null) return null;
  return { number: Number(found[1]), digits: found[1]!, rest: found[2]!.trim() };
}

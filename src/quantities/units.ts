/**
 * Quantities with a unit: durations, lengths, volumes, masses, temperatures, energies, powers, rates.
 */
import { bad, clean, good, kindOf, wrongKind, type Parsed } from './parsed.js';
import { patternOf, quantity, type Quantity } from './quantity.js';
import { splitNumber } from './unit-sizes.js';
import {
  both,
  durationUnits,
  energyUnits,
  lengthUnits,
  massUnits,
  notFinite,
  parseWithUnit,
  powerUnits,
  volumeUnits,
  type UnitTable,
} from './unit-tables.js';

const unitQuantity = (
  kind: string,
  table: UnitTable,
  examples: readonly string[],
  parse = (input: unknown): Parsed<number> => parseWithUnit(input, table),
): Quantity<number> =>
  quantity(kind, parse, {
    type: 'string',
    pattern: patternOf(Object.keys(table.factors)),
    examples: [...examples],
    description: `${table.noun[0]!.toUpperCase()}${table.noun.slice(1)} with its unit.`,
  });

/** Milliseconds. */
export const duration = unitQuantity('duration', durationUnits, ['90 s', '12 min', '1.5 h']);
/** No piece, rack or shelf is longer. The work of filling a rack grows with the piece: one of 84 km took hours. */
const LONGEST_MM = 20_000;
/** Millimetres. */
export const length = unitQuantity(
  'length',
  lengthUnits,
  ['86 mm', '8.6 cm', '3.4 in'],
  (input) => {
    const parsed = parseWithUnit(input, lengthUnits);
    return parsed.ok && parsed.value > LONGEST_MM
      ? bad('is longer than 20 m, as no piece, rack or shelf is', 'check the number and its unit')
      : parsed;
  },
);
/** Millilitres. */
export const volume = unitQuantity('volume', volumeUnits, ['220 ml', '7 fl oz', '3 l']);
/** Grams. */
export const mass = unitQuantity('mass', massUnits, ['280 g', '10 oz', '1.2 kg']);
/** Kilowatt hours. */
export const energy = unitQuantity('energy', energyUnits, ['0.4 kWh']);
/** Kilowatts. */
export const power = unitQuantity('power', powerUnits, ['3.2 kW']);

/** Degrees Celsius. Degrees Fahrenheit are converted, so this one is no plain factor. */
export function parseTemperature(input: unknown): Parsed<number> {
  const remedy = 'write a number with its unit, such as "82 °C" or "180 °F"';
  const odd = notFinite(input);
  if (odd) return odd;
  if (typeof input === 'number')
    return bad(
      'is a number without a unit where a temperature is needed',
      both(input, ['°C', '°F']),
    );
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where a temperature is needed`, remedy);
  const split = splitNumber(input);
  if (split === null) return wrongKind('is not a temperature', remedy);
  const unit = split.rest.replace(/^°\s*/, '');
  if (unit === '')
    return bad('has no unit where a temperature is needed', both(split.number, ['°C', '°F']));
  if (unit !== 'C' && unit !== 'F')
    return bad(`has the unit "${split.rest}" where a temperature is needed (°C, °F)`, remedy);
  const celsius = unit === 'C' ? split.number : clean(((split.number - 32) * 5) / 9);
  if (!Number.isFinite(celsius)) return bad('is too large a number', remedy);
  if (celsius < -273.15) return bad('is below absolute zero', remedy);
  return good(celsius);
}

export const temperature: Quantity<number> = quantity('temperature', parseTemperature, {
  type: 'string',
  pattern: '^\\s*[-+]?(\\d+\\.?\\d*|\\.\\d+)\\s*°?\\s*[CF]\\s*$',
  examples: ['82 °C', '180 °F'],
  description: 'A temperature in degrees Celsius or Fahrenheit.',
});

const perUnits = {
  s: 1000,
  second: 1000,
  min: 60_000,
  minute: 60_000,
  h: 3_600_000,
  hour: 3_600_000,
  day: 86_400_000,
};

/** So many a unit of time: "32 / h", "0.5 / min"; the result is a millisecond. */
export function parseRate(input: unknown): Parsed<number> {
  const remedy = 'write a number per unit of time, such as "32 / h" or "0.5 / min"';
  const odd = notFinite(input);
  if (odd) return odd;
  if (typeof input === 'number')
    return bad('is a number without a unit where a rate is needed', both(input, ['/ h', '/ min']));
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where a rate is needed`, remedy);
  const split = splitNumber(input);
  if (split === null) return wrongKind('is not a rate', remedy);
  if (split.rest === '')
    return bad('has no unit where a rate is needed', both(split.number, ['/ h', '/ min']));
  const per = /^(?:\/|per)\s*(.*)$/.exec(split.rest)?.[1]?.trim();
  const ms =
    per !== undefined && Object.hasOwn(perUnits, per)
      ? perUnits[per as keyof typeof perUnits]
      : null;
  if (ms === null)
    return bad(
      `has the unit "${split.rest}" where a rate is needed (/ s, / min, / h, / day)`,
      remedy,
    );
  const value = clean(split.number / ms);
  if (!Number.isFinite(value)) return bad('is too large a number', remedy);
  if (value < 0)
    return bad('is negative, which a rate cannot be', `write "${0 - split.number} / ${per}"`);
  return good(value);
}

export const rate: Quantity<number> = quantity('rate', parseRate, {
  type: 'string',
  pattern:
    '^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?\\s*(/|per)\\s*(s|second|min|minute|h|hour|day)\\s*$',
  examples: ['32 / h', '0.5 / min'],
  description: 'A number per unit of time.',
});

/** Units by what they measure, and reading a number with one. */
import { nearest } from './nearest.js';
import { bad, clean, good, kindOf, wrongKind, type Parsed } from './parsed.js';
import { lengths, masses, splitNumber, volumes } from './unit-sizes.js';

export interface UnitTable {
  /** Largest number in the table's own unit, and why; none if it does not say. */
  readonly most?: number;
  readonly mostInWords?: string;
  /** "a duration", as messages name it. */
  readonly noun: string;
  /** Unit as written → factor to the unit used inside. */
  readonly factors: Readonly<Record<string, number>>;
  /** The units suggested for a bare number, the likeliest first. */
  readonly usual: readonly string[];
  /** The units as messages list them. */
  readonly listed: string;
  /** The smallest value allowed, in the unit used inside. */
  readonly least: number;
  readonly leastInWords: string;
}

export const durationUnits: UnitTable = {
  noun: 'a duration',
  most: 10 * 366 * 86_400_000,
  mostInWords: 'the longest allowed is ten years',
  factors: {
    ms: 1,
    s: 1000,
    sec: 1000,
    second: 1000,
    seconds: 1000,
    min: 60_000,
    minute: 60_000,
    minutes: 60_000,
    h: 3_600_000,
    hour: 3_600_000,
    hours: 3_600_000,
    day: 86_400_000,
    days: 86_400_000,
  },
  usual: ['s', 'min'],
  listed: 'ms, s, min, h, days',
  least: 0,
  leastInWords: 'a duration cannot be negative',
};

export const lengthUnits: UnitTable = {
  noun: 'a length',
  factors: lengths,
  usual: ['mm', 'cm'],
  listed: 'mm, cm, m, in',
  least: 0,
  leastInWords: 'a length cannot be negative',
};

export const volumeUnits: UnitTable = {
  noun: 'a volume',
  factors: volumes,
  usual: ['ml', 'fl oz'],
  listed: 'ml, cl, l, fl oz',
  least: 0,
  leastInWords: 'a volume cannot be negative',
};

export const massUnits: UnitTable = {
  noun: 'a mass',
  factors: masses,
  usual: ['g', 'oz'],
  listed: 'g, kg, oz, lb',
  least: 0,
  leastInWords: 'a mass cannot be negative',
};

export const energyUnits: UnitTable = {
  noun: 'an energy',
  factors: { kWh: 1, Wh: 0.001, MJ: 1 / 3.6, kJ: 1 / 3600 },
  usual: ['kWh', 'Wh'],
  listed: 'kWh, Wh, MJ',
  least: 0,
  leastInWords: 'an energy cannot be negative',
};

export const powerUnits: UnitTable = {
  noun: 'a power',
  factors: { kW: 1, W: 0.001 },
  usual: ['kW', 'W'],
  listed: 'kW, W',
  least: 0,
  leastInWords: 'a power cannot be negative',
};

/** All tables, to tell a unit of something else from a misspelt one. */
const tables = (): readonly UnitTable[] => [
  durationUnits,
  lengthUnits,
  volumeUnits,
  massUnits,
  energyUnits,
  powerUnits,
];

export const both = (number: number, units: readonly string[]): string =>
  `write ${units.map((unit) => `"${Math.abs(number)} ${unit}"`).join(' or ')}`;
const example = (table: UnitTable): string =>
  `write a number with its unit, such as "40 ${table.usual[0]}"`;

/** A number that is not one: NaN, or too large to be held. */
export function notFinite(input: unknown): Parsed<never> | null {
  if (typeof input === 'number' && !Number.isFinite(input))
    return bad('is not a number that can be used', 'write an ordinary number');
  return null;
}

/** Why a unit is not one of the table's, and what to write. */
function unknownUnit(unit: string, number: number, table: UnitTable): Parsed<never> {
  const known = Object.keys(table.factors);
  if (/^\s*,/.test(unit))
    return bad(
      'has a decimal comma',
      `write the number with a point, such as "1.5 ${table.usual[0]}"`,
    );
  if (/\d/.test(unit))
    return bad(`has more than one number where ${table.noun} is needed`, example(table));
  if (unit === '')
    return bad(`has no unit where ${table.noun} is needed`, both(number, table.usual));
  const other = tables().find((one) => one !== table && Object.hasOwn(one.factors, unit));
  const near = other
    ? null
    : known.includes(unit.toLowerCase())
      ? unit.toLowerCase()
      : unit.length > 2
        ? nearest(unit, known)
        : null;
  const remedy = near === null ? both(number, table.usual) : `did you mean "${number} ${near}"?`;
  return bad(
    `has the unit "${unit}"${other ? ` of ${other.noun}` : ''} where ${table.noun} is needed (${table.listed})`,
    remedy,
  );
}

/** Reads "12.5 min" by a table of units; the result is in the table's own unit. */
export function parseWithUnit(input: unknown, table: UnitTable): Parsed<number> {
  const odd = notFinite(input);
  if (odd) return odd;
  if (typeof input === 'number')
    return bad(
      `is a number without a unit where ${table.noun} is needed`,
      both(input, table.usual),
    );
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where ${table.noun} is needed`, example(table));
  const split = splitNumber(input);
  if (split === null) return wrongKind(`is not ${table.noun}`, example(table));
  const factor = Object.hasOwn(table.factors, split.rest) ? table.factors[split.rest]! : null;
  if (factor === null) return unknownUnit(split.rest, split.number, table);
  const value = clean(split.number * factor);
  if (!Number.isFinite(value)) return bad('is too large a number', example(table));
  if (value < table.least)
    return bad(
      `is negative: ${table.leastInWords}`,
      `write ${0 - split.number} ${split.rest} or leave it out`,
    );
  if (value > (table.most ?? Infinity))
    return bad(`is too long: ${table.mostInWords}`, 'check the number and its unit');
  return good(value);
}

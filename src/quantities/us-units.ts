/**
 * Values as written, shown in the units a reader is used to; and what a reader types, taken in the unit
 * shown. Nothing stored changes by being shown: "86 mm" stays so in the file though a box says "3.4 in".
 *
 * Needs neither schema nor parser, as the page's boxes have it at hand. t/°C = (t/°F - 32)/1.8: NIST Special
 * Publication 811 (2008), appendix B.8.
 */
import {
  G_PER_OUNCE,
  G_PER_POUND,
  lengths,
  masses,
  ML_PER_FLUID_OUNCE,
  MM_PER_INCH,
  splitNumber,
  usUnits,
  volumes,
} from './unit-sizes.js';

/** The units a reader wants lengths, volumes, masses and temperatures in. */
export type Units = 'metric' | 'us';

type Of = 'length' | 'volume' | 'mass' | 'temperature';

interface Unit {
  readonly of: Of;
  readonly system: Units;
  /** How many mm, ml or g it holds. */
  readonly size: number;
}

const unitsOf = (of: Of, sizes: Readonly<Record<string, number>>): [string, Unit][] =>
  Object.entries(sizes).map(([name, size]) => [
    name,
    { of, size, system: usUnits.has(name) ? 'us' : 'metric' },
  ]);

/** Units that have a like in the other system; those of time, money and energy have none, nor has an imperial ounce. */
const units: ReadonlyMap<string, Unit> = new Map(
  [
    ...unitsOf('length', lengths),
    ...unitsOf('volume', volumes),
    ...unitsOf('mass', masses),
    ...unitsOf('temperature', { '°C': 1, C: 1, '°F': 1, F: 1 }),
  ].filter(([name]) => name !== 'imp fl oz'),
);

/** One decimal, two digits below one: as fine as somebody at a counter reads it. */
const rounded = (value: number): string =>
  String(Number(Math.abs(value) >= 1 ? value.toFixed(1) : value.toPrecision(2)));

/** An amount of mm, ml, g in the unit of the system that suits its size. */
function inSystem(of: Exclude<Of, 'temperature'>, amount: number, system: Units): string {
  if (system === 'us') {
    if (of === 'length') return `${rounded(amount / MM_PER_INCH)} in`;
    if (of === 'volume') return `${rounded(amount / ML_PER_FLUID_OUNCE)} fl oz`;
    return amount < G_PER_POUND
      ? `${rounded(amount / G_PER_OUNCE)} oz`
      : `${rounded(amount / G_PER_POUND)} lb`;
  }
  const base = { length: 'mm', volume: 'ml', mass: 'g' }[of];
  if (of !== 'length' && amount >= 1000)
    return `${String(Number((amount / 1000).toPrecision(3)))} ${of === 'volume' ? 'l' : 'kg'}`;
  return `${amount >= 10 ? String(Math.round(amount)) : rounded(amount)} ${base}`;
}

/**
 * A value as written ("86 mm"), in the reader's units ("3.4 in"); as it is where its unit is already
 * theirs, has no like, or is none. Rounded for reading: never to be stored.
 */
export function shownIn(written: string, system: Units): string {
  const found = splitNumber(written);
  const own = found === null ? undefined : units.get(found.rest);
  if (found === null || own === undefined || own.system === system) return written;
  if (own.of !== 'temperature') return inSystem(own.of, found.number * own.size, system);
  return system === 'us'
    ? `${String(Math.round(found.number * 1.8 + 32))} °F`
    : `${String(Math.round((found.number - 32) / 1.8))} °C`;
}

/** The unit a bare number is taken in where nothing was shown, by kind of value; '' where it needs none. */
const usual: Readonly<Record<string, readonly [metric: string, us: string]>> = {
  length: ['mm', 'in'],
  volume: ['ml', 'fl oz'],
  mass: ['g', 'oz'],
  temperature: ['°C', '°F'],
  duration: ['min', 'min'],
  durationLaw: ['min', 'min'],
  share: ['%', '%'],
  rate: ['/ h', '/ h'],
  energy: ['kWh', 'kWh'],
  power: ['kW', 'kW'],
  factor: ['%', '%'],
};

/** Kinds of value that are numbers in a file, without a unit. */
const bare = new Set(['count', 'number']);
/** Kinds whose unit may be one that was shown. */
const withUnit = new Set([
  ...Object.keys(usual),
  'money',
  'amount',
  'foam',
  'moment',
  'vesselState',
]);

/**
 * What somebody typed in a box, as the file is to hold it: a bare number takes the unit that the box
 * showed (or, in an empty box, the usual one of its kind); all else stays as typed, unit and all. A count is a number.
 * @param shown what the box said before
 */
export function typedAs(text: string, kind: string, system: Units, shown = ''): string | number {
  const typed = text.trim();
  const found = splitNumber(typed);
  if (found === null || found.rest !== '') return typed;
  if (bare.has(kind)) return found.number;
  if (!withUnit.has(kind)) return typed;
  const before = splitNumber(shown);
  if (before !== null && before.rest === '')
    return kind === 'share' || kind === 'factor' ? found.number : typed;
  const taken =
    (before?.rest.startsWith(':') === true ? undefined : before?.rest) ??
    usual[kind]?.[system === 'us' ? 1 : 0] ??
    '';
  return taken === '' ? typed : `${found.digits} ${taken}`;
}

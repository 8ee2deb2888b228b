/**
 * Values as written, shown in the units a reader is used to; and what a reader types, taken in the unit
 * shown. Nothing stored changes by being shown: "86 mm" stays so in the file though a box says "3.4 in".
 *
 * Stands alone (no schema, no parser), as the page's boxes need it at hand. Factors: NIST Special
 * Publication 811 (2008), appendix B.8: 1 in = 25.4 mm, 1 US fl oz = 29.573 529 562 5 ml (a gallon of 231
 * cubic inches through 128), 1 lb = 453.592 37 g, 1 oz = 1/16 lb; t/°C = (t/°F - 32)/1.8.
 */

/** The units a reader wants lengths, volumes, masses and temperatures in. */
export type Units = 'metric' | 'us';

export const mmPerInch = 25.4;
export const mlPerFluidOunce = 29.5735295625;
export const gPerPound = 453.59237;
const gPerOunce = gPerPound / 16;

type Of = 'length' | 'volume' | 'mass' | 'temperature';

interface Unit {
  readonly of: Of;
  readonly system: Units;
  /** How many mm, ml or g it holds. */
  readonly size: number;
}

const unit = (of: Of, system: Units, size: number): Unit => ({ of, system, size });

/** Units that have a like in the other system; those of time, money and energy have none. */
const units: Readonly<Record<string, Unit>> = {
  mm: unit('length', 'metric', 1),
  cm: unit('length', 'metric', 10),
  m: unit('length', 'metric', 1000),
  in: unit('length', 'us', mmPerInch),
  inch: unit('length', 'us', mmPerInch),
  inches: unit('length', 'us', mmPerInch),
  ml: unit('volume', 'metric', 1),
  mL: unit('volume', 'metric', 1),
  cl: unit('volume', 'metric', 10),
  cL: unit('volume', 'metric', 10),
  dl: unit('volume', 'metric', 100),
  dL: unit('volume', 'metric', 100),
  l: unit('volume', 'metric', 1000),
  L: unit('volume', 'metric', 1000),
  'fl oz': unit('volume', 'us', mlPerFluidOunce),
  'US fl oz': unit('volume', 'us', mlPerFluidOunce),
  'US gal': unit('volume', 'us', 128 * mlPerFluidOunce),
  g: unit('mass', 'metric', 1),
  kg: unit('mass', 'metric', 1000),
  oz: unit('mass', 'us', gPerOunce),
  lb: unit('mass', 'us', gPerPound),
  '°C': unit('temperature', 'metric', 1),
  C: unit('temperature', 'metric', 1),
  '°F': unit('temperature', 'us', 1),
  F: unit('temperature', 'us', 1),
};

const pattern = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*(.*)$/u;

/** "7 fl oz" → 7 and "fl oz"; null where the text does not begin with a number. */
export function numberAndUnit(
  text: string,
): { readonly number: number; readonly digits: string; readonly unit: string } | null {
  const found = pattern.exec(text.trim());
  return found === null
    ? null
    : { number: Number(found[1]), digits: found[1]!, unit: found[2]!.trim() };
}

/** One decimal, two digits below one: as fine as somebody at a counter reads it. */
const rounded = (value: number): string =>
  String(Number(Math.abs(value) >= 1 ? value.toFixed(1) : value.toPrecision(2)));

/** An amount of mm, ml, g in the unit of the system that suits its size. */
function inSystem(of: Exclude<Of, 'temperature'>, amount: number, system: Units): string {
  if (system === 'us') {
    if (of === 'length') return `${rounded(amount / mmPerInch)} in`;
    if (of === 'volume') return `${rounded(amount / mlPerFluidOunce)} fl oz`;
    return amount < gPerPound
      ? `${rounded(amount / gPerOunce)} oz`
      : `${rounded(amount / gPerPound)} lb`;
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
  const found = numberAndUnit(written);
  const own = found !== null && Object.hasOwn(units, found.unit) ? units[found.unit]! : null;
  if (found === null || own === null || own.system === system) return written;
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
  const found = numberAndUnit(typed);
  if (found === null || found.unit !== '') return typed;
  if (bare.has(kind)) return found.number;
  if (!withUnit.has(kind)) return typed;
  const before = numberAndUnit(shown);
  if (before !== null && before.unit === '')
    return kind === 'share' || kind === 'factor' ? found.number : typed;
  const taken =
    (before?.unit.startsWith(':') === true ? undefined : before?.unit) ??
    usual[kind]?.[system === 'us' ? 1 : 0] ??
    '';
  return taken === '' ? typed : `${found.digits} ${taken}`;
}

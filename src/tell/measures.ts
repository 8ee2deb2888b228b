/**
 * Lengths, volumes, masses and temperatures as the reader's trade writes them: metric, or the units of
 * the United States.
 *
 * Inches are decimals to a hundredth rather than sixteenths: a hundredth (0.25 mm) still shows the
 * fraction of a millimetre at which a rack loses a row of cups, a sixteenth (1.6 mm) hides it; calipers
 * read so; and what is printed can be typed into a scenario as it stands.
 * Factors are exact (NIST Special Publication 811, appendix B; Handbook 44, appendix C).
 */
import { power, square } from '../elementary/powers.js';
export type Units = 'metric' | 'us';

const MM_PER_INCH = 25.4;
const ML_PER_FLUID_OUNCE = 29.5735295625;
const GRAMS_PER_POUND = 453.59237;
const OUNCES_PER_POUND = 16;
const METRES_PER_FOOT = 0.3048;

/** A measure as text: the figure, a no-break space (U+00A0), the unit. */
export interface Measures {
  readonly units: Units;
  /** mm: to a tenth; inches to a hundredth. */
  length(mm: number): string;
  /** The same, rounded down, so that no more room is promised than there is; below a tenth of an inch in thousandths. */
  room(mm: number): string;
  /** The same, rounded up: with so much it surely is enough. */
  enough(mm: number): string;
  /** Whole ml; US fluid ounces to a tenth. */
  volume(ml: number): string;
  /** Whole g, from a kilogram kg to a tenth; ounces to a tenth, from a pound pounds and whole ounces. */
  mass(g: number): string;
  /** A reading of the thermometer, °C given. */
  temperature(celsius: number, digits?: number): string;
  /** How much hotter, °C given: a difference, so 10 °C are 18 °F. */
  warmer(celsius: number, digits?: number): string;
  /** Of hands over the floor: whole cm; whole inches. */
  height(cm: number): string;
  /** m² to a tenth; square feet to a tenth. */
  area(m2: number): string;
}

/** Writes a figure with at most, and at least, so many decimals. */
export type WriteFigure = (value: number, most: number, least?: number) => string;

/** Reading of the reader's thermometer for a reading in °C. */
export const onThermometer = (celsius: number, units: Units): number =>
  units === 'us' ? (celsius * 9) / 5 + 32 : celsius;

/** Its sign. */
export const degreeSign = (units: Units): string => (units === 'us' ? '°F' : '°C');

/** So many ml in the reader's unit of volume. */
export const inVolumeUnit = (ml: number, units: Units): number =>
  units === 'us' ? ml / ML_PER_FLUID_OUNCE : ml;

export const volumeUnit = (units: Units): string => (units === 'us' ? 'US fl oz' : 'ml');

/** Rounded down, or up, at so many decimals; what is a whole step but for the last bits of a float stays it. */
const down = (value: number, digits: number): number =>
  Math.floor(value * power(10, digits) + 1e-9) / power(10, digits);
const up = (value: number, digits: number): number => -down(-value, digits);

export function measuresIn(units: Units, write: WriteFigure): Measures {
  const withUnit = (value: number, unit: string, most: number, least = most): string =>
    `${write(value, most, least)}\u00A0${unit}`;
  const degrees = (value: number, digits: number): string =>
    withUnit(value, degreeSign(units), digits);
  const shared = {
    units,
    temperature: (celsius: number, digits = 0): string =>
      degrees(onThermometer(celsius, units), digits),
    warmer: (celsius: number, digits = 0): string =>
      degrees(onThermometer(celsius, units) - onThermometer(0, units), digits),
  };
  if (units === 'metric') {
    return {
      ...shared,
      length: (mm) => withUnit(mm, 'mm', 1, 0),
      room: (mm) => withUnit(down(mm, 1), 'mm', 1),
      enough: (mm) => withUnit(up(mm, 1), 'mm', 1),
      volume: (ml) => withUnit(ml, 'ml', 0),
      mass: (g) => (Math.round(g) < 1000 ? withUnit(g, 'g', 0) : withUnit(g / 1000, 'kg', 1)),
      height: (cm) => withUnit(cm, 'cm', 0),
      area: (m2) => withUnit(m2, 'm²', 1),
    };
  }
  const fine = (mm: number, round: typeof down): string => {
    const inches = mm / MM_PER_INCH;
    const digits = inches < 0.1 ? 3 : 2;
    return withUnit(round(inches, digits), 'in', digits);
  };
  return {
    ...shared,
    length: (mm) => withUnit(mm / MM_PER_INCH, 'in', 2, 0),
    room: (mm) => fine(mm, down),
    enough: (mm) => fine(mm, up),
    volume: (ml) => withUnit(inVolumeUnit(ml, units), 'fl\u00A0oz', 1),
    mass(g) {
      const ounces = (g / GRAMS_PER_POUND) * OUNCES_PER_POUND;
      if (Math.round(ounces * 10) < 10 * OUNCES_PER_POUND) return withUnit(ounces, 'oz', 1);
      const whole = Math.round(ounces);
      return `${withUnit(Math.floor(whole / OUNCES_PER_POUND), 'lb', 0)}\u00A0${withUnit(whole % OUNCES_PER_POUND, 'oz', 0)}`;
    },
    height: (cm) => withUnit((cm * 10) / MM_PER_INCH, 'in', 0),
    area: (m2) => withUnit(m2 / square(METRES_PER_FOOT), 'sq\u00A0ft', 1),
  };
}

/** Metric, figures with a decimal point: for a drawing that no reader's choice is known of. */
export const plainMetric: Measures = measuresIn('metric', (value, most, least = 0) =>
  value
    .toFixed(most)
    .replace(/(\.\d*?)0+$/, (all, kept: string) => (least > 0 ? all : kept))
    .replace(/\.$/, ''),
);

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { length, mass, temperature, volume } from '../../src/quantities/units.js';
import { shownIn, typedAs } from '../../src/quantities/us-units.js';
import {
  G_PER_POUND,
  ML_PER_FLUID_OUNCE,
  MM_PER_INCH,
  splitNumber,
} from '../../src/quantities/unit-sizes.js';

const seed = { seed: 20 };

describe('factors', () => {
  it('are those of NIST SP 811 (2008), appendix B.8, and of NIST Handbook 44, appendix C', () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(ML_PER_FLUID_OUNCE).toBe(29.5735295625);
    expect(G_PER_POUND).toBe(453.59237);
    // A US gallon is 231 cubic inches and 128 fluid ounces.
    expect((231 * 2.54 ** 3) / 128).toBeCloseTo(ML_PER_FLUID_OUNCE, 10);
  });
});

describe('a value as written, in the units of its reader', () => {
  // Worked by hand: 86 / 25.4 = 3.386; 280 / 29.5735 = 9.468; 275 / 28.3495 = 9.700; 1200 / 453.592 = 2.6455; 65 × 1.8 + 32 = 149.
  it.each([
    ['86 mm', '3.4 in'],
    ['4 mm', '0.16 in'],
    ['8.6 cm', '3.4 in'],
    ['1.4 m', '55.1 in'],
    ['280 ml', '9.5 fl oz'],
    ['3.8 l', '128.5 fl oz'],
    ['20 ml', '0.68 fl oz'],
    ['275 g', '9.7 oz'],
    ['1.2 kg', '2.6 lb'],
    ['65 °C', '149 °F'],
    ['82 C', '180 °F'],
    ['4 °C', '39 °F'],
  ])('%s is shown as %s', (metric, us) => {
    expect(shownIn(metric, 'us')).toBe(us);
    expect(shownIn(metric, 'metric')).toBe(metric);
  });

  it.each([
    ['3.4 in', '86 mm'],
    ['0.2 in', '5.1 mm'],
    ['8 fl oz', '237 ml'],
    ['1 US gal', '3.79 l'],
    ['10 oz', '283 g'],
    ['3 lb', '1.36 kg'],
    ['180 °F', '82 °C'],
  ])('%s is shown as %s', (us, metric) => {
    expect(shownIn(us, 'metric')).toBe(metric);
    expect(shownIn(us, 'us')).toBe(us);
  });

  it('stays as it is where the other system has nothing for it', () => {
    for (const text of [
      '42 min',
      '35 %',
      '4.20 EUR',
      '0.3 staff hours',
      '64 / h',
      '0.35 kWh',
      'unlimited',
      '07:00',
      '',
      'm',
      '12',
      '{ mean: 3 min }',
      '5 furlongs',
      '3 imp fl oz',
    ]) {
      for (const system of ['us', 'metric'] as const) expect(shownIn(text, system)).toBe(text);
    }
  });

  it('means the same to the readers of scenario files, within what is rounded away', () => {
    const kinds = [
      [length, ['mm', 'cm', 'm', 'in']],
      [volume, ['ml', 'cl', 'l', 'fl oz', 'US gal']],
      [mass, ['g', 'kg', 'oz', 'lb']],
    ] as const;
    const values = fc.constantFrom(...kinds).chain(([schema, names]) =>
      fc.record({
        schema: fc.constant(schema),
        number: fc.double({ min: 0.5, max: 900, noNaN: true }).map((x) => Number(x.toPrecision(4))),
        unit: fc.constantFrom(...names),
      }),
    );
    fc.assert(
      fc.property(
        values,
        fc.constantFrom('us' as const, 'metric' as const),
        ({ schema, number, unit }, system) => {
          // No length is over 20 m.
          const divisor = unit === 'm' ? 50 : unit === 'in' ? 2 : 1;
          const written = `${Number((number / divisor).toPrecision(4))} ${unit}`;
          const shown = shownIn(written, system);
          const [before, after] = [schema.parse(written), schema.parse(shown)];
          // Half a tenth of the unit shown, or half of the second or third digit.
          const half = schema.parse(`0.05 ${splitNumber(shown)!.rest}`);
          expect(Math.abs(after - before)).toBeLessThanOrEqual(
            Math.max(half * 1.0001, before * 0.0051, system === 'metric' ? 0.5 : 0),
          );
          expect(shownIn(shown, system)).toBe(shown);
        },
      ),
      { ...seed, numRuns: 500 },
    );
    expect(temperature.parse(shownIn('82 °C', 'us'))).toBeCloseTo(82.2, 1);
  });
});

describe('what is typed in a box', () => {
  it.each([
    ['90', 'length', 'us', '3.4 in', '90 in'],
    ['90', 'length', 'metric', '86 mm', '90 mm'],
    ['3.5 in', 'length', 'metric', '86 mm', '3.5 in'],
    ['90 mm', 'length', 'us', '3.4 in', '90 mm'],
    ['12', 'duration', 'us', '10 min', '12 min'],
    ['12', 'durationLaw', 'us', '50 s', '12 s'],
    ['40', 'share', 'metric', '35 %', '40 %'],
    ['0.4', 'share', 'metric', '0.35', 0.4],
    ['5.40', 'money', 'us', '5.20 EUR', '5.40 EUR'],
    ['70', 'rate', 'metric', '64 / h', '70 / h'],
    ['3', 'count', 'us', '2', 3],
    ['3', 'count', 'us', 'unlimited', 3],
    ['0.25', 'number', 'us', '0.2', 0.25],
    ['8', 'volume', 'us', '', '8 fl oz'],
    ['200', 'volume', 'metric', '', '200 ml'],
    ['150', 'temperature', 'us', '149 °F', '150 °F'],
    ['unlimited', 'count', 'us', '2', 'unlimited'],
    ['many', 'count', 'us', '2', 'many'],
    ['3 cups', 'count', 'us', '2', '3 cups'],
    ['5', 'text', 'us', 'Cup', '5'],
    ['5', 'text', 'us', '12 mm', '5'],
    ['7', 'clock', 'us', '07:00', '7'],
    ['7', 'moment', 'us', '07:00', '7'],
    ['1.234567891234567891', 'money', 'us', '5 EUR', '1.234567891234567891 EUR'],
  ] as const)('%s as %s (%s, after "%s") is held as %s', (text, kind, system, shown, held) => {
    expect(typedAs(text, kind, system, shown)).toBe(held);
    expect(typedAs(`  ${text} `, kind, system, shown)).toBe(held);
  });
});

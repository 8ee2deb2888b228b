import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationUnits, parseWithUnit } from '../../src/quantities/unit-tables.js';
import {
  duration,
  length,
  mass,
  parseRate,
  parseTemperature,
  rate,
  temperature,
  volume,
} from '../../src/quantities/units.js';

interface Check {
  readonly id: string;
  readonly expected: Readonly<Record<string, number>>;
}
const published = JSON.parse(
  readFileSync(new URL('../../shared/checks/published.json', import.meta.url), 'utf8'),
) as readonly Check[];
const check = (id: string): Readonly<Record<string, number>> =>
  published.find((one) => one.id === id)!.expected;

describe('units against published values', () => {
  // NIST Handbook 44, appendix C.
  const nist = check('us-floz');

  it('takes the US fluid ounce and the pound as NIST defines them, and the inch as 25.4 mm', () => {
    expect(volume.parse('1 fl oz')).toBe(nist['ml']);
    expect(volume.parse('1 US gal')).toBe(nist['galL']! * 1000);
    expect(mass.parse('1 lb')).toBeCloseTo(nist['lbKg']! * 1000, 12);
    expect(mass.parse('16 oz')).toBe(mass.parse('1 lb'));
    expect(length.parse('2 in')).toBe(50.8);
  });

  it('tells the imperial fluid ounce from the US one', () => {
    // 1/20 of an imperial pint of 568.26125 ml (UK Weights and Measures Act 1985, schedule 1; from memory).
    expect(volume.parse('20 imp fl oz')).toBeCloseTo(568.26125, 9);
  });

  it('reads the temperatures of the FDA Food Code in either scale alike', () => {
    for (const [celsius, fahrenheit] of Object.values(
      check('foodcode-rinse'),
    ) as unknown as readonly (readonly [number, number])[]) {
      expect(Math.abs(temperature.parse(`${fahrenheit} °F`) - celsius)).toBeLessThanOrEqual(0.5);
    }
    expect(parseTemperature('212 °F')).toEqual({ ok: true, value: 100 });
    expect(parseTemperature('-40 F')).toEqual(parseTemperature('-40 °C'));
  });
});

describe('laws of units', () => {
  it('gives the same number whatever the unit', () => {
    expect(duration.parse('90 s')).toBe(duration.parse('1.5 min'));
    expect(duration.parse('1 day')).toBe(duration.parse('24 h'));
    expect(rate.parse('24 / h')).toBe(rate.parse('0.4 / min'));
    expect(rate.parse('24 / h')).toBe(rate.parse('24 per hour'));
    expect(length.parse('8.6 cm')).toBe(length.parse('86 mm'));
    expect(length.parse('20 m')).toBe(20_000);
    expect(length.safeParse('20001 mm').error!.issues[0]!.message).toBe(
      'is longer than 20 m, as no piece, rack or shelf is; check the number and its unit',
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (tenths) => {
        const minutes = tenths / 10;
        expect(duration.parse(`${minutes} min`)).toBe(duration.parse(`${tenths * 6} s`));
        // Longer lengths are refused.
        const short = tenths % 20_001;
        expect(length.parse(`${short / 10} cm`)).toBe(length.parse(`${short} mm`));
        expect(mass.parse(`${tenths} g`)).toBe(mass.parse(`${tenths / 1000} kg`));
        expect(rate.parse(`${tenths * 6} / h`)).toBe(rate.parse(`${minutes} / min`));
      }),
      { seed: 20 },
    );
  });

  it('reads back what it wrote, in every unit of time', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(durationUnits.factors)),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        (unit, number) => {
          // Longer than ten years is refused.
          fc.pre(number * durationUnits.factors[unit]! <= 10 * 365 * 86_400_000);
          const ms = duration.parse(`${number} ${unit}`);
          const again = Number((ms / durationUnits.factors[unit]!).toPrecision(12));
          expect(again).toBeCloseTo(Number(number.toPrecision(12)), 6);
        },
      ),
      { seed: 20 },
    );
  });

  it('never takes text that is no quantity, and never throws', () => {
    fc.assert(
      fc.property(fc.anything(), (input) => {
        const parsed = parseWithUnit(input, durationUnits);
        if (parsed.ok) expect(parsed.value).toBeGreaterThanOrEqual(0);
        else expect(parsed.remedy).not.toBe('');
        expect(parseRate(input).ok && typeof input !== 'string').toBe(false);
      }),
      { seed: 20 },
    );
  });
});

describe('what is wrong with a quantity', () => {
  const says = (schema: typeof duration, input: unknown): string =>
    schema.safeParse(input).error?.issues[0]?.message ?? 'nothing';

  it.each([
    [40, 'is a number without a unit where a duration is needed; write "40 s" or "40 min"'],
    ['40', 'has no unit where a duration is needed; write "40 s" or "40 min"'],
    [
      '40 mm',
      'has the unit "mm" of a length where a duration is needed (ms, s, min, h, days); write "40 s" or "40 min"',
    ],
    [
      '40 minuets',
      'has the unit "minuets" where a duration is needed (ms, s, min, h, days); did you mean "40 minutes"?',
    ],
    [
      '40 MIN',
      'has the unit "MIN" where a duration is needed (ms, s, min, h, days); did you mean "40 min"?',
    ],
    [-40, 'is a number without a unit where a duration is needed; write "40 s" or "40 min"'],
    ['-3 s', 'is negative: a duration cannot be negative; write 3 s or leave it out'],
    ['1,5 min', 'has a decimal comma; write the number with a point, such as "1.5 s"'],
    ['soon', 'is not a duration; write a number with its unit, such as "40 s"'],
    [Number.NaN, 'is not a number that can be used; write an ordinary number'],
    [Infinity, 'is not a number that can be used; write an ordinary number'],
    ['1e999 s', 'is too large a number; write a number with its unit, such as "40 s"'],
    [undefined, 'is missing; write a number with its unit, such as "40 s"'],
    [[], 'is a list where a duration is needed; write a number with its unit, such as "40 s"'],
  ])('%j as a duration', (input, message) => expect(says(duration, input)).toBe(message));

  it.each(['0:40', '1 min 20 s', '40-50 s', '1 h 30'])('%j as a duration', (input) =>
    expect(says(duration, input)).toBe(
      'has more than one number where a duration is needed; write a number with its unit, such as "40 s"',
    ),
  );

  it.each([
    [-12, 'is a number without a unit where a rate is needed; write "12 / h" or "12 / min"'],
    [12, 'is a number without a unit where a rate is needed; write "12 / h" or "12 / min"'],
    [
      '12 h',
      'has the unit "h" where a rate is needed (/ s, / min, / h, / day); write a number per unit of time, such as "32 / h" or "0.5 / min"',
    ],
    ['-12 / h', 'is negative, which a rate cannot be; write "12 / h"'],
  ])('%j as a rate', (input, message) => expect(says(rate, input)).toBe(message));

  it.each([
    [82, 'is a number without a unit where a temperature is needed; write "82 °C" or "82 °F"'],
    [
      '-300 °C',
      'is below absolute zero; write a number with its unit, such as "82 °C" or "180 °F"',
    ],
  ])('%j as a temperature', (input, message) => expect(says(temperature, input)).toBe(message));
});

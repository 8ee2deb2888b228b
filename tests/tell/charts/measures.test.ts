/**
 * Measures in both units. Outside values: NIST Special Publication 811 (2008), appendix B.8, and NIST
 * Handbook 44, appendix C: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 US gal = 231 in³ (1/128 of it the fluid ounce,
 * 29.573 529 562 5 ml), 1 lb avoirdupois = 453.592 37 g = 16 oz, t/°F = 1.8 t/°C + 32; all exact.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawMachineTop } from '../../../src/questions/order/machine-top.js';
import { drawRack } from '../../../src/tell/drawings/rack-drawing.js';
import { formatsFor } from '../../../src/tell/format.js';
import { plainMetric } from '../../../src/tell/measures.js';
import { length, mass, parseTemperature, volume } from '../../../src/quantities/units.js';
import { storageSchema } from '../../../src/ordering/storage-schema.js';
import { storageLayout } from '../../../src/ordering/storage.js';
import { rackLayout } from '../../../src/racking/layout.js';

const look = { locale: 'en-US', currency: 'USD', openingMinute: null };
const us = formatsFor({ ...look, units: 'us' });
const metric = formatsFor(look);
const plain = (text: string): string => text.replaceAll('\u00A0', ' ');

describe('values of the handbooks', () => {
  it.each([
    ['1 in', us.length(25.4)],
    ['20 in', us.length(508)],
    ['3.5 in', us.length(88.9)],
    ['12 in', us.length(304.8)],
    ['1.0 fl oz', us.volume(29.5735295625)],
    ['8.0 fl oz', us.volume((231 * 25.4 ** 3) / 1000 / 16)],
    ['33.8 fl oz', us.volume(1000)],
    ['1 lb 0 oz', us.mass(453.59237)],
    ['8.0 oz', us.mass(453.59237 / 2)],
    ['2 lb 3 oz', us.mass(1000)],
    ['22 lb 1 oz', us.mass(10_000)],
    ['212 °F', us.temperature(100)],
    ['32 °F', us.temperature(0)],
    ['180 °F', us.temperature(82.2)],
    ['−40 °F', us.temperature(-40)],
    ['18 °F', us.warmer(10)],
    ['10.8 sq ft', us.area(1)],
    ['1.0 sq ft', us.area(0.09290304)],
  ])('%s', (expected, told) => {
    expect(plain(told)).toBe(expected);
  });

  it('metric is what nothing else is asked for', () => {
    expect(
      [
        metric.length(89.5),
        metric.length(460),
        metric.volume(219.6),
        metric.mass(999.4),
        metric.mass(10_049),
        metric.temperature(60),
        metric.warmer(8.4),
        metric.area(1.25),
      ].map(plain),
    ).toEqual(['89.5 mm', '460 mm', '220 ml', '999 g', '10.0 kg', '60 °C', '8 °C', '1.3 m²']);
    expect(metric.units).toBe('metric');
    expect(plain(plainMetric.length(460))).toBe('460 mm');
    expect(plain(plainMetric.length(89.5))).toBe('89.5 mm');
    expect(plain(plainMetric.room(2))).toBe('2.0 mm');
  });

  it('figures are written as the place writes them', () => {
    expect(
      plain(
        formatsFor({ locale: 'de-DE', currency: 'EUR', openingMinute: null, units: 'us' }).length(
          88.9,
        ),
      ),
    ).toBe('3,5 in');
  });
});

describe('laws', () => {
  // Lengths over 20 m are refused.
  const value = fc.double({ min: 0.5, max: 19_990, noNaN: true });

  it('what is printed reads back, in a scenario, as what was meant, to the last digit printed', () => {
    fc.assert(
      fc.property(value, (given) => {
        for (const formats of [us, metric]) {
          const text = (told: string): string => plain(told).replaceAll(',', '');
          expect(Math.abs(length.parse(text(formats.length(given))) - given)).toBeLessThanOrEqual(
            (formats === us ? 0.127 : 0.05) + 1e-9,
          );
          expect(Math.abs(volume.parse(text(formats.volume(given))) - given)).toBeLessThanOrEqual(
            (formats === us ? 0.05 * 29.5735295625 : 0.5) + 1e-9,
          );
          const read = parseTemperature(text(formats.temperature(given / 400, 1)));
          expect(read.ok && Math.abs(read.value - given / 400)).toBeLessThanOrEqual(0.05 + 1e-9);
        }
      }),
      { seed: 20 },
    );
  });

  it('pounds and ounces add up to the mass, and ounces never reach a pound', () => {
    fc.assert(
      fc.property(value, (grams) => {
        const parts = plain(us.mass(grams)).match(/^(?:([\d,]+) lb )?([\d.]+) oz$/)!;
        const [pounds, ounces] = [
          parts[1] === undefined ? 0 : Number(parts[1].replaceAll(',', '')),
          Number(parts[2]),
        ];
        expect(ounces).toBeLessThan(16);
        const off = Math.abs(mass.parse(`${pounds} lb`) + mass.parse(`${ounces} oz`) - grams);
        expect(off).toBeLessThanOrEqual((pounds > 0 ? 0.5 : 0.05) * mass.parse('1 oz') + 1e-9);
      }),
      { seed: 20 },
    );
  });

  it('room is never more than there is, enough never less', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 60, noNaN: true }), (mm) => {
        for (const formats of [us, metric]) {
          expect(length.parse(plain(formats.room(mm)))).toBeLessThanOrEqual(mm + 1e-6);
          expect(length.parse(plain(formats.enough(mm)))).toBeGreaterThanOrEqual(mm - 1e-6);
        }
      }),
      { seed: 20 },
    );
  });
});

describe('drawings', () => {
  const cup = { shape: 'cup', rimMm: 88.9, footMm: 50.8, heightMm: 63.5 } as const;

  it('of a rack: the same places, figures in the units asked for', () => {
    const rack = { id: 'grid-16', kind: 'grid', cells: 4, openingMm: 111 } as const;
    const layout = rackLayout(cup as never, rack);
    const [inches, millimetres] = [us, metric].map((measures) =>
      drawRack(layout, cup as never, rack, { measures }),
    );
    expect(plain(inches!)).toContain('>3.5</text>');
    expect(plain(inches!)).toMatch(/>[\d.]+ in inside</);
    expect(plain(millimetres!)).toContain('>88.9</text>');
    expect(inches).not.toContain('mm ');
    const shapes = (svg: string): string => svg.replace(/<(text|desc)[^>]*>[^<]*<\/\1>/g, '');
    expect(shapes(inches!)).toBe(shapes(millimetres!));
  });

  it('of the machine top: a scale of a round length in either unit', () => {
    const layout = storageLayout(storageSchema.parse({ top: { width: '600 mm' } }), []);
    const top = (measures: typeof us): string => plain(drawMachineTop(layout, measures));
    expect(top(us)).toContain('>4 in<');
    expect(top(us)).toContain('h101.6M');
    expect(top(us)).toContain('23.62 in by 14.96 in');
    expect(top(metric)).toContain('>100 mm<');
    expect(top(metric)).toContain('600 mm by 380 mm');
  });
});

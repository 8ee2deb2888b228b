import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import published from '../../shared/checks/published.json' with { type: 'json' };
import { FACTS, MATERIALS } from '../../src/suiting/facts.js';
import {
  coolingCurve,
  evaporationWPerM2,
  minuteBelow,
  mixingTemperature,
  outerWall,
  saturationPa,
  vesselHeat,
  wetted,
} from '../../src/suiting/heat.js';
import type { Cooling } from '../../src/suiting/heat.js';

const still: Cooling = {
  heatJPerK: 900,
  startC: 60,
  roomC: 21,
  surfaceM2: 0.005,
  wallM2: 0.018,
  wallUWPerM2K: 9.4,
  foamMm: 0,
  evaporates: true,
  humidity: 0.5,
};

describe('specific heats against handbooks', () => {
  // The International Table calorie is 4.1868 J: water is within a thousandth of one calorie a gram and kelvin.
  test('water', () => {
    const check = published.find((entry) => entry.id === 'water-heat')!.expected as { kJ: number };
    expect(Math.abs(FACTS.waterHeat.value / check.kJ - 1)).toBeLessThan(0.001);
  });

  // Sum over composition (Kessler 1981, as taught in dairy engineering): 4.18 water + 1.4 carbohydrate + 1.6 protein
  // + 1.7 fat + 0.8 ash; whole milk of 87.5, 4.8, 3.4, 3.5 and 0.7 % (composition from memory).
  test('whole milk', () => {
    const byComposition = 4.18 * 0.875 + 1.4 * 0.048 + 1.6 * 0.034 + 1.7 * 0.035 + 0.8 * 0.007;
    expect(Math.abs(FACTS.milkHeat.value / byComposition - 1)).toBeLessThan(0.03);
  });

  // Engineering tables of specific heats of solids: glass 0.84, mild steel 0.50, fired clay and brick 0.79 to 1.0 kJ/(kg K).
  test('vessels', () => {
    expect(MATERIALS.glass.heat).toBe(0.84);
    expect(MATERIALS.steel.heat).toBe(0.5);
    expect(MATERIALS.ceramic.heat).toBeGreaterThanOrEqual(0.79);
    expect(MATERIALS.ceramic.heat).toBeLessThanOrEqual(1.07);
  });
});

describe('mixing', () => {
  // OpenStax College Physics, worked example on water poured into a hot pan (figures from memory): 0.250 kg of water at
  // 20.0 °C, 0.500 kg of aluminium (900 J/(kg K)) at 150 °C, water 4186 J/(kg K): 59.1 °C.
  test('a textbook example', () => {
    expect(
      mixingTemperature([
        { heatJPerK: 250 * 4.186, tempC: 20 },
        { heatJPerK: 500 * 0.9, tempC: 150 },
      ]),
    ).toBeCloseTo(59.1, 1);
  });

  // A figure worked by hand in the trade: a cold 300 g cup takes about 11 °C off 180 g of milk drink, 3 °C when warmed to
  // 50 °C. The hand's own starting temperature is not reported; 62 °C in a room at 21 °C is the usual one.
  test('a cold cup takes about 11 °C off a milk drink, a warmed one 3 °C', () => {
    const drink = { heatJPerK: 180 * FACTS.milkHeat.value, tempC: FACTS.servedC.value };
    const off = (vesselC: number): number =>
      drink.tempC -
      mixingTemperature([drink, { heatJPerK: vesselHeat(300, 'ceramic'), tempC: vesselC }]);
    expect(Math.abs(off(FACTS.roomC.value) - 11)).toBeLessThan(1);
    expect(Math.abs(off(50) - 3)).toBeLessThan(0.5);
  });

  test('lies between, and keeps the heat', () => {
    const body = fc.record({
      heatJPerK: fc.double({ min: 1, max: 2000, noNaN: true }),
      tempC: fc.double({ min: 0, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(body, body, (a, b) => {
        const t = mixingTemperature([a, b]);
        expect(t).toBeGreaterThanOrEqual(Math.min(a.tempC, b.tempC) - 1e-9);
        expect(t).toBeLessThanOrEqual(Math.max(a.tempC, b.tempC) + 1e-9);
        expect((a.heatJPerK + b.heatJPerK) * t).toBeCloseTo(
          a.heatJPerK * a.tempC + b.heatJPerK * b.tempC,
          6,
        );
      }),
      { seed: 20 },
    );
  });
});

describe('evaporation', () => {
  // Steam tables, saturation pressure in kPa (from memory).
  test.each([
    [20, 2.339],
    [40, 7.385],
    [60, 19.95],
    [80, 47.42],
  ])('vapour pressure at %d °C', (tempC, kPa) => {
    expect(Math.abs(saturationPa(tempC) / 1000 / kPa - 1)).toBeLessThan(0.015);
  });

  // Dunkle's relation for still water, as solar-still texts give it (from memory): q = 0.016273 h (p_surface − p_air).
  test('agrees with a relation of another field within 5 %', () => {
    const dunkle = 0.016273 * FACTS.topAir.value * (saturationPa(60) - 0.5 * saturationPa(21));
    expect(Math.abs(evaporationWPerM2(60, 21, 0.5) / dunkle - 1)).toBeLessThan(0.05);
  });

  test('nothing evaporates into air that is as wet', () => {
    expect(evaporationWPerM2(21, 21, 1)).toBe(0);
  });
});

describe('cooling', () => {
  // Newton's law of cooling in closed form: T = room + (start − room) exp(−K t / C), K = h_top A_top + U A_wall.
  test('without evaporation it is Newton’s law to a millionth of a degree', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 95, noNaN: true }),
        fc.double({ min: 300, max: 2500, noNaN: true }),
        (startC, heatJPerK) => {
          const curve = coolingCurve({ ...still, startC, heatJPerK, evaporates: false }, 60);
          const conductance =
            (FACTS.topAir.value + FACTS.topRadiation.value) * still.surfaceM2 +
            still.wallUWPerM2K * still.wallM2;
          curve.forEach((t, minute) => {
            expect(
              Math.abs(
                t - (21 + (startC - 21) * Math.exp((-conductance * minute * 60) / heatJPerK)),
              ),
            ).toBeLessThan(1e-6);
          });
        },
      ),
      { seed: 20, numRuns: 25 },
    );
  });

  /*
   * Coffee in a glass beaker, measured every two minutes in a room at 17 °C (Gould & Tobochnik, An Introduction to Computer
   * Simulation Methods, chapter on cooling). How much coffee is not reported, so it is fitted — one number, once for each cup;
   * beaker of usual size (75 mm wide, 90 mm high, 100 g), assumed.
   */
  const black = [
    82.3, 78.5, 74.3, 70.7, 67.6, 65.0, 62.5, 60.1, 58.1, 56.1, 54.3, 52.8, 51.2, 49.9, 48.6, 47.2,
    46.1, 45.0, 43.9, 43.0, 41.9, 41.0, 40.1, 39.5,
  ];
  const cream = [
    68.8, 64.8, 62.1, 59.9, 57.7, 55.9, 53.9, 52.3, 50.8, 49.5, 48.1, 46.8, 45.9, 44.8, 43.7, 42.6,
    41.7, 40.8, 39.9, 39.3, 38.6, 37.7, 37.0, 36.4,
  ];
  const beaker = wetted(75, 65, 90, 2, 0.8);
  function fit(
    measured: readonly number[],
    evaporates: boolean,
  ): { readonly grams: number; readonly rms: number } {
    let best = { grams: 0, rms: Infinity };
    for (let grams = 60; grams <= 500; grams += 4) {
      const curve = coolingCurve(
        {
          ...still,
          ...beaker,
          heatJPerK: grams * 4.186 + vesselHeat(100, 'glass'),
          startC: measured[0]!,
          roomC: 17,
          wallUWPerM2K: 9.5,
          evaporates,
        },
        46,
      );
      const rms = Math.sqrt(
        measured.reduce((sum, t, i) => sum + (t - curve[2 * i]!) ** 2, 0) / measured.length,
      );
      if (rms < best.rms) best = { grams, rms };
    }
    return best;
  }
  test.each([
    ['black', black],
    ['with cream', cream],
  ] as const)(
    'follows measured coffee, %s, within a degree, and better than Newton’s law does',
    (_, measured) => {
      const model = fit(measured, true);
      expect(model.rms).toBeLessThan(1);
      expect(model.rms).toBeLessThan(0.6 * fit(measured, false).rms);
      // A beaker of that size holds so much.
      expect(model.grams).toBeGreaterThan(150);
      expect(model.grams).toBeLessThan(350);
    },
  );

  test('one step of the curve loses the heat that leaves', () => {
    const [start, after] = coolingCurve({ ...still, heatJPerK: 1e6 }, 1);
    const watts = ((start! - after!) * 1e6) / 60;
    const expected = (14 * 39 + evaporationWPerM2(60, 21, 0.5)) * 0.005 + 9.4 * 0.018 * 39;
    expect(watts).toBeCloseTo(expected, 1);
  });

  test('falls, never below the room, and slower under foam, with more drink, without a draught of vapour', () => {
    const end = (c: Partial<Cooling>): number => coolingCurve({ ...still, ...c }, 40).at(-1)!;
    const curve = coolingCurve(still, 200);
    for (let i = 1; i < curve.length; i++) expect(curve[i]!).toBeLessThan(curve[i - 1]!);
    expect(end({ foamMm: 10 })).toBeGreaterThan(end({}));
    expect(end({ foamMm: 15 })).toBeGreaterThan(end({ foamMm: 5 }));
    expect(end({ heatJPerK: 1400 })).toBeGreaterThan(end({}));
    expect(end({ evaporates: false })).toBeGreaterThan(end({}));
    // A film of foam so thin that it hinders nothing is no foam.
    expect(end({ foamMm: 1e-4 })).toBeCloseTo(end({}), 2);
  });

  test('the minute at which a curve passes a temperature', () => {
    expect(minuteBelow([60, 58, 55], 56.5)).toBeCloseTo(1.5, 9);
    expect(minuteBelow([60, 58, 55], 61)).toBe(0);
    expect(minuteBelow([60, 58, 55], 50)).toBeNull();
  });
});

describe('walls', () => {
  // A cylinder, by plane geometry: 80 mm wide, 100 mm deep, half full.
  test('a straight vessel', () => {
    const { surfaceM2, wallM2 } = wetted(80, 80, 100, 0, 0.5);
    expect(surfaceM2).toBeCloseTo(Math.PI * 0.04 ** 2, 9);
    expect(wallM2).toBeCloseTo(Math.PI * 0.08 * 0.05 + Math.PI * 0.04 ** 2, 9);
  });

  // A cone cut off, by solid geometry: filled to the volume share, its surface lies where the volumes agree.
  test('a tapered vessel', () => {
    const { surfaceM2 } = wetted(100, 50, 80, 0, 0.6);
    const r = Math.sqrt(surfaceM2 / Math.PI) * 1000;
    const volume = (top: number): number =>
      ((80 * (top - 25)) / 25 / 3) * Math.PI * (25 ** 2 + 25 * top + top ** 2);
    expect(volume(r) / volume(50)).toBeCloseTo(0.6, 9);
  });

  // Resistances in series: what flows through each is the same.
  test('the outside of a wall lies where the flows agree', () => {
    const outer = outerWall(60, 20, 'glass', 3, false);
    const through = (60 - outer) / (1 / FACTS.wallLiquid.value + 0.003 / 1.0);
    expect(through).toBeCloseTo(FACTS.wallAir.value * (outer - 20), 6);
  });

  test('glass is as hot as its drink; a double wall, paper and a thicker wall are cooler', () => {
    expect(outerWall(60, 21, 'glass', 3, false)).toBeGreaterThan(56);
    expect(outerWall(60, 21, 'glass', 3, true)).toBeLessThan(40);
    expect(outerWall(60, 21, 'ceramic', 7, false)).toBeLessThan(
      outerWall(60, 21, 'ceramic', 3, false),
    );
  });
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Peaks } from '../../src/sizing/peaks.js';
import { reducedDays } from '../../src/sizing/reduced-days.js';

/** The same from its definition alone: rows by a map of their text, orders by a sort. */
function plainly({ days, ware, data }: Peaks, k: number) {
  const wares = Array.from({ length: ware }, (_, w) => w);
  const all = Array.from({ length: days }, (_, day) => wares.map((w) => data[day * ware + w]!));
  const floor = wares.map((w) => all.map((day) => day[w]!).sort((a, b) => b - a)[k] ?? 0);
  const weights = new Map<string, number>();
  for (const day of k < days ? all : []) {
    if (day.every((peak, w) => peak <= floor[w]!)) continue;
    const row = day.map((peak, w) => Math.max(peak, floor[w]!)).join();
    weights.set(row, (weights.get(row) ?? 0) + 1);
  }
  const rows = [...weights.keys()].map((row) => row.split(',').map(Number));
  return {
    floor,
    weight: [...weights.values()],
    peak: rows.flat(),
    byPeak: wares.map((w) =>
      [...rows.keys()]
        .filter((row) => rows[row]![w]! > floor[w]!)
        .sort((one, other) => rows[other]![w]! - rows[one]![w]! || one - other),
    ),
  };
}

const houses = fc.record({
  ware: fc.integer({ min: 1, max: 6 }),
  // Few pieces, so that days are alike; or all that 16 bits hold.
  most: fc.constantFrom(3, 30, 65_535),
  k: fc.integer({ min: 0, max: 12 }),
  cells: fc.array(fc.nat(65_535), { minLength: 6, maxLength: 240 }),
});

test('days are reduced to the rows, weights and orders of the definition', () => {
  fc.assert(
    fc.property(houses, ({ ware, most, k, cells }) => {
      const days = Math.floor(cells.length / ware);
      const data = Uint16Array.from(cells.slice(0, days * ware), (cell) => cell % (most + 1));
      const { rows, floor, weight, peak, byPeak } = reducedDays({ days, ware, data }, k);
      const wanted = plainly({ days, ware, data }, k);
      expect(rows).toBe(wanted.weight.length);
      expect({
        floor: [...floor],
        weight: [...weight],
        peak: [...peak],
        byPeak: byPeak.map((order) => [...order]),
      }).toEqual(wanted);
    }),
    { seed: 29, numRuns: 150 },
  );
});

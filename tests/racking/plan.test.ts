import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piecesPerRack } from '../../src/racking/layout.js';
import { mixedShare, rackPlan, type RackedWare } from '../../src/racking/plan.js';
import type { GridRack, OpenRack, Rack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';

const open: OpenRack = { id: 'open', kind: 'open' };
const grid = (cells: number, openingMm: number): GridRack => ({
  id: `grid-${cells ** 2}`,
  kind: 'grid',
  cells,
  openingMm,
});
const racks: readonly Rack[] = [open, grid(5, 88), grid(4, 111)];
const cup = (rimMm: number, handleMm = 25): Vessel => ({
  shape: 'cup',
  rimMm,
  heightMm: 60,
  massG: 250,
  handleMm,
  handleWidthMm: 14,
  handleTip: 'flat',
});
const ware = (id: string, rimMm: number, pieces: number, group = 'china'): RackedWare => ({
  id,
  vessel: cup(rimMm),
  group,
  pieces,
});

describe('the plan of racks', () => {
  it('never takes more whole loads than any single kind of rack for all would', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 55, max: 105 }), fc.integer({ min: 1, max: 90 })), {
          minLength: 1,
          maxLength: 4,
        }),
        (list) => {
          const wares = list.map(([rim, pieces], index) => ware(`cup-${index}`, rim, pieces));
          const plan = rackPlan(wares, racks);
          expect(plan.lines).toHaveLength(wares.length);
          for (const rack of racks) {
            if (wares.some(({ vessel }) => piecesPerRack(vessel, rack) === 0)) continue;
            const fills = wares.reduce(
              (sum, { vessel, pieces }) => sum + pieces / piecesPerRack(vessel, rack),
              0,
            );
            expect(plan.loads).toBeLessThanOrEqual(Math.ceil(fills - 1e-9));
          }
        },
      ),
      { seed: 20, numRuns: 60 },
    );
  });

  it('counts a part-full rack as a load: one piece takes one, a full rack and a piece two', () => {
    const full = piecesPerRack(cup(90), open);
    const loads = (pieces: number): number => rackPlan([ware('cup', 90, pieces)], [open]).loads;
    expect([1, full, full + 1].map(loads)).toEqual([1, 1, 2]);
  });

  it('keeps a rack that is given, and tells what no rack takes', () => {
    expect(rackPlan([{ ...ware('cup', 70, 20), rack: 'grid-16' }], racks).lines[0]!.rack).toBe(
      'grid-16',
    );
    const plan = rackPlan([ware('bowl', 470, 3), ware('cup', 70, 20)], racks);
    expect(plan.lines.map((line) => line.ware)).toEqual(['cup']);
    expect(plan.problems.length).toBeGreaterThan(0);
  });

  it('mixed loads: parts add up, whole compartments, and glass apart from china', () => {
    const [a, b] = [ware('a', 70, 6), ware('b', 90, 8)];
    const parts = 6 / piecesPerRack(a.vessel, open) + 8 / piecesPerRack(b.vessel, open);
    expect(mixedShare([a, b], open)).toBeCloseTo(parts, 12);
    expect(mixedShare([a, ware('glass', 70, 2, 'glass')], open)).toBeNull();
    expect(
      mixedShare([{ ...a, vessel: { ...cup(70), handleMm: 0 }, pieces: 5 }], grid(5, 88)),
    ).toBeCloseTo(5 / 25, 12);
    expect(mixedShare([], open)).toBe(0);
    expect(mixedShare([ware('bowl', 470, 1)], open)).toBeNull();
  });
});

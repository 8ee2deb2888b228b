import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fullestOpenLayout } from '../../src/racking/open-rack.js';
import { outlineOf } from '../../src/racking/outline.js';
import { handleFinding, piecesPerRack } from '../../src/racking/layout.js';
import type { OpenRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { gapBetween, gapToWalls, planOf } from './shapes.js';

const open: OpenRack = { id: 'open', kind: 'open' };
const [SIDE, GAP] = [460, 3];
const cup = (rimMm: number, handleMm = 0, handleWidthMm = 14): Vessel => ({
  shape: 'cup',
  rimMm,
  heightMm: 60,
  massG: 250,
  handleMm,
  handleWidthMm,
  handleTip: 'flat',
});

const anyCup = fc
  .record({
    rim: fc.integer({ min: 500, max: 1600 }),
    handle: fc.integer({ min: 0, max: 450 }),
    width: fc.integer({ min: 80, max: 250 }),
  })
  .map(({ rim, handle, width }) => cup(rim / 10, Math.min(handle, rim) / 10, width / 10));

describe('layouts in an open rack', () => {
  it('never overlap nor leave the rack: 5,000 random vessels in named patterns, by a test of their own', () => {
    const named = (['grid', 'staggered', 'turned'] as const).flatMap((pattern) =>
      [0, 20, 45].map((angleDeg) => ({ pattern, angleDeg })),
    );
    fc.assert(
      fc.property(anyCup, fc.constantFrom(...named), (vessel, rule) => {
        const layout = fullestOpenLayout({
          outline: outlineOf(vessel),
          widthMm: SIDE,
          depthMm: SIDE,
          gapMm: GAP,
          rule,
        });
        const { positions, pieces } = layout ?? { positions: [], pieces: 0 };
        expect(positions).toHaveLength(pieces);
        const plan = planOf(vessel);
        let least = Infinity;
        // Pieces that lie alike to one another are measured once.
        const measured = new Set<string>();
        positions.forEach((at, index) => {
          least = Math.min(least, gapToWalls(plan, at, SIDE, SIDE));
          for (const other of positions.slice(index + 1)) {
            if (
              Math.hypot(at.x - other.x, at.y - other.y) <
              vessel.rimMm + 2 * (vessel.handleMm ?? 0) + GAP + 1
            ) {
              const lie = [other.x - at.x, other.y - at.y].map((one) => one.toFixed(9));
              const key = [...lie, at.angleDeg, other.angleDeg].join(' ');
              if (measured.has(key)) continue;
              measured.add(key);
              least = Math.min(least, gapBetween(plan, at, other));
            }
          }
        });
        expect(least).toBeGreaterThanOrEqual(GAP - 1e-6);
      }),
      { seed: 20, numRuns: 5_000 },
    );
  });

  it('hold no more as a vessel grows in any direction, for a pattern and angle', () => {
    fc.assert(
      fc.property(
        anyCup,
        fc.constantFrom('grid', 'staggered', 'turned'),
        fc.constantFrom(0, 30, 45),
        fc.integer({ min: 1, max: 60 }),
        (vessel, pattern, angleDeg, by) => {
          const rule = { pattern, angleDeg } as const;
          const now = piecesPerRack(vessel, open, rule);
          expect(
            piecesPerRack({ ...vessel, rimMm: vessel.rimMm + by / 10 }, open, rule),
          ).toBeLessThanOrEqual(now);
          expect(
            piecesPerRack(
              { ...vessel, handleMm: Math.min(vessel.rimMm, vessel.handleMm! + by / 10) },
              open,
              rule,
            ),
          ).toBeLessThanOrEqual(now);
          expect(
            piecesPerRack(
              { ...vessel, handleWidthMm: Math.min(vessel.rimMm, vessel.handleWidthMm! + by / 10) },
              open,
              rule,
            ),
          ).toBeLessThanOrEqual(now);
        },
      ),
      { seed: 20, numRuns: 200 },
    );
  });

  // One pattern throughout is searched exactly; free rows are searched on tables, which may miss a piece one way round.
  it('do not change when the rack is turned, but for a piece that free rows may find one way round', () => {
    const [long, tall] = [
      { ...open, usableMm: 460, usableAcrossMm: 360 },
      { ...open, usableMm: 360, usableAcrossMm: 460 },
    ];
    fc.assert(
      fc.property(anyCup, (vessel) => {
        expect(piecesPerRack(vessel, long, 'straight')).toBe(
          piecesPerRack(vessel, tall, 'straight'),
        );
        const difference = piecesPerRack(vessel, long) - piecesPerRack(vessel, tall);
        expect(Math.abs(difference)).toBeLessThanOrEqual(1);
      }),
      { seed: 20, numRuns: 15 },
    );
  });

  it('finds for each vessel whether straight or 45° is better, and the best is no worse than either', () => {
    const findings = [
      cup(61, 21, 11),
      cup(81, 26.5, 13),
      cup(89.5, 28.5, 14),
      cup(108, 34, 16),
      cup(85, 34, 18),
    ].map((vessel) => handleFinding(vessel, open));
    for (const { straight, at45, best } of findings)
      expect(best).toBeGreaterThanOrEqual(Math.max(straight, at45));
    // A finding, not a rule: it goes one way for some and the other for others.
    expect(
      new Set(findings.map(({ straight, at45 }) => Math.sign(straight - at45))).size,
    ).toBeGreaterThan(1);
  });
});

describe('plain discs against the best-known packings (E. Specht, shared/checks/circles-in-square.csv)', () => {
  const table = readFileSync('shared/checks/circles-in-square.csv', 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number) as [number, number]);
  /** Diameter at which exactly n discs with gaps fit at best: (D + g) / (2 (side − g)) = radius. */
  const diameterFor = (radius: number): number => 2 * (SIDE - GAP) * radius - GAP;

  it('has the table', () => expect(table.length).toBeGreaterThan(25));

  it('never more than is known to be possible', () => {
    const best = (diameter: number): number =>
      Math.max(
        0,
        ...table
          .filter(([, radius]) => (diameter + GAP) / (2 * (SIDE - GAP)) <= radius + 1e-12)
          .map(([n]) => n),
      );
    // Between the sizes of the table too; n itself is listed up to 36 with gaps, so only diameters of listed n are sharp.
    table.forEach(([n, radius]) => {
      const just = diameterFor(radius) + 0.01;
      const known = table.filter(([m]) => m < n).map(([m]) => m);
      const missing = n - 1 - Math.max(0, ...known);
      expect(piecesPerRack(cup(just), open), `just above the size of ${n}`).toBeLessThanOrEqual(
        best(just) + missing,
      );
    });
  });

  it.each(table.filter(([n]) => n <= 36))(
    'at the size at which %d fit, at most three fewer',
    (n, radius) => {
      const found = piecesPerRack(cup(diameterFor(radius) - 1e-6), open);
      expect(found).toBeLessThanOrEqual(n);
      expect(found).toBeGreaterThanOrEqual(n - 3);
    },
  );
});

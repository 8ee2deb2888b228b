import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mostPossible } from '../../src/racking/bound.js';
import { piecesPerRack, rackLayout } from '../../src/racking/layout.js';
import type { LoadingRule } from '../../src/racking/open-rack.js';
import { fullestOpenLayout } from '../../src/racking/open-rack.js';
import { outlineOf } from '../../src/racking/outline.js';
import type { OpenRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { ellipsePoints, leastGap, leastWallGap } from './oracle.js';
import { cup, open, somePattern, someRack, someVessel } from './some.js';

const layoutIn = (vessel: Vessel, rack: OpenRack, rule: LoadingRule) =>
  fullestOpenLayout({
    outline: outlineOf(vessel),
    widthMm: rack.usableMm!,
    depthMm: rack.usableAcrossMm!,
    gapMm: rack.clearanceMm!,
    rule,
  });

describe('every layout', () => {
  test('of round and square pieces, at any angle in any rack, keeps its gaps between pieces and to the walls', () => {
    fc.assert(
      fc.property(
        someVessel,
        someRack,
        fc.oneof(
          { weight: 60, arbitrary: somePattern },
          fc.constantFrom('best' as const, 'straight' as const, 'at45' as const),
        ),
        (vessel, rack, rule) => {
          const layout = layoutIn(vessel, rack, rule);
          if (layout === null) return;
          expect(layout.positions).toHaveLength(layout.pieces);
          expect(leastGap(vessel, layout.positions)).toBeGreaterThan(rack.clearanceMm! - 1e-4);
          expect(
            leastWallGap(vessel, layout.positions, rack.usableMm!, rack.usableAcrossMm!),
          ).toBeGreaterThan(rack.clearanceMm! - 1e-4);
        },
      ),
      { seed: 20, numRuns: 500 },
    );
  });

  test('keeps true ellipses apart and inside', () => {
    const someOval = fc.record({
      long: fc.double({ min: 70, max: 200, noNaN: true }),
      share: fc.double({ min: 0.5, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(someOval, somePattern, ({ long, share }, rule) => {
        const vessel: Vessel = {
          shape: 'bowl',
          rimMm: long,
          rimAcrossMm: long * share,
          heightMm: 50,
          massG: 300,
          footprint: 'oval',
        };
        const layout = layoutIn(
          vessel,
          { ...open, usableMm: 460, usableAcrossMm: 460, clearanceMm: 3 },
          rule,
        )!;
        const rings = layout.positions.map((at) => ellipsePoints(vessel, at));
        expect(
          Math.min(...rings.flat().flatMap(([x, y]) => [x, y, 460 - x, 460 - y])),
        ).toBeGreaterThan(3 - 1e-4);
        let least = Infinity;
        rings.forEach((ring, i) => {
          const { x, y } = layout.positions[i]!;
          for (const [j, other] of rings.entries()) {
            if (
              j <= i ||
              Math.hypot(layout.positions[j]!.x - x, layout.positions[j]!.y - y) > long + 5
            )
              continue;
            for (const [x1, y1] of ring)
              for (const [x2, y2] of other) least = Math.min(least, Math.hypot(x1 - x2, y1 - y2));
          }
        });
        expect(least).toBeGreaterThan(3 - 1e-4);
      }),
      { seed: 22, numRuns: 12 },
    );
  });
});

describe('for a named pattern and angle', () => {
  test('a vessel that grows in any direction never stands more often', () => {
    const growth = fc.record({
      which: fc.constantFrom(
        'rimMm' as const,
        'rimAcrossMm' as const,
        'handleMm' as const,
        'handleWidthMm' as const,
      ),
      by: fc.oneof(
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
      ),
    });
    fc.assert(
      fc.property(
        someVessel,
        someRack,
        somePattern,
        growth,
        (vessel, rack, rule, { which, by }) => {
          const old = vessel[which];
          if (
            old === undefined ||
            (which !== 'rimMm' && vessel.handleMm === 0 && which !== 'rimAcrossMm')
          )
            return;
          const grown = { ...vessel, [which]: old + by };
          expect(layoutIn(grown, rack, rule)?.pieces ?? 0).toBeLessThanOrEqual(
            layoutIn(vessel, rack, rule)?.pieces ?? 0,
          );
        },
      ),
      { seed: 23, numRuns: 400 },
    );
  });

  test('turning the rack by 90° with all that is in it changes nothing', () => {
    fc.assert(
      fc.property(someVessel, someRack, somePattern, (vessel, rack, rule) => {
        const turned = { ...rack, usableMm: rack.usableAcrossMm!, usableAcrossMm: rack.usableMm! };
        const turnedRule = { ...rule, angleDeg: rule.angleDeg + 90 };
        expect(layoutIn(vessel, turned, turnedRule)?.pieces).toBe(
          layoutIn(vessel, rack, rule)?.pieces,
        );
      }),
      { seed: 24, numRuns: 250 },
    );
  });
});

describe('over all patterns', () => {
  test('turning the rack by 90° changes nothing, no rule beats best, and best is within its bound', () => {
    fc.assert(
      fc.property(someVessel, someRack, (vessel, rack) => {
        const turned = { ...rack, usableMm: rack.usableAcrossMm!, usableAcrossMm: rack.usableMm! };
        const best = piecesPerRack(vessel, rack);
        // Every layout turned with its rack is a layout, so the counts are equal, not only near each other.
        expect(piecesPerRack(vessel, turned)).toBe(best);
        expect(best).toBeLessThanOrEqual(mostPossible(vessel, rack)!.pieces);
        for (const rule of ['straight', 'at45'] as const)
          expect(piecesPerRack(vessel, rack, rule)).toBeLessThanOrEqual(best);
      }),
      { seed: 25, numRuns: 30 },
    );
  });

  test('what is said of slack and of cliffs is so', () => {
    fc.assert(
      fc.property(someVessel, (vessel) => {
        const layout = rackLayout(vessel, open);
        if (layout.pieces === 0) return;
        const count = (change: Partial<Vessel>, rule: LoadingRule = 'best'): number =>
          piecesPerRack({ ...vessel, ...change }, open, rule);
        const wider = (by: number): Partial<Vessel> => ({
          rimMm: vessel.rimMm + by,
          ...(vessel.rimAcrossMm === undefined ? {} : { rimAcrossMm: vessel.rimAcrossMm + by }),
        });
        const { pattern, angleDeg, slackMm } = layout;
        if (
          slackMm !== null &&
          pattern !== 'compartments' &&
          pattern !== 'on edge' &&
          pattern !== 'loose'
        ) {
          expect(count(wider(slackMm), { pattern, angleDeg })).toBeGreaterThanOrEqual(
            layout.pieces,
          );
          expect(count(wider(slackMm + 0.02), { pattern, angleDeg })).toBeLessThan(layout.pieces);
        }
        const { cliff: nearest, loss, rimGain } = layout;
        for (const one of [loss, rimGain])
          if (one !== null)
            expect(Math.abs(nearest!.changeMm)).toBeLessThanOrEqual(Math.abs(one.changeMm));
        for (const cliff of [nearest, loss, rimGain]) {
          if (cliff?.dimension !== 'rim') continue;
          expect(count(wider(cliff.changeMm))).toBe(cliff.piecesThen);
          expect(cliff.piecesThen).not.toBe(layout.pieces);
          expect(count(wider(cliff.changeMm - 0.1 * Math.sign(cliff.changeMm)))).toBe(
            layout.pieces,
          );
        }
      }),
      { seed: 26, numRuns: 3 },
    );
  });

  test('an answer is remembered by the measures, not by the object', () => {
    const vessel = cup(89.5, 28.5, 14, 'round');
    expect(rackLayout({ ...vessel }, { ...open })).toBe(rackLayout(vessel, open));
  });
});

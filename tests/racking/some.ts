/** Random vessels and racks for the laws, and a few plain ones for examples. */
import fc from 'fast-check';
import type { LoadingRule } from '../../src/racking/open-rack.js';
import type { OpenRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';

const length = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Round or square, with or without a handle. */
export const someVessel: fc.Arbitrary<Vessel> = fc
  .record({
    rim: length(40, 160),
    handleShare: fc.oneof(fc.constant(0), length(0.1, 0.6)),
    widthShare: length(0.08, 0.35),
    handleTip: fc.constantFrom('flat' as const, 'round' as const),
    footprint: fc.constantFrom('round' as const, 'round' as const, 'square' as const),
    acrossShare: length(0.6, 1.2),
  })
  .map(({ rim, handleShare, widthShare, handleTip, footprint, acrossShare }) => ({
    shape: 'cup' as const,
    rimMm: rim,
    heightMm: 70,
    massG: 250,
    handleMm: handleShare * rim,
    handleWidthMm: widthShare * rim,
    handleTip,
    footprint,
    ...(footprint === 'square' ? { rimAcrossMm: acrossShare * rim } : {}),
  }));

/** Most often square, as racks are. */
export const someRack: fc.Arbitrary<OpenRack> = fc
  .record({
    x: fc.oneof(fc.constant(460), length(300, 550)),
    y: fc.oneof(fc.constant(null), length(300, 550)),
    gap: fc.oneof(fc.constant(0), fc.constant(3), length(0, 6)),
  })
  .map(({ x, y, gap }) => ({
    id: 'open',
    kind: 'open' as const,
    usableMm: x,
    usableAcrossMm: y ?? x,
    clearanceMm: gap,
  }));

export const somePattern = fc.record({
  pattern: fc.constantFrom('grid' as const, 'staggered' as const, 'turned' as const),
  angleDeg: fc.oneof(fc.constantFrom(0, 45, 90), fc.integer({ min: 0, max: 359 })),
}) satisfies fc.Arbitrary<LoadingRule>;

export const open: OpenRack = { id: 'open', kind: 'open' };
export const disc = (rimMm: number): Vessel => ({
  shape: 'glass',
  rimMm,
  heightMm: 90,
  massG: 200,
});
export const cup = (
  rimMm: number,
  handleMm: number,
  handleWidthMm: number,
  handleTip: 'flat' | 'round' = 'flat',
): Vessel => ({
  shape: 'cup',
  rimMm,
  heightMm: 65,
  massG: 275,
  handleMm,
  handleWidthMm,
  handleTip,
});
export const saucer: Vessel = {
  shape: 'saucer',
  rimMm: 150,
  heightMm: 20,
  depthMm: 20,
  massG: 200,
};
export const spoon: Vessel = {
  shape: 'spoon',
  rimMm: 140,
  rimAcrossMm: 30,
  footprint: 'oval',
  heightMm: 15,
  massG: 25,
};

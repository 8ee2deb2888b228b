import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import published from '../../shared/checks/published.json' with { type: 'json' };
import { smallestSquareOpening } from '../../src/racking/compartments.js';
import { piecesPerRack, rackLayout } from '../../src/racking/layout.js';
import { nioshLift, nioshLiftUs } from '../../src/racking/lifting.js';
import type { GridRack, OpenRack, PegRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { gapBetween, planOf } from './shapes.js';

const cup = (rimMm: number, handleMm: number, handleWidthMm: number): Vessel => ({
  shape: 'cup',
  rimMm,
  heightMm: 60,
  massG: 250,
  handleMm,
  handleWidthMm,
  handleTip: 'flat',
});

const shapes = fc
  .record({
    rim: fc.integer({ min: 500, max: 1200 }),
    handle: fc.integer({ min: 20, max: 450 }),
    width: fc.integer({ min: 20, max: 300 }),
    gap: fc.integer({ min: 0, max: 60 }),
  })
  .map(({ rim, handle, width, gap }) => ({
    D: rim / 10,
    h: Math.min(handle, rim) / 10,
    w: width / 10,
    g: gap / 10,
  }));

describe('closed forms (worked out by hand, no source)', () => {
  it('a 45° handle is free against its neighbours on a square grid of pitch D + g just when the two inequalities hold', () => {
    fc.assert(
      fc.property(shapes, ({ D, h, w, g }) => {
        const plan = planOf(cup(D, h, w));
        const at = (x: number, y: number) => ({ x: x * (D + g), y: y * (D + g), angleDeg: 45 });
        const around = [
          [1, 0],
          [0, 1],
          [1, 1],
          [-1, 1],
          [1, -1],
        ] as const;
        const least = Math.min(...around.map(([x, y]) => gapBetween(plan, at(0, 0), at(x, y))));
        // The corner of the bar against the disc ahead, and its side against the discs beside it.
        const ahead = h <= (Math.SQRT2 - 1) * (D + g);
        const beside = w <= (Math.SQRT2 - 1) * D - (2 - Math.SQRT2) * g;
        if (ahead && beside) expect(least).toBeGreaterThanOrEqual(g - 1e-9);
        if (h > (Math.SQRT2 - 1) * (D + g) + 0.01 && w > 2) expect(least).toBeLessThan(g);
      }),
      { seed: 20, numRuns: 2000 },
    );
  });

  it('a free handle costs no piece: the rack holds as many as of plain discs on a square grid', () => {
    const grid = { pattern: 'grid', angleDeg: 45 } as const;
    const rack: OpenRack = { id: 'open', kind: 'open' };
    for (const D of [60, 70, 88, 110]) {
      const free = cup(D, 0.4 * D * (Math.SQRT2 - 1), 6);
      // Free against the wall too: h + w/2 ≤ (√2 − 1) D/2.
      expect(free.handleMm! + 3).toBeLessThanOrEqual(((Math.SQRT2 - 1) * D) / 2 + 3);
      expect(piecesPerRack(free, rack, grid)).toBeGreaterThanOrEqual(
        Math.floor((460 - 3) / (D + 3)) ** 2,
      );
    }
  });

  it('smallest square opening: max(D, D/2 + (D/2 + h + w/2)/√2) + 2 × clearance', () => {
    fc.assert(
      fc.property(shapes, ({ D, h, w, g }) => {
        const expected = Math.max(D, D / 2 + (D / 2 + h + w / 2) / Math.SQRT2) + 2 * g;
        const { openingMm } = smallestSquareOpening(cup(D, h, w), g);
        // At its best angle never larger than at 45°.
        expect(openingMm).toBeLessThanOrEqual(expected + 1e-6);
        const at45 = smallestSquareOpening(cup(D, h, w), g, 'at45').openingMm;
        expect(at45).toBeCloseTo(expected, 6);
      }),
      { seed: 20, numRuns: 500 },
    );
  });

  it('an 89 mm rim drops from 25 to 16: openings of compartment racks (typical published openings, from memory)', () => {
    const openings = (
      published as unknown as { id: string; expected: Record<string, number> }[]
    ).find(({ id }) => id === 'rack-openings')!.expected;
    const grid = (cells: number): GridRack => ({
      id: `grid-${cells ** 2}`,
      kind: 'grid',
      cells,
      openingMm: openings[String(cells ** 2)]!,
    });
    const glass = (rimMm: number): Vessel => ({ shape: 'glass', rimMm, heightMm: 90, massG: 200 });
    expect(
      [88, 89].map((rim) =>
        Math.max(...[3, 4, 5, 6, 7].map((cells) => piecesPerRack(glass(rim), grid(cells)))),
      ),
    ).toEqual([25, 16]);
    expect(rackLayout(glass(89), grid(4)).binds).toBe('opening');
  });

  it('saucers on edge: 24 to 36 in a peg rack (common practice, no source)', () => {
    const peg: PegRack = { id: 'peg', kind: 'peg', slots: 10, pitchMm: 45 };
    for (const rimMm of [120, 130, 140]) {
      const pieces = piecesPerRack({ shape: 'saucer', rimMm, heightMm: 19, massG: 200 }, peg);
      expect(pieces).toBeGreaterThanOrEqual(24);
      expect(pieces).toBeLessThanOrEqual(36);
    }
    expect(
      piecesPerRack(
        { shape: 'saucer', rimMm: 140, heightMm: 19, massG: 200 },
        { ...peg, triedMm: 23 },
      ),
    ).toBeGreaterThan(
      piecesPerRack(
        { shape: 'saucer', rimMm: 140, heightMm: 19, massG: 200 },
        { ...peg, triedMm: 60 },
      ),
    );
  });
});

describe('lifting (Waters, Putz-Anderson & Garg, DHHS (NIOSH) 94-110)', () => {
  it('Example 1, loading punch press stock, within 3 % (figures of the manual, from memory)', () => {
    const { inputs: i, expected: e } = (
      published as unknown as {
        id: string;
        inputs: Record<string, number>;
        expected: Record<string, number>;
      }[]
    ).find(({ id }) => id === 'niosh-punch-press')!;
    const { origin, destination } = nioshLiftUs({
      loadLb: i['Lb']!,
      hIn: i['Hin']!,
      vOriginIn: i['Vorigin']!,
      vDestIn: i['Vdest']!,
      aDeg: 0,
      coupling: 'fair',
    });
    for (const [end, rwl, index] of [
      [origin, e['RWLorigin']!, e['LIorigin']!],
      [destination, e['RWLdest']!, e['LIdest']!],
    ] as const) {
      expect(Math.abs(end.rwl / rwl - 1)).toBeLessThan(0.03);
      // The manual gives the index to one digit.
      expect(Math.abs(i['Lb']! / rwl - index)).toBeLessThanOrEqual(0.051);
      expect(Math.abs(end.liftingIndex! / (i['Lb']! / rwl) - 1)).toBeLessThan(0.03);
    }
  });

  it('has the multipliers of section 1.3', () => {
    const { expected } = (
      published as unknown as {
        id: string;
        expected: { LCkg: number; FM_le1h: Record<string, number> };
      }[]
    ).find(({ id }) => id === 'niosh-multipliers')!;
    const ideal = { loadKg: 10, hCm: 25, vOriginCm: 75, vDestCm: 100, coupling: 'good' } as const;
    expect(nioshLift(ideal).origin.rwl).toBeCloseTo(expected.LCkg, 10);
    for (const [perMinute, fm] of Object.entries(expected.FM_le1h))
      expect(
        nioshLift({ ...ideal, perMinute: Number(perMinute) }).origin.multipliers.fm,
      ).toBeCloseTo(fm, 10);
    const far = nioshLift({ ...ideal, hCm: 50, vOriginCm: 30, vDestCm: 130, aDeg: 45 }).origin
      .multipliers;
    expect(far.hm).toBeCloseTo(25 / 50, 10);
    expect(far.vm).toBeCloseTo(1 - 0.003 * 45, 10);
    expect(far.dm).toBeCloseTo(0.82 + 4.5 / 100, 10);
    expect(far.am).toBeCloseTo(1 - 0.0032 * 45, 10);
  });

  it('advises no load where the hands do not reach, and defers to local rules', () => {
    expect(nioshLift({ loadKg: 10, hCm: 80, vOriginCm: 75, vDestCm: 100 }).liftingIndex).toBeNull();
    expect(nioshLift({ loadKg: 10, hCm: 40, vOriginCm: 75, vDestCm: 100 }).caution).toMatch(
      /local rules/,
    );
  });
});

describe('what cannot be', () => {
  const openRack: OpenRack = { id: 'open', kind: 'open' };
  const grid: GridRack = {
    id: 'grid-25',
    kind: 'grid',
    cells: 5,
    openingMm: 88,
    innerHeightMm: 100,
  };
  const glass: Vessel = { shape: 'glass', rimMm: 70, heightMm: 90, massG: 200 };

  it.each([
    ['a handle longer than the rim', cup(80, 90, 14), openRack, /handleMm/],
    ['negative clearance', glass, { ...openRack, clearanceMm: -1 }, /clearanceMm/],
    ['compartments without an opening', glass, { ...grid, openingMm: 0 }, /openingMm/],
    ['a vessel higher than the rack', { ...glass, heightMm: 150 }, grid, /heightMm/],
    ['a vessel wider than the rack', { ...glass, rimMm: 500 }, openRack, /rimMm/],
  ] as const)('%s is told with its field, value, rule and remedy', (_, vessel, rack, field) => {
    const { pieces, problems } = rackLayout(vessel, rack);
    expect(pieces).toBe(0);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.map(({ path }) => path.join('.')).join()).toMatch(field);
    for (const { rule, remedy, message } of problems)
      for (const part of [rule, remedy, message]) expect(part.length).toBeGreaterThan(5);
  });
});

/** Saucers on edge and loose cutlery, by sums done on paper (no source), and what mass and height allow. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rackLayout } from '../../src/racking/layout.js';
import { pegLoad, tryOnEdge } from '../../src/racking/pegs.js';
import type { GridRack, PegRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { drawRack } from '../../src/tell/drawings/rack-drawing.js';
import { leastGap, leastWallGap } from './oracle.js';
import { cup, disc, open, saucer, spoon } from './some.js';

const pegs: PegRack = {
  id: 'peg',
  kind: 'peg',
  slots: 20,
  pitchMm: 20,
  waterGapMm: 10,
  leanDeg: 0,
};

describe('saucers in a peg rack', () => {
  test('upright, 20 mm deep with 10 mm for water: every second slot of 20 mm; 2 rows of 150 mm in 460 mm with gaps of 3', () => {
    expect(pegLoad(saucer, pegs)).toMatchObject({
      slotsEach: 2,
      spacingMm: 40,
      along: 10,
      rows: 2,
      pieces: 20,
      alongLimit: 'slots',
    });
    // With no gap asked for, 3 × 150 = 450 go side by side.
    expect(pegLoad(saucer, { ...pegs, clearanceMm: 0 }).rows).toBe(3);
  });

  test('leaning by 30° they stand (20 + 10) / cos 30° = 34.6 mm apart and cover 150 sin 30° + 20 cos 30° = 92.3 mm', () => {
    const load = pegLoad(saucer, { ...pegs, leanDeg: 30, pitchMm: 34.7 });
    expect(load).toMatchObject({
      slotsEach: 1,
      along: Math.floor((460 - 92.32) / 34.7) + 1,
      alongLimit: 'length',
    });
    expect(load.coversMm).toBeCloseTo(92.32, 2);
    expect(pegLoad(saucer, { ...pegs, leanDeg: 30, pitchMm: 34.6 }).slotsEach).toBe(2);
  });

  test('a spacing tried in the rack goes before the sums', () => {
    expect(pegLoad(saucer, { ...pegs, triedMm: 55 })).toMatchObject({
      slotsEach: null,
      along: Math.floor((460 - 20) / 55) + 1,
    });
  });

  test('every saucer has its place inside, in rows that do not touch', () => {
    const layout = rackLayout(saucer, pegs);
    expect(layout.positions).toHaveLength(20);
    const rows = [...new Set(layout.positions.map((p) => p.y))];
    expect(rows).toHaveLength(2);
    expect(Math.abs(rows[0]! - rows[1]!)).toBeGreaterThanOrEqual(150 + 3);
    for (const { x, y } of layout.positions) {
      expect(Math.min(x - 10, 460 - x - 10)).toBeGreaterThanOrEqual(0);
      expect(Math.min(y - 75, 460 - y - 75)).toBeGreaterThanOrEqual(3);
    }
  });

  test('one tenth of a millimetre of depth too much costs a slot each', () => {
    expect(rackLayout(saucer, pegs).loss).toEqual({
      dimension: 'depth',
      changeMm: 10.1,
      piecesThen: 14,
    });
  });

  // The class's saucer (140 mm, 18.5 mm deep): 25 mm apart and 15° off upright leave 25 cos 15° - 18.5 = 5.6 mm; 17 in a
  // row, as 16 × 25 + 140 sin 15° + 18.5 cos 15° = 454.1 mm; 3 rows.
  test('with pegs every 25 mm each saucer takes one slot: 51, above what is usual, so one rack is to be tried', () => {
    const usual = { ...saucer, rimMm: 140, heightMm: 18.5, depthMm: 18.5 };
    const close: PegRack = { id: 'peg', kind: 'peg', slots: 18, pitchMm: 25 };
    const load = pegLoad(usual, close);
    expect(load).toMatchObject({ pieces: 51, along: 17, rows: 3, slotsEach: 1, leastGapMm: 3 });
    expect(load.gapMm).toBeCloseTo(5.648, 3);
    expect(tryOnEdge(close, 51)).toBe(true);
    // A spacing tried in the rack needs no trial; the usual pegs give the usual 24 to 36.
    expect(tryOnEdge({ ...close, triedMm: 25 }, 51)).toBe(false);
    expect(pegLoad(usual, { ...close, slots: 10, pitchMm: 45 }).pieces).toBe(30);
    expect(tryOnEdge(close, 30)).toBe(false);
  });

  test('the drawing is the proof: boxes that lean as drawn keep their gap, in random racks', () => {
    const measures = fc.record({
      rim: fc.double({ min: 90, max: 200, noNaN: true }),
      depth: fc.double({ min: 8, max: 40, noNaN: true }),
      pitch: fc.double({ min: 15, max: 60, noNaN: true }),
      lean: fc.double({ min: 0, max: 40, noNaN: true }),
      gap: fc.double({ min: 0, max: 12, noNaN: true }),
    });
    fc.assert(
      fc.property(measures, ({ rim, depth, pitch, lean, gap }) => {
        const piece = { ...saucer, rimMm: rim, depthMm: depth, heightMm: depth };
        const rack: PegRack = {
          id: 'peg',
          kind: 'peg',
          slots: Math.floor(460 / pitch),
          pitchMm: pitch,
          leanDeg: lean,
          waterGapMm: gap,
        };
        const layout = rackLayout(piece, rack);
        if (layout.pieces === 0) return;
        const svg = drawRack(layout, piece, rack, { id: 'side' });
        const drawn = [
          ...svg.matchAll(
            /width="([\d.]+)" height="([\d.]+)" transform="translate\(([\d.]+) ([\d.]+)\) rotate\((-?[\d.]+)\)"/g,
          ),
        ].map((m) => m.slice(1).map(Number));
        expect(drawn).toHaveLength(pegLoad(piece, rack).along);
        // The same boxes in a geometry that shares nothing with the drawing: depth along x, the diameter across.
        const box: Vessel = {
          ...piece,
          footprint: 'square',
          rimMm: drawn[0]![0]!,
          rimAcrossMm: drawn[0]![1]!,
        };
        expect([box.rimMm - depth, box.rimAcrossMm! - rim].every((d) => Math.abs(d) < 1e-3)).toBe(
          true,
        );
        const places = drawn.map(([, , x, y, angle]) => ({ x: x!, y: y!, angleDeg: angle! }));
        expect(leastGap(box, places)).toBeGreaterThan(gap - 0.01);
        const wall = leastWallGap(box, places, 460, 1000);
        expect(wall).toBeGreaterThan(-0.01);
      }),
      { seed: 27, numRuns: 100 },
    );
  });

  test('cups do not stand on edge', () => {
    expect(rackLayout(cup(80, 25, 12), pegs)).toMatchObject({
      pieces: 0,
      binds: 'kind',
      problems: [{ path: ['vessel', 'shape'] }],
    });
  });
});

test('loose cutlery: 0.6 of 460 × 460 mm over 140 × 30 mm is 30 pieces a layer; no millimetres are told', () => {
  const basket = { id: 'cutlery', kind: 'basket' as const };
  expect(rackLayout(spoon, basket)).toMatchObject({
    pieces: 30,
    slackMm: null,
    cliff: null,
    positions: [],
  });
  expect(rackLayout(spoon, { ...basket, layers: 2 }).pieces).toBe(60);
  expect(rackLayout(spoon, open)).toMatchObject({ pieces: 0, binds: 'kind' });
});

describe('mass and height', () => {
  test('no more pieces than the rack may carry', () => {
    const heavy = rackLayout(disc(60), { ...open, emptyMassG: 1500, maxMassG: 4600 });
    expect(heavy).toMatchObject({ pieces: 15, binds: 'mass', loadedMassG: 4500 });
    expect(heavy.positions).toHaveLength(15);
  });

  test('extenders raise a compartment rack, and are asked for where they would do', () => {
    const grid: GridRack = {
      id: 'grid-25',
      kind: 'grid',
      cells: 5,
      openingMm: 88,
      innerHeightMm: 70,
      extenderMm: 40,
    };
    const low = rackLayout(disc(70), grid);
    expect(low).toMatchObject({ pieces: 0, binds: 'height' });
    expect(low.problems[0]!.remedy).toMatch(/1 extender /);
    expect(low.cliff).toEqual(null);
    expect(rackLayout(disc(70), { ...grid, extenders: 1 }).pieces).toBe(25);
  });
});

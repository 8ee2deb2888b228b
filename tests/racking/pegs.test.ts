/** Saucers on edge and loose cutlery, by sums done on paper (no source), and what mass and height allow. */
import { describe, expect, test } from 'vitest';
import { rackLayout } from '../../src/racking/layout.js';
import { pegLoad } from '../../src/racking/pegs.js';
import type { GridRack, PegRack } from '../../src/racking/rack.js';
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

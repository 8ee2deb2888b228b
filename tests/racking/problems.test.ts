import { describe, expect, test } from 'vitest';
import { piecesPerRack, rackLayout } from '../../src/racking/layout.js';
import { rackProblems, vesselProblems } from '../../src/racking/measures.js';
import { fitProblems, pairProblems } from '../../src/racking/problems.js';
import type { Rack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { cup, disc, open, spoon } from './some.js';

const grid: Rack = { id: 'grid-25', kind: 'grid', cells: 5, openingMm: 88, innerHeightMm: 100 };
const racks: readonly Rack[] = [{ ...open, innerHeightMm: 180 }, grid];
const fit = (vessel: Vessel) => fitProblems([disc(70), vessel], racks, piecesPerRack);

describe('a vessel that no rack takes', () => {
  test.each([
    [
      'higher than any rack',
      { ...disc(70), heightMm: 200 },
      'vessels.1.heightMm',
      200,
      /tallest rack takes 180 mm/,
    ],
    [
      'wider than any rack',
      disc(470),
      'vessels.1.rimMm',
      470,
      /widest rack or compartment takes 454 mm/,
    ],
    ['too long with its handle', cup(300, 280, 20), 'vessels.1.handleMm', 280, /handle included/],
    ['cutlery without a basket', spoon, 'vessels.1.shape', 'spoon', /no rack takes this kind/],
    [
      'a handle longer than the rim',
      cup(80, 81, 14),
      'vessels.1.handleMm',
      81,
      /no more than the rim is wide, 80 mm/,
    ],
  ] as const)('%s: place, value, rule, remedy', (_, vessel, path, value, rule) => {
    const [problem, ...more] = fit(vessel);
    expect(more).toEqual([]);
    expect(problem!.path.join('.')).toBe(path);
    expect(problem!.value).toBe(value);
    expect(problem!.rule).toMatch(rule);
    expect(problem!.remedy).toMatch(/\.$/);
    expect(problem!.message).toContain(path);
  });

  test('compartments must fit the narrower side of a rack that is not square', () => {
    const narrow = { ...grid, usableMm: 460, usableAcrossMm: 430 };
    expect(rackProblems(narrow).map(({ path }) => path)).toEqual([['openingMm']]);
    expect(rackProblems({ ...narrow, openingMm: 86 })).toEqual([]);
  });

  test('a rim of 3 mm is a mistake of measuring, and how 25,000 pieces would lie is not worked out', () => {
    const [found, ...more] = pairProblems(disc(3), open, ['vessel']);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ path: ['vessel', 'rimMm'], value: 3 });
    expect(found!.rule).toMatch(/would take more than 1,000 of it/);
    expect(piecesPerRack(disc(3), open)).toBe(0);
    expect(pairProblems(disc(17), open)).toEqual([]);
  });

  test('and one that a rack takes is no problem', () => expect(fit(cup(85, 30, 14))).toEqual([]));
});

test('all that is wrong is told at once, and nothing is thrown', () => {
  const bad = { ...cup(-80, 20, 0), heightMm: Number.NaN, massG: -1 };
  expect(vesselProblems(bad).map(({ path }) => path[0])).toEqual(
    expect.arrayContaining(['rimMm', 'heightMm', 'handleWidthMm', 'massG']),
  );
  expect(
    rackProblems({ ...open, usableMm: 0, clearanceMm: -1 }).map(({ path }) => path[0]),
  ).toEqual(['usableMm', 'clearanceMm']);
  const noOpening = { id: 'grid', kind: 'grid', cells: 5 } as unknown as Rack;
  expect(rackLayout(disc(70), noOpening)).toMatchObject({
    pieces: 0,
    problems: [{ path: ['rack', 'openingMm'], value: undefined }],
  });
  expect(rackProblems({ ...grid, openingMm: 93 })[0]).toMatchObject({
    path: ['openingMm'],
    value: 93,
  });
});

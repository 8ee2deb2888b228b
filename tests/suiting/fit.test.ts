import { describe, expect, test } from 'vitest';
import { rackCliff, spoutFit, wareProblems } from '../../src/suiting/fit.js';
import { checklistFor, notesFor, TESTS } from '../../src/suiting/sheet.js';
import type { WareSheet } from '../../src/suiting/model.js';
import { mediumCup, piece, saucer, tumbler } from './parts.js';

const plain: WareSheet = {
  material: 'ceramic',
  wallMm: 4,
  doubleWall: false,
  opening: null,
  inside: null,
  stacks: null,
  safetyGlass: null,
  stains: null,
  chips: null,
  tests: [],
};

describe('fit', () => {
  test('under the spout', () => {
    expect(spoutFit(64, 80)).toEqual({ spareMm: 16, fits: true });
    expect(spoutFit(80, 80).fits).toBe(true);
    expect(spoutFit(100, 80)).toEqual({ spareMm: -20, fits: false });
  });

  test('rack cliffs', () => {
    expect(
      rackCliff({ kind: 'grid-25', pieces: 16, slackMm: 4, narrower: { byMm: 1.2, pieces: 25 } })!
        .words,
    ).toBe('with a rim 1.2 mm narrower, the grid-25 rack takes 25 instead of 16');
    expect(rackCliff({ kind: 'open', pieces: 20, slackMm: 0.4, narrower: null })!.code).toBe(
      'tight',
    );
    expect(
      rackCliff({ kind: 'open', pieces: 20, slackMm: 3, narrower: { byMm: 7, pieces: 25 } }),
    ).toBeNull();
    expect(
      rackCliff({ kind: 'open', pieces: 20, slackMm: 3, narrower: { byMm: 3.1, pieces: 25 } }),
    ).toBeNull();
    expect(
      rackCliff({ kind: 'open', pieces: 20, slackMm: 3, narrower: { byMm: 3, pieces: 25 } })!.code,
    ).toBe('near-gain');
    expect(rackCliff({ kind: 'open', pieces: 20, slackMm: null, narrower: null })).toBeNull();
  });
});

describe('ware that cannot be', () => {
  test.each([
    ['a foot wider than the rim', { ...mediumCup, footMm: 95 }, 'foot'],
    ['a handle longer than the rim', { ...mediumCup, handleMm: 95 }, 'handle'],
    ['no mass', { ...mediumCup, massG: 0 }, 'mass'],
    ['a negative handle', { ...mediumCup, handleMm: -1 }, 'handle'],
    ['more volume than a cylinder of its rim and height', { ...mediumCup, brimMl: 900 }, 'brim'],
  ])('%s', (_, ware, field) => {
    const problems = wareProblems(ware);
    expect(problems.map((problem) => problem.path)).toEqual([['ware', 'medium-cup', field]]);
    expect(problems[0]!.message).toContain(problems[0]!.remedy);
  });

  test('a saucer is wide where it stands and that is no fault', () => {
    expect([mediumCup, tumbler, saucer, piece('bare')].flatMap(wareProblems)).toEqual([]);
  });
});

describe('what to ask a supplier', () => {
  // Titles in the catalogues of standards of CEN and ISO: impact, thermal shock, dishwashing, absorption, metal release.
  test('ceramic ware is asked for its five tests by name', () => {
    expect(checklistFor('cup', 'cup', plain).map((line) => line.standard)).toEqual([
      'EN 12980',
      'EN 1183',
      'EN 12875',
      'EN 1217',
      'ISO 6486',
    ]);
  });

  test('glass is not asked how much water it takes up', () => {
    const standards = checklistFor('tumbler', 'glass', { ...plain, material: 'glass' }).map(
      (line) => line.standard,
    );
    expect(standards).not.toContain('EN 1217');
    expect(standards).toContain('ISO 7086');
  });

  test('a report shown counts whatever part or edition is named; another number does not', () => {
    const shown = (tests: readonly string[]): string[] =>
      checklistFor('cup', 'cup', { ...plain, tests })
        .filter((line) => line.shown)
        .map((line) => line.standard);
    expect(shown(['EN 12875-1:2005', 'BS EN ISO 6486-1', 'en 1217'])).toEqual([
      'EN 12875',
      'EN 1217',
      'ISO 6486',
    ]);
    expect(shown(['EN 121', 'EN 118300', 'dishwasher safe'])).toEqual([]);
  });

  test('nothing carries a score', () => {
    const line = checklistFor('cup', 'cup', plain)[0]!;
    expect(Object.values(line).some((value) => typeof value === 'number')).toBe(false);
    expect(TESTS.length).toBeGreaterThan(4);
  });

  test('notes repeat what was stated, and only that', () => {
    expect(notesFor(plain, 'cup')).toEqual([]);
    expect(
      notesFor(
        { ...plain, inside: 'bowl', stacks: false, stains: 'tea by the third month' },
        'cup',
      ),
    ).toEqual([
      'round inside, as stated: milk turns over and patterns come easily',
      'stains: tea by the third month',
      'does not stack, as stated',
    ]);
    expect(notesFor({ ...plain, safetyGlass: 'toughened' }, 'glass')[0]).toContain('toughened');
  });
});

import { expect, test } from 'vitest';
import { rackLayout } from '../../src/racking/layout.js';
import { drinksAWeek, rackFit, suitMenu, suitWare } from '../../src/suiting/scenario-parts.js';

test('ware and menu of a parsed scenario', () => {
  const [cup, glass] = suitWare({
    cup: { shape: 'cup', brim: 200, rim: 90 },
    glass: { name: 'Tumbler', shape: 'glass' },
  });
  expect(cup).toMatchObject({
    id: 'cup',
    name: 'Cup',
    brimMl: 200,
    rimMm: 90,
    handleMm: null,
    massG: null,
  });
  expect(glass).toMatchObject({ name: 'Tumbler', handleMm: 0 });
  expect(suitMenu({ tea: { share: 1, setting: ['cup'] } })).toEqual([
    { id: 'tea', name: 'Tea', share: 1, setting: ['cup'], fallBacks: [] },
  ]);
});

test('a gain by a narrower rim is so many millimetres less', () => {
  const rimGain = { changeMm: -1.5, piecesThen: 20 };
  expect(rackFit('open', { pieces: 16, slackMm: 1.9, rimGain })).toEqual({
    kind: 'open',
    pieces: 16,
    slackMm: 1.9,
    narrower: { byMm: 1.5, pieces: 20 },
  });
  expect(rackFit('open', { pieces: 16, slackMm: null, rimGain: null }).narrower).toBeNull();
});

// Common practice, from memory: a 5 × 5 rack opens 88 mm, so that an 89 mm glass goes into 4 × 4 or not at all, and 1 mm less takes 25.
test('a computed layout reads as a cliff', () => {
  const layout = rackLayout(
    { shape: 'glass', rimMm: 89, heightMm: 90, massG: 200 },
    { id: 'grid-25', kind: 'grid', cells: 5, openingMm: 88 },
  );
  expect(rackFit('grid-25', layout)).toMatchObject({
    pieces: 0,
    narrower: { byMm: 1, pieces: 25 },
  });
});

test('drinks a week by drink', () => {
  expect(drinksAWeek([{ id: 'tea', share: 0.25 }], 400, 0.4, 6)).toEqual({
    tea: { house: 240, takeaway: 360 },
  });
});

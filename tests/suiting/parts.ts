/** Pieces from which the tests of this folder build their cafés; invented. */
import { parse } from 'yaml';
import { suitSchema } from '../../src/suiting/schema.js';
import type { SuitSection } from '../../src/suiting/schema.js';
import { brewFromExtraction } from '../../src/suiting/strength.js';
import type { Recipe, Side, SuitDrink, SuitWare } from '../../src/suiting/model.js';
import type { SuitInput } from '../../src/suiting/input.js';

export const section = (yaml: string): SuitSection => suitSchema.parse(parse(yaml));

export const piece = (id: string, given: Partial<SuitWare> = {}): SuitWare => ({
  id,
  name: id,
  shape: 'cup',
  brimMl: null,
  rimMm: null,
  footMm: null,
  heightMm: null,
  handleMm: null,
  massG: null,
  wellMm: null,
  colour: null,
  ...given,
});

export const mediumCup = piece('medium-cup', {
  name: 'Medium cup',
  brimMl: 200,
  rimMm: 90,
  footMm: 50,
  heightMm: 64,
  handleMm: 28,
  massG: 280,
});
export const easyCup = piece('easy-cup', {
  name: 'Easy cup',
  brimMl: 210,
  rimMm: 88,
  footMm: 50,
  heightMm: 66,
  handleMm: 34,
  massG: 260,
});
export const tumbler = piece('tumbler', {
  name: 'Tumbler',
  shape: 'glass',
  brimMl: 280,
  rimMm: 78,
  footMm: 48,
  heightMm: 100,
  handleMm: 0,
  massG: 220,
});
export const saucer = piece('saucer', {
  name: 'Saucer',
  shape: 'saucer',
  rimMm: 145,
  massG: 200,
  wellMm: 52,
});

export const drink = (
  id: string,
  setting: readonly string[],
  share = 1,
  fallBacks: readonly (readonly string[])[] = [],
): SuitDrink => ({ id, name: id, share, setting, fallBacks });

export const double = brewFromExtraction(20, 40, 0.2);

export const recipe = (given: Partial<Recipe> = {}): Recipe => ({
  brew: double,
  shotShare: 1,
  topUp: 'milk',
  fill: 0.95,
  pouredMl: null,
  foam: null,
  airInFoam: 0.6,
  milkFromC: 5,
  servedC: 62,
  ...given,
});

export const side = (
  brimMl: number,
  given: Partial<Recipe> = {},
  rimInnerMm: number | null = 80,
): Side => ({ recipe: recipe(given), space: { brimMl, rimInnerMm } });

export const input = (yaml: string, given: Partial<SuitInput> = {}): SuitInput => ({
  scenario: 'Gull & Ladder',
  currency: 'EUR',
  staffHourMinor: 2200,
  ware: [mediumCup, easyCup, tumbler, saucer],
  menu: [drink('flat-white', ['medium-cup', 'saucer'])],
  suit: section(yaml),
  ...given,
});

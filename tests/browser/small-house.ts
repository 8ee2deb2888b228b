/** A house that is quickly worked out, with a cup of a known shape: other vessels can stand in for it. */
import { changed } from '../scenario/a-scenario.js';

export const small = changed(
  'cup: { price: 4 EUR, perRack: 16, family: china }',
  'cup: { like: medium-cup, price: 4 EUR }',
);

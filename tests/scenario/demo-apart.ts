import { readFileSync } from 'node:fs';

/** The demo with racks of their own for cups, saucers, glasses and spoons, and no `racks`: it washes them together. */
export const demoApart = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8')
  .replace(/^racks: .*$/m, '')
  .replace('well: 62 mm, family: china', 'well: 62 mm')
  .replace('price: 2.40 EUR, family: china', 'price: 2.40 EUR')
  .replace('price: 1.30 EUR, family: china, perRack: 120', 'price: 1.30 EUR');

/** What inputs are called: in words, with the name, the machine or the party that tells them from their like. */
import { describe, expect, it } from 'vitest';
import { inputName, inputWords } from '../../../src/tell/input-name.js';

describe('an input', () => {
  it.each([
    ['guests.dwell', 'How long guests stay'],
    ['guests.dwell.bySize.1', 'How long guests stay: guests on their own'],
    ['guests.dwell.bySize.2', 'How long guests stay: parties of 2'],
    ['washing.machines[0].loading', 'Loading time: machine 1'],
    ['washing.machines[1].cycle', 'Length of a wash cycle: machine 2'],
    ['washing.machines.unlimited.cycle', 'Length of a wash cycle'],
    ['arrivals.steps[2].parties', 'Parties arriving: step 3'],
    ['menu.flat-white.share', 'Share of all drinks: flat-white'],
    [
      'supply.suppliers.harbour.quotes.cup.breaks[0].price',
      'Price from there: harbour, cup, step 1',
    ],
    ['ware.cup.unheard-of', 'ware.cup.unheard-of'],
    ['constructor', 'constructor'],
  ])('%s is "%s"', (path, name) => {
    expect(inputName(path)).toBe(name);
  });

  it('with a hostile name is cut and cleaned', () => {
    expect(inputWords(`ware.${'x'.repeat(500)}\u202E.price`)!.which.length).toBeLessThanOrEqual(41);
    expect(inputName('ware.a\u202Eb.price')).not.toContain('\u202E');
  });
});

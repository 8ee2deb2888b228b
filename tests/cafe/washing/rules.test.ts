import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../../src/cafe/day.js';
import { Floor } from '../../../src/cafe/floor.js';
import { fillDay } from '../../../src/cafe/listed-day.js';
import type { CafeModel } from '../../../src/cafe/model.js';
import { PLACE_COUNT } from '../../../src/cafe/places.js';
import { NO_RACK, type LoadRule } from '../../../src/cafe/washing/load-rule.js';
import { FixedTimes } from '../../../src/cafe/washing/rules/fixed-times.js';
import { LoosePieces } from '../../../src/cafe/washing/rules/loose-pieces.js';
import { LowShelf } from '../../../src/cafe/washing/rules/low-shelf.js';
import { Waited } from '../../../src/cafe/washing/rules/waited.js';
import { smallRush } from '../../oracles/generators.js';

/** Every load rule passes the same contract: a new one is added to this list. */
const rules: readonly (readonly [string, (model: CafeModel) => LoadRule])[] = [
  ['waited', () => new Waited(90_000)],
  ['fixed times', () => new FixedTimes()],
  ['low shelf', (model) => new LowShelf(model)],
  ['loose pieces', () => new LoosePieces()],
];

describe.each(rules)('the rule "%s"', (name, make) => {
  it('names an open rack or none, gives the same answer twice, and changes nothing, at every event', () => {
    let named = 0;
    fc.assert(
      fc.property(smallRush({ lowWater: true, washUp: true }), ({ model, day: listed, stock }) => {
        const floor = new Floor(model, 'rules');
        const day = new Day();
        fillDay(listed, model.menu, day);
        const rule = make(model);
        const wares = model.ware.length;
        floor.run(day, 0, stock, {
          before: (_next, { bench, ledger }) => {
            if (name === 'fixed times')
              for (const rack of bench.openRack)
                if (rack !== NO_RACK && rack % 2 === 0) bench.released[rack] = 1;
            const before = JSON.stringify([
              [...ledger.counts],
              [...bench.openRack],
              [...bench.pieces],
              [...bench.used],
            ]);
            const rack = rule.next({ bench, ledger });
            expect(rule.next({ bench, ledger })).toBe(rack);
            expect(
              JSON.stringify([
                [...ledger.counts],
                [...bench.openRack],
                [...bench.pieces],
                [...bench.used],
              ]),
            ).toBe(before);
            if (rack !== NO_RACK) {
              named += 1;
              expect([...bench.openRack]).toContain(rack);
              expect(
                Array.from(
                  { length: wares },
                  (_, ware) => bench.pieces[rack * wares + ware]!,
                ).reduce((sum, pieces) => sum + pieces, 0),
              ).toBeGreaterThan(0);
            }
            for (let ware = 0; ware < wares; ware += 1) {
              const pieces = Array.from(
                { length: PLACE_COUNT },
                (_, place) => ledger.counts[ware * PLACE_COUNT + place]!,
              );
              expect(Math.min(...pieces)).toBeGreaterThanOrEqual(0);
              expect(pieces.reduce((sum, count) => sum + count, 0)).toBe(stock[ware]);
            }
          },
        });
      }),
      { seed: 20, numRuns: 150 },
    );
    expect(named).toBeGreaterThan(0);
  });
});

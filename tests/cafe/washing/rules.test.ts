import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../../src/cafe/day.js';
import { Floor } from '../../../src/cafe/floor.js';
import { FloorView } from '../../../src/cafe/floor-view.js';
import { fillDay } from '../../../src/cafe/listed-day.js';
import type { CafeModel } from '../../../src/cafe/model.js';
import { PLACE_COUNT } from '../../../src/cafe/places.js';
import {
  NEVER,
  NO_RACK,
  type LoadRule,
  type RuleView,
} from '../../../src/cafe/washing/load-rule.js';
import { fixedTimes } from '../../../src/cafe/washing/rules/fixed-times.js';
import { RULES, rulesInOrder } from '../../../src/cafe/washing/rules/in-order.js';
import { smallRush } from '../../oracles/generators.js';

/** The house with every rule of the list in it. */
const withAll = (model: CafeModel): CafeModel => ({
  ...model,
  ware: model.ware.map((ware) => ({ ...ware, lowWater: ware.lowWater ?? 1 })),
  washing: {
    ...model.washing,
    partLoadWait: model.washing.partLoadWait ?? { law: 'constant', ms: 90_000 },
    partLoadsEvery: model.washing.partLoadsEvery ?? { law: 'gamma', meanMs: 240_000, sdMs: 72_000 },
    partLoadFrom: model.washing.partLoadFrom ?? 0.5,
  },
});

const snapshot = ({ ledger, bench }: Floor): string =>
  JSON.stringify([
    [...ledger.counts],
    [...bench.openRack],
    [...bench.pieces],
    [...bench.used],
    [...bench.looseOfKind],
  ]);

/** A rule is asked when a rack takes its first piece, and after it was called: a moment that it wants to be called at again has to lie ahead. */
function watchMoments(rule: LoadRule): void {
  const ahead = (moment: number, now: number): number => {
    if (moment !== NEVER) expect(moment).toBeGreaterThan(now);
    return moment;
  };
  const { rackOpened, called } = rule;
  rule.rackOpened = (rack, view) => ahead(rackOpened.call(rule, rack, view), view.now);
  rule.called = (view) => ahead(called.call(rule, view), view.now);
}

/** Every load rule passes the same contract; the list is the one that the floor reads. */
describe.each(RULES.map(({ name }) => name))('the rule "%s"', (name) => {
  it('names an open rack or none, gives the same answer twice, and changes nothing, at every event', () => {
    let named = 0;
    let asked = false;
    fc.assert(
      fc.property(smallRush({ lowWater: true, washUp: true }), ({ model, day: listed, stock }) => {
        const floor = new Floor(withAll(model), 'rules');
        const view = new FloorView(floor);
        const shelf = view.shelf.bind(view);
        view.shelf = (ware) => {
          asked = true;
          return shelf(ware);
        };
        const day = new Day();
        fillDay(listed, model.menu, day);
        const rule = floor.washing.rules.find((one) => one.name === name)!;
        watchMoments(rule);
        const wares = model.ware.length;
        floor.run(day, 0, stock, {
          before: (_next, { bench, ledger }) => {
            const before = snapshot(floor);
            const rack = rule.next(view);
            expect(rule.next(view)).toBe(rack);
            expect(snapshot(floor)).toBe(before);
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
      { seed: 20, numRuns: 80 },
    );
    expect(named).toBeGreaterThan(0);
    // Where the stock cannot be read off one run with unlimited ware.
    expect(RULES.find((one) => one.name === name)!.looksAtShelf).toBe(asked);
  });

  it('is in a house only where the house asks for it', () => {
    const { model } = fc.sample(smallRush({ lowWater: true, washUp: true }), {
      seed: 20,
      numRuns: 1,
    })[0]!;
    const none: CafeModel = {
      ...model,
      ware: model.ware.map((ware) => ({ ...ware, lowWater: null })),
      rackKinds: model.rackKinds.map((kind) => ({ ...kind, owned: null })),
      washing: { ...model.washing, partLoadWait: null, partLoadsEvery: null, partLoadFrom: null },
    };
    expect(rulesInOrder(withAll(model), 'rules').map((rule) => rule.name)).toContain(name);
    expect(rulesInOrder(none, 'rules')).toEqual([]);
  });
});

/** Racks are counted on through the day, so a busy house opens its hundredth. */
it.each([0, 31, 32, 33, 100])('at set times rack %i waits for its time, then goes', (rack) => {
  const { model } = fc.sample(smallRush({ lowWater: true, washUp: true }), {
    seed: 20,
    numRuns: 1,
  })[0]!;
  const rule = fixedTimes.make(withAll(model), 'racks');
  const bench = { openRack: Int32Array.of(rack), fill: () => 1 };
  const view = { bench, now: 0, moreToCome: false } as unknown as RuleView;
  rule.rackOpened(rack, view);
  expect(rule.next(view)).toBe(NO_RACK);
  rule.called(view);
  expect(rule.next(view)).toBe(rack);
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameOf } from '../../src/quantities/name.js';
import { compile, unitCosts } from '../../src/scenario/compile.js';
import { accepted, changed, edited, valid } from './a-scenario.js';

const cafeOf = (text: string) => compile(accepted(text).scenario);

/** Expected parties of the whole day. */
const partiesOf = (text: string): number => {
  let from = 0;
  return cafeOf(text).arrivals.reduce((sum, { untilMs, partiesPerMs }) => {
    const parties = partiesPerMs * (untilMs - from);
    from = untilMs;
    return sum + parties;
  }, 0);
};

describe('compiling a scenario', () => {
  it('turns names into indices and times into milliseconds', () => {
    const cafe = cafeOf(valid);
    expect(cafe.closingMs).toBe(3_600_000);
    expect(
      cafe.arrivals.map(({ untilMs, partiesPerMs }) => [untilMs, partiesPerMs * 1_800_000]),
    ).toEqual([
      [1_800_000, 6],
      [3_600_000, 9],
    ]);
    expect(
      cafe.menu.map(({ id, share, setting, fallBacks }) => [id, share, setting, fallBacks]),
    ).toEqual([
      ['flat-white', 0.75, [0, 1], []],
      ['tea', 0.25, [2], [[]]],
    ]);
    expect(cafe.menu.map(({ making }) => making)).toEqual([
      { law: 'constant', ms: 40_000 },
      { law: 'constant', ms: 45_000 },
    ]);
    expect(
      cafe.ware.map(({ id, family, perRack, unitCost }) => [id, family, perRack, unitCost]),
    ).toEqual([
      ['cup', 0, 16, 400],
      ['saucer', 1, 30, 400],
      ['mug', 0, 12, 500],
    ]);
    expect(cafe.families).toEqual([
      { id: 'china', rackKind: 0 },
      { id: 'saucers', rackKind: 1 },
    ]);
    expect(cafe.rackKinds).toEqual([
      { id: 'open', owned: null },
      { id: 'peg', owned: null },
    ]);
    expect(cafe.guests.partySize).toEqual([0.6, 0.4, 0]);
    expect(cafe.clearing).toEqual({
      every: null,
      clearers: null,
      tripPieces: null,
      trip: { law: 'constant', ms: 0 },
      whenDirty: null,
      forSeats: false,
    });
  });

  it('gives the same café whatever the units', () => {
    const same: readonly (readonly [string, string])[] = [
      ['every: 30 min', 'every: 1800 s'],
      ['making: 45 s', 'making: 0.75 min'],
      ['drying: 3 min', 'drying: { constant: 0.05 h }'],
      ['staysIn: 40 %', 'staysIn: 0.4'],
      ['price: 4 EUR', 'price: 0.2 staff hours'],
      ['from: "07:00", to: "08:00"', 'for: 60 min'],
    ];
    for (const [from, to] of same) expect(cafeOf(changed(from, to))).toEqual(cafeOf(valid));
  });

  it('changes no number but the ids when ware and drinks are renamed', () => {
    const renamed = valid.replaceAll('cup', 'beaker').replaceAll('tea:', 'infusion:');
    const bare = (text: string): string =>
      JSON.stringify(cafeOf(text), (key, value: unknown) => (key === 'id' ? '' : value));
    expect(bare(renamed)).toBe(bare(valid));
  });

  it('reads the three forms of arrivals alike', () => {
    const slots = 'slots: { every: 30 min, parties: [6, 9] }';
    const steps = cafeOf(
      changed(
        slots,
        'steps: [{ for: 30 min, parties: 12 / h }, { for: 30 min, parties: 0.3 / min }]',
      ),
    );
    // 6 + 9 parties in one hour of 1.4 guests each: 21 guests in the busiest hour, which is the whole.
    const peak = cafeOf(changed(slots, 'peak: { guests: 21 / h, shape: [2, 3] }'));
    for (const cafe of [steps, peak]) {
      cafeOf(valid).arrivals.forEach(({ untilMs, partiesPerMs }, i) => {
        expect(cafe.arrivals[i]!.untilMs).toBe(untilMs);
        expect(cafe.arrivals[i]!.partiesPerMs).toBeCloseTo(partiesPerMs, 15);
      });
    }
  });

  it('puts the peak into the busiest hour, wherever it lies between slots', () => {
    const withPeak = (shape: readonly number[], hours: number): string =>
      edited((tree) => {
        tree['hours'] = { for: `${hours * 60} min` };
        tree['arrivals'] = { peak: { guests: '60 / h', shape } };
      });
    fc.assert(
      fc.property(
        fc
          .array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 9 })
          .filter((shape) => shape.some((weight) => weight > 0)),
        fc.integer({ min: 1, max: 5 }),
        (shape, hours) => {
          const cafe = cafeOf(withPeak(shape, hours));
          const size = cafe.guests.partySize.reduce((sum, share, i) => sum + share * (i + 1), 0);
          const guestsBefore = (ms: number): number => {
            let from = 0;
            return cafe.arrivals.reduce((sum, step) => {
              const part =
                Math.max(0, Math.min(ms, step.untilMs) - from) * step.partiesPerMs * size;
              from = step.untilMs;
              return sum + part;
            }, 0);
          };
          // Slide an hour over the day minute by minute: nowhere more than 60 guests, somewhere nearly 60.
          const hourly = Array.from(
            { length: (hours - 1) * 60 + 1 },
            (_, minute) =>
              guestsBefore(minute * 60_000 + 3_600_000) - guestsBefore(minute * 60_000),
          );
          expect(Math.max(...hourly)).toBeLessThanOrEqual(60 + 1e-3);
          expect(Math.max(...hourly)).toBeGreaterThan(58);
        },
      ),
      { seed: 20, numRuns: 40 },
    );
  });

  it('keeps the number of parties when slots are cut finer', () => {
    expect(partiesOf(valid)).toBeCloseTo(15, 12);
    expect(
      partiesOf(
        changed('every: 30 min, parties: [6, 9]', 'every: 15 min, parties: [3, 3, 4.5, 4.5]'),
      ),
    ).toBeCloseTo(15, 12);
  });

  it('takes pieces per rack as given, else from the shape, else from the class', () => {
    const text = changed('perRack: 16, ', '');
    const computed = compile(
      (() => {
        const ware = accepted(
          changed('cup: { price: 4 EUR, ', 'cup: { like: medium-cup, price: 4 EUR, ', text),
        );
        return ware.scenario;
      })(),
      (_, kind) => (kind === 'open' ? 14 : null),
    );
    expect(computed.ware.map(({ perRack }) => perRack)).toEqual([14, 30, 12]);
  });

  it('repeats machines, merges their spells and counts them from opening', () => {
    const cafe = cafeOf(
      changed(
        '- { class: undercounter }',
        '- { class: undercounter, count: 2, down: [{ from: "07:30", for: 10 min }, { from: 25 min, for: 10 min }], warmUp: 5 min }\n    - { racks: 2, loading: 10 s, cycle: { exponential: 60 s }, unloading: 0 s }',
      ),
    );
    expect(
      cafe.washing.machines?.map(({ id, racks, warmUpMs, down }) => [id, racks, warmUpMs, down]),
    ).toEqual([
      ['undercounter-1', 1, 300_000, [[1_500_000, 2_400_000]]],
      ['undercounter-2', 1, 300_000, [[1_500_000, 2_400_000]]],
      ['machine-3', 2, 0, []],
    ]);
    expect(cafe.washing.everyMachine.id).toBe('undercounter-1');
  });

  it('expresses every idealised setting', () => {
    const cafe = cafeOf(`name: Ideal
currency: EUR
staffHour: 20 EUR
hours: { for: 40000 min }
arrivals: { steps: [{ for: 40000 min, parties: 1 / min }], dayFactor: 0 }
guests: { partySize: 1, drinksEach: 1, secondDrink: 0, staysIn: 100 %, dwell: { exponential: 25 min } }
menu: { coffee: { share: 100 %, setting: [cup] } }
ware: { cup: { price: 1 EUR, perRack: 1, drying: 0 s } }
seats: { count: unlimited }
counter: { makers: unlimited, making: 0 s }
clearing: atOnce
washing:
  machines: { unlimited: { racks: 1, loading: 0 s, cycle: 0 s, unloading: 0 s } }
  hands: unlimited
  partLoadWait: never
`);
    expect(cafe).toEqual({
      closingMs: 2_400_000_000,
      shareSteps: null,
      arrivals: [{ untilMs: 2_400_000_000, partiesPerMs: expect.closeTo(1 / 60_000, 15) }],
      dayFactorCv: 0,
      guests: {
        partySize: [1],
        staysIn: 1,
        drinksEach: 1,
        secondDrink: 0,
        dwell: [{ law: 'exponential', meanMs: 1_500_000 }],
      },
      menu: [
        { id: 'coffee', share: 1, setting: [0], fallBacks: [], making: { law: 'constant', ms: 0 } },
      ],
      ware: [
        {
          id: 'cup',
          family: 0,
          perRack: 1,
          drying: { law: 'constant', ms: 0 },
          lowWater: null,
          unitCost: 100,
          polishing: null,
        },
      ],
      families: [{ id: 'cup', rackKind: 0 }],
      rackKinds: [{ id: 'open', owned: null }],
      seats: { count: null, whenFull: 'wait', waitLimitMs: 300_000, heldUntilCleared: false },
      makers: null,
      clearing: {
        every: null,
        clearers: null,
        tripPieces: null,
        trip: { law: 'constant', ms: 0 },
        whenDirty: null,
        forSeats: false,
      },
      washing: {
        machines: null,
        everyMachine: {
          id: 'machine-1',
          racks: 1,
          loading: { law: 'constant', ms: 0 },
          cycle: { law: 'constant', ms: 0 },
          unloading: { law: 'constant', ms: 0 },
          warmUpMs: 0,
          down: [],
          breakdown: null,
        },
        hands: null,
        partLoadWait: null,
        partLoadsEvery: null,
        partLoadFrom: null,
        otherLoads: null,
      },
    });
  });

  it('reads every other setting of the rush', () => {
    const cafe = cafeOf(
      edited((tree) => {
        tree['guests']!['dwell'] = {
          bySize: { 1: '10 min', 2: { measured: ['20 min', '30 min'] } },
        };
        tree['ware']!['cup'] = {
          like: 'medium-cup',
          lowWater: 8,
          polishing: '8 s',
          perRack: 16,
          price: '4 EUR',
        };
        tree['racks'] = { owned: { open: 6, peg: 'unlimited' } };
        tree['seats'] = {
          count: 30,
          whenFull: 'leave',
          waitLimit: '3 min',
          heldUntilCleared: true,
        };
        (tree as Record<string, unknown>)['clearing'] = {
          every: '10 min',
          clearers: 'unlimited',
          tripPieces: 'unlimited',
          trip: { gamma: { mean: '60 s', sd: '20 s' } },
        };
        tree['washing'] = {
          machines: [
            {
              class: 'hood',
              breakdown: { until: { exponential: '90 h' }, repair: { exponential: '1 h' } },
            },
          ],
          hands: 'clearers',
          partLoadWait: '5 min',
          partLoadsEvery: '15 min',
          otherLoads: {
            racks: [
              { for: '20 min', racks: '6 / h' },
              { for: '40 min', racks: '12 / h' },
            ],
            arrivals: 'poisson',
            goes: 'last',
          },
        };
      }),
    );
    expect(cafe.guests.dwell).toEqual([
      { law: 'constant', ms: 600_000 },
      { law: 'measured', valuesMs: [1_200_000, 1_800_000] },
    ]);
    expect(cafe.ware[0]).toMatchObject({ lowWater: 8, polishing: { law: 'constant', ms: 8000 } });
    expect(cafe.rackKinds).toEqual([
      { id: 'open', owned: 6 },
      { id: 'peg', owned: null },
    ]);
    expect(cafe.seats).toEqual({
      count: 30,
      whenFull: 'leave',
      waitLimitMs: 180_000,
      heldUntilCleared: true,
    });
    expect(cafe.clearing).toEqual({
      every: { law: 'constant', ms: 600_000 },
      clearers: null,
      tripPieces: null,
      trip: { law: 'gamma', meanMs: 60_000, sdMs: 20_000 },
      whenDirty: null,
      forSeats: false,
    });
    expect(cafe.washing).toMatchObject({
      hands: 'clearers',
      partLoadWait: { law: 'constant', ms: 300_000 },
      partLoadsEvery: { law: 'constant', ms: 900_000 },
      otherLoads: { arrivals: 'poisson', goes: 'last' },
    });
    expect(
      cafe.washing.otherLoads?.steps.map(({ untilMs, racksPerMs }) => [
        untilMs,
        Math.round(racksPerMs * 3_600_000),
      ]),
    ).toEqual([
      [1_200_000, 6],
      [3_600_000, 12],
    ]);
    expect(cafe.washing.machines?.[0]?.breakdown).toEqual({
      until: { law: 'exponential', meanMs: 324_000_000 },
      repair: { law: 'exponential', meanMs: 3_600_000 },
    });
  });

  it('has costs in minor units and names for people', () => {
    expect(unitCosts(accepted(valid).scenario)).toEqual([400, 400, 500]);
    expect([nameOf('flat-white', {}), nameOf('cup', { name: 'Our cup' })]).toEqual([
      'Flat white',
      'Our cup',
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import published from '../../../shared/checks/published.json' with { type: 'json' };
import { Day } from '../../../src/cafe/day.js';
import { Floor } from '../../../src/cafe/floor.js';
import { fillDay, type ListedDay } from '../../../src/cafe/listed-day.js';
import { DRYING, PLACE_COUNT, POLISHING, SHELF, WASHING } from '../../../src/cafe/places.js';
import { idealised, instantMachine, modelOf } from '../../published/scenario-of.js';
import { watchMoves } from '../watch-moves.js';

const MINUTE = 60_000;
const hour = {
  hours: { for: '240 min' },
  arrivals: { steps: [{ for: '240 min', parties: '0 / min' }], dayFactor: 0 },
};
const party = (minute: number, dwellMinutes: number, drinks = 1) => ({
  minute,
  size: 1,
  staysIn: true,
  dwellMinutes,
  drinks: Array.from({ length: drinks }, () => ({ drink: 'coffee', makeMinutes: 0 })),
  seconds: [],
});

interface Move {
  readonly minute: number;
  readonly to: number;
  readonly pieces: number;
}

/** Every arrival of pieces of the first ware at a place. */
function moves(changes: Record<string, unknown>, day: ListedDay): Move[] {
  const model = modelOf(idealised({ ...hour, ...changes }));
  const floor = new Floor(model, 'habits');
  const seen: Move[] = [];
  watchMoves(floor, (ware, to, pieces) => {
    if (ware === 0) seen.push({ minute: floor.now / MINUTE, to, pieces });
  });
  const filled = new Day();
  fillDay(day, model.menu, filled);
  floor.run(filled, 0, null);
  expect(PLACE_COUNT).toBeGreaterThan(POLISHING);
  return seen;
}
const minutesTo = (list: readonly Move[], place: number): number[] =>
  list.filter(({ to }) => to === place).map(({ minute }) => minute);
const machine = (more: Record<string, unknown>) => ({
  machines: [{ ...instantMachine, cycle: '2 min', ...more }],
  hands: 'unlimited',
  partLoadWait: '0 s',
});

describe('habits of washing, each through a scenario', () => {
  it('warm-up: no load starts before it is over', () => {
    expect(
      minutesTo(
        moves({ washing: machine({ warmUp: '10 min' }) }, { parties: [party(0, 3)] }),
        WASHING,
      ),
    ).toEqual([10]);
  });

  it('a spell out of order: the load under way is finished, the next waits for its end', () => {
    const washing = machine({ down: [{ from: '4 min', for: '20 min' }] });
    expect(minutesTo(moves({ washing }, { parties: [party(0, 3), party(1, 5)] }), WASHING)).toEqual(
      [3, 24],
    );
  });

  it('a random breakdown stops the machine for its repair', () => {
    const washing = machine({ breakdown: { until: '5 min', repair: '30 min' } });
    expect(minutesTo(moves({ washing }, { parties: [party(0, 3), party(1, 6)] }), WASHING)).toEqual(
      [3, 35],
    );
  });

  it('a breakdown of the second machine: the first goes on, and the second after its repair', () => {
    // The first takes 20 min a load. The second breaks down at 5 min with the cup of 4 in it, which it finishes; the cup of 8
    // waits for the first, and that of 9 for the repair at 35 min.
    const [slow, breaks] = [
      { cycle: '20 min' },
      { breakdown: { until: '5 min', repair: '30 min' } },
    ];
    const washing = {
      ...machine({}),
      machines: [slow, breaks].map((more) => ({ ...instantMachine, cycle: '2 min', ...more })),
    };
    const parties = [party(0, 3), party(0, 4), party(0, 8), party(0, 9)];
    expect(minutesTo(moves({ washing }, { parties }), WASHING)).toEqual([3, 4, 23, 35]);
  });

  it('a breakdown that lies days ahead keeps no round of clearing and no fixed time going', () => {
    const model = modelOf(
      idealised({
        ...hour,
        clearing: { every: '5 min', clearers: 1, trip: '0 s' },
        washing: {
          ...machine({ breakdown: { until: '90 h', repair: '30 min' } }),
          partLoadWait: 'never',
          partLoadsEvery: '15 min',
        },
      }),
    );
    const floor = new Floor(model, 'habits');
    const day = new Day();
    fillDay({ parties: [party(0, 3), party(14, 4)] }, model.menu, day);
    floor.open(day, 0, null);
    expect(floor.advance(200)).toBe(true);
  });

  it('fixed times: part racks go at the multiples, and not before', () => {
    const ware = { cup: { price: '1 EUR', family: 'china', perRack: 10, drying: '0 s' } };
    const washing = {
      machines: [{ ...instantMachine, cycle: '2 min' }],
      hands: 'unlimited',
      partLoadWait: 'never',
      partLoadsEvery: '15 min',
    };
    expect(
      minutesTo(
        moves({ ware, washing }, { parties: [party(0, 3), party(1, 6), party(14, 4)] }),
        WASHING,
      ),
    ).toEqual([15, 30]);
  });

  it('polishing takes a hand a piece, after drying and before the shelf', () => {
    const ware = {
      cup: { price: '1 EUR', family: 'china', perRack: 2, drying: '4 min', polishing: '30 s' },
    };
    const list = moves(
      {
        ware,
        washing: {
          machines: [{ ...instantMachine, cycle: '2 min' }],
          hands: 1,
          partLoadWait: '0 s',
        },
      },
      { parties: [party(0, 3, 2)] },
    );
    expect([minutesTo(list, DRYING), minutesTo(list, POLISHING), minutesTo(list, SHELF)]).toEqual([
      [5],
      [9],
      [10],
    ]);
  });

  it('hands who make drinks: loading keeps a maker from the next drink', () => {
    const start = (hands: string | number): number[] =>
      minutesTo(
        moves(
          {
            counter: { makers: 1, making: '0 s' },
            washing: {
              machines: [{ ...instantMachine, loading: '3 min', cycle: '2 min' }],
              hands,
              partLoadWait: '0 s',
            },
          },
          { parties: [party(0, 5), party(6, 1)] },
        ),
        1,
      );
    // The cup of the first guest is loaded from minute 5 to 8.
    expect(start(1)).toEqual([0, 6]);
    expect(start('makers')).toEqual([0, 8]);
  });

  it('machines of different classes: the lowest-numbered free one goes first', () => {
    const washing = {
      machines: [
        { ...instantMachine, cycle: '9 min' },
        { ...instantMachine, cycle: '1 min' },
      ],
      hands: 'unlimited',
      partLoadWait: '0 s',
    };
    expect(
      minutesTo(moves({ washing }, { parties: [party(0, 3), party(0.5, 3.5)] }), SHELF),
    ).toEqual([5, 12]);
  });

  it('a 2-minute cycle with 30 s of handling makes 24 racks an hour (rating practice under NSF/ANSI 3, read in a trade magazine)', () => {
    const { inputs, expected } = (
      published as unknown as {
        id: string;
        inputs: { cycle_s: number; loadUnload_s: number };
        expected: { racksPerHour: number };
      }[]
    ).find(({ id }) => id === 'nsf-racks-per-hour')!;
    const half = `${inputs.loadUnload_s / 2} s`;
    const washing = {
      machines: [{ racks: 1, loading: half, cycle: `${inputs.cycle_s} s`, unloading: half }],
      hands: 'unlimited',
      partLoadWait: '0 s',
    };
    const started = minutesTo(
      moves({ washing }, { parties: Array.from({ length: 100 }, () => party(0, 0)) }),
      WASHING,
    );
    expect(started.filter((minute) => minute < 60)).toHaveLength(expected.racksPerHour);
  });
});

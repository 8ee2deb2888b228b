import { expect, it } from 'vitest';
import { Day } from '../../../src/cafe/day.js';
import { Floor } from '../../../src/cafe/floor.js';
import { fillDay } from '../../../src/cafe/listed-day.js';
import { WASHING } from '../../../src/cafe/places.js';
import { OtherLoads } from '../../../src/cafe/washing/other-loads.js';
import { Calendar } from '../../../src/engine/calendar.js';
import { idealised, instantMachine, modelOf } from '../../published/scenario-of.js';
import { watchMoves } from '../watch-moves.js';

const HOUR = 3_600_000;

/** Moments of a day's regular loads, ms: so many in each hour, one hour after the other. */
function momentsOf(anHour: readonly number[]): number[] {
  const steps = anHour.map((loads, at) => ({ untilMs: (at + 1) * HOUR, racksPerMs: loads / HOUR }));
  const loads = new OtherLoads(
    { steps, arrivals: 'regular', goes: 'inTurn' },
    anHour.length * HOUR,
    'regular',
  );
  const calendar = new Calendar();
  loads.open(0, calendar);
  const moments: number[] = [];
  while (calendar.take()) {
    moments.push(calendar.time);
    loads.scheduleNext(calendar);
  }
  return moments;
}

// The k-th comes when the accumulated rate reaches k: the last of an hour just at its end, though a rate times an hour is
// not always the whole number it stands for.
it('come one after the other, as many as the rate says, also where none come afterwards', () => {
  for (let loads = 1; loads <= 60; loads += 1) {
    const apart = HOUR / loads;
    expect(momentsOf([loads, 0])).toEqual(
      Array.from({ length: loads }, (_, k) => Math.round((k + 1) * apart)),
    );
  }
});

it('keep their beat from one rate to the next', () => {
  expect(momentsOf([1, 2, 0, 1.5, 1.5]).map((moment) => moment / HOUR)).toEqual(
    [1, 1.5, 2, 3 + 2 / 3, 4 + 1 / 3].map((hour) => Math.round(hour * HOUR) / HOUR),
  );
});

it('come strictly before closing', () => {
  expect(momentsOf([2])).toEqual([HOUR / 2]);
});

// One machine, 10 min a load. The cup of 11 min is in it until 21; then wait the cup of 11.5, an other load since 12, and the cup of 25.
it.each([
  ['first', [11, 31, 41]],
  ['inTurn', [11, 21, 41]],
  ['last', [11, 21, 31]],
] as const)('go %s beside our own', (goes, minutes) => {
  const model = modelOf(
    idealised({
      hours: { for: '60 min' },
      arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
      washing: {
        machines: [{ ...instantMachine, cycle: '10 min' }],
        hands: 'unlimited',
        partLoadWait: '0 s',
      },
    }),
  );
  const steps = [
    { untilMs: HOUR / 5, racksPerMs: 5 / HOUR },
    { untilMs: HOUR, racksPerMs: 0 },
  ];
  const otherLoads = { steps, arrivals: 'regular', goes } as const;
  const floor = new Floor({ ...model, washing: { ...model.washing, otherLoads } }, 'regular');
  const seen: number[] = [];
  watchMoves(floor, (_ware, to) => void (to === WASHING && seen.push(floor.now / 60_000)));
  const day = new Day();
  const drinks = [{ drink: 'coffee', makeMinutes: 0 }];
  const parties = [11, 11.5, 25].map((dwellMinutes) => ({
    minute: 0,
    size: 1,
    staysIn: true,
    dwellMinutes,
    drinks,
    seconds: [],
  }));
  fillDay({ parties }, model.menu, day);
  floor.run(day, 0, null);
  expect(seen).toEqual(minutes);
  expect([floor.washing.loads, floor.washing.ownRacks, floor.washing.waiting]).toEqual([4, 3, 0]);
});

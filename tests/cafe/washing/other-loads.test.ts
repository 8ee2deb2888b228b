import { expect, it } from 'vitest';
import { OtherLoads } from '../../../src/cafe/washing/other-loads.js';
import { Calendar } from '../../../src/engine/calendar.js';

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

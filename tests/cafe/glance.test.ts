import { expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Floor } from '../../src/cafe/floor.js';
import { fillDay } from '../../src/cafe/listed-day.js';
import { EveryStep, glance, type Glance } from '../../src/cafe/looking-on.js';
import { idealised, modelOf } from '../published/scenario-of.js';

/** What is seen at every minute of a day of three guests, who come at 0, 0 and 2 min and stay 3 min from their drink on. */
function seen(seats: Record<string, unknown>): Glance[] {
  const model = modelOf(
    idealised({
      hours: { for: '60 min' },
      arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
      seats,
      counter: { makers: 1, making: '0 s' },
      washing: {
        machines: Array.from({ length: 2 }, () => ({
          racks: 1,
          loading: '30 s',
          cycle: '2 min',
          unloading: '30 s',
        })),
        hands: 2,
        partLoadWait: '0 s',
      },
    }),
  );
  const day = new Day();
  const parties = [0, 0, 2].map((minute) => ({
    minute,
    size: 1,
    staysIn: true,
    dwellMinutes: 3,
    drinks: [{ drink: 'coffee', makeMinutes: 1 }],
    seconds: [],
  }));
  fillDay({ parties }, model.menu, day);
  const looks: Glance[] = [];
  const floor = new Floor(model, 'glance');
  const watcher = new EveryStep(60_000, 10 * 60_000, (_, now) => looks.push(glance(now)), 15_000);
  floor.run(day, 0, null, watcher);
  return looks;
}

// Drinks are made from 0 to 1, 1 to 2 and 2 to 3 min, so guests leave at 4, 5 and 6; each cup is loaded for half a minute, washed for
// two and unloaded for half a minute. Looks fall a quarter of a minute after each full one; the third cup waits for the first machine.
it('counts what stands on the floor at a moment', () => {
  const looks = seen({ count: 5, whenFull: 'leave' });
  const column = (key: keyof Glance): number[] => looks.map((look) => look[key]);
  expect(column('seatsTaken')).toEqual([2, 2, 3, 3, 2, 1, 0, 0, 0, 0]);
  expect(column('makersBusy')).toEqual([1, 1, 1, 0, 0, 0, 0, 0, 0, 0]);
  expect(column('drinksWaiting')).toEqual([1, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
  expect(column('machinesBusy')).toEqual([0, 0, 0, 0, 1, 2, 2, 2, 1, 1]);
  expect(column('racksWaiting')).toEqual([0, 0, 0, 0, 0, 0, 1, 0, 0, 0]);
  expect(column('handsBusy')).toEqual([0, 0, 0, 0, 1, 1, 0, 1, 0, 0]);
});

it('counts guests where seats are without end, and a line where they are few', () => {
  expect(seen({ count: 'unlimited' }).map(({ seatsTaken }) => seatsTaken)).toEqual([
    2, 2, 3, 3, 2, 1, 0, 0, 0, 0,
  ]);
  const few = seen({ count: 2, whenFull: 'wait', waitLimit: '20 min' });
  expect(few.map(({ partiesInLine }) => partiesInLine)).toEqual([0, 0, 1, 1, 0, 0, 0, 0, 0, 0]);
  expect(few.map(({ seatsTaken }) => seatsTaken).slice(0, 5)).toEqual([2, 2, 2, 2, 2]);
});

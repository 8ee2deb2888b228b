import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import type { CafeModel } from '../../src/cafe/model.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { idealised, modelOf } from '../published/scenario-of.js';

const HOUR = 3_600_000;
const base = modelOf(
  idealised({
    hours: { for: '3 h' },
    arrivals: { steps: [{ for: '3 h', parties: '1 / min' }], dayFactor: 0 },
  }),
);
const drinks = ['coffee', 'tea', 'milk'].map((id) => ({ ...base.menu[0]!, id, share: 1 / 3 }));
const drawn = (model: CafeModel, number = 4): Day => {
  const day = new Day();
  new Demand(model, 'demand').draw(number, day);
  return day;
};
/** What a stream of the house would give on that day. */
const luckOf = (purpose: string, number = 4) => {
  const stream = new Stream(streamKey('demand', purpose)).toDay(number);
  return () => stream.uniform();
};
const step = (hours: number, menu: readonly number[]) => ({
  untilMs: hours * HOUR,
  staysIn: 1,
  menu,
});

describe('days that hardly differ', () => {
  it('are as days that do not: a factor whose square is too small to be held loses no guest', () => {
    const parties = (dayFactorCv: number): number => drawn({ ...base, dayFactorCv }).parties;
    expect([1e-13, 1e-160, 5e-324].map(parties)).toEqual(Array(3).fill(parties(0)));
    expect(parties(0)).toBeGreaterThan(100);
  });
});

describe('what guests order', () => {
  it('takes no luck where there is no choice, and one draw a drink where there is', () => {
    const shareSteps = [step(1, [1, 0, 0]), step(3, [0.5, 0.3, 0.2])];
    const model = { ...base, menu: drinks, shareSteps };
    const [day, luck] = [drawn(model), luckOf('kinds')];
    let others = 0;
    for (let party = 0; party < day.parties; party += 1) {
      const kind = day.kind[day.firstDrink[party]!]!;
      if (day.arrivalMs[party]! < HOUR) {
        expect(kind).toBe(0);
        continue;
      }
      const u = luck();
      expect(kind).toBe(u < 0.5 ? 0 : u < 0.8 ? 1 : 2);
      others += 1;
    }
    expect(others).toBeGreaterThan(80);
  });

  it('changes at the very moment at which a part of the day ends', () => {
    const { arrivalMs, parties } = drawn(base);
    const party = Math.floor(parties / 2);
    const shareSteps = [{ ...step(1, [1, 0, 0]), untilMs: arrivalMs[party]! }, step(3, [0, 1, 0])];
    const day = drawn({ ...base, menu: drinks, shareSteps });
    expect(day.parties).toBe(parties);
    const kindOf = (one: number): number => day.kind[day.firstDrink[one]!]!;
    expect([kindOf(party - 1), kindOf(party)]).toEqual([0, 1]);
  });

  it('is of the part of the day that they come in, and after the last part still of that', () => {
    const shareSteps = [step(1, [1, 0, 0]), step(1.5, [0, 1, 0]), step(2, [0, 0, 1])];
    const day = drawn({ ...base, menu: drinks, shareSteps });
    const seen = [0, 0, 0, 0];
    for (let party = 0; party < day.parties; party += 1) {
      const hours = day.arrivalMs[party]! / HOUR;
      const part = hours < 1 ? 0 : hours < 1.5 ? 1 : 2;
      expect(day.kind[day.firstDrink[party]!]).toBe(part);
      seen[hours < 2 ? part : 3]! += 1;
    }
    expect(Math.min(...seen)).toBeGreaterThan(15);
  });
});

it('sizes and second drinks are drawn by one uniform each, in the order of the parties', () => {
  const guests = { ...base.guests, partySize: [0.5, 0.25, 0.25], secondDrink: 0.4 };
  const day = drawn({ ...base, guests });
  const [sizes, seconds] = [luckOf('sizes'), luckOf('seconds')];
  for (let party = 0; party < day.parties; party += 1) {
    const u = sizes();
    const size = u < 0.5 ? 1 : u < 0.75 ? 2 : 3;
    expect(day.size[party]).toBe(size);
    const [firsts, ends] = [day.firstSecond[party]!, day.firstDrink[party + 1]!];
    expect(firsts - day.firstDrink[party]!).toBe(size);
    expect(ends - firsts).toBe(Array.from({ length: size }, seconds).filter((v) => v < 0.4).length);
  }
});

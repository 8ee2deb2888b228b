import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Calendar, RANKS } from '../../src/engine/calendar.js';

interface Entry {
  time: number;
  rank: number;
  payload: number;
}

function drain(calendar: Calendar): Entry[] {
  const out: Entry[] = [];
  while (calendar.take())
    out.push({ time: calendar.time, rank: calendar.rank, payload: calendar.payload });
  return out;
}

const times = fc.oneof(
  fc.integer({ min: 0, max: 50 }),
  fc.integer({ min: 0, max: 20_000_000 }),
  fc.integer({ min: 0, max: 2 ** 40 }),
);

describe('the calendar', () => {
  it('gives events by moment, then rank, then order of scheduling', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(times, fc.integer({ min: 0, max: RANKS - 1 })), { maxLength: 400 }),
        fc.constantFrom(1, 100, 8192),
        (events, bucketMs) => {
          const calendar = new Calendar(bucketMs, 16);
          const entries = events.map(([time, rank], payload) => ({ time, rank, payload }));
          for (const { time, rank, payload } of entries) calendar.schedule(time, rank, payload);
          const sorted = entries.toSorted(
            (a, b) => a.time - b.time || a.rank - b.rank || a.payload - b.payload,
          );
          expect(drain(calendar)).toEqual(sorted);
        },
      ),
      { seed: 20, numRuns: 300 },
    );
  });

  it('keeps the order while events are scheduled from events, also at the present moment and with a lower rank', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: 0, max: 3 }),
            fc.integer({ min: 0, max: 30_000 }),
            fc.integer({ min: 0, max: RANKS - 1 }),
          ),
          { minLength: 1, maxLength: 300 },
        ),
        (steps) => {
          const calendar = new Calendar(64, 8);
          const waiting: Entry[] = [];
          let now = 0;
          steps.forEach(([takes, ahead, rank], payload) => {
            for (let n = 0; n < takes && waiting.length > 0; n += 1) {
              waiting.sort((a, b) => a.time - b.time || a.rank - b.rank || a.payload - b.payload);
              const next = waiting.shift()!;
              expect(calendar.take()).toBe(true);
              expect({
                time: calendar.time,
                rank: calendar.rank,
                payload: calendar.payload,
              }).toEqual(next);
              now = next.time;
            }
            const time = now + (ahead % 3 === 0 ? 0 : ahead);
            waiting.push({ time, rank, payload });
            calendar.schedule(time, rank, payload);
          });
          expect(calendar.size).toBe(waiting.length);
        },
      ),
      { seed: 20, numRuns: 300 },
    );
  });

  it('takes only what lies below a limit, and can go back to schedule earlier', () => {
    const calendar = new Calendar(10, 4);
    calendar.schedule(1_000_000, 3, 1);
    expect(calendar.nextKey()).toBe(1_000_000 * RANKS + 3);
    expect(calendar.takeBefore(1_000_000 * RANKS + 3)).toBe(false);
    calendar.schedule(5, 0, 2);
    expect(calendar.takeBefore(1_000_000 * RANKS)).toBe(true);
    expect(calendar.payload).toBe(2);
    expect(calendar.takeBefore(Infinity)).toBe(true);
    expect([calendar.time, calendar.rank, calendar.payload]).toEqual([1_000_000, 3, 1]);
    expect(calendar.nextKey()).toBe(Infinity);
  });

  it('is empty and at time 0 after clear', () => {
    const calendar = new Calendar(10, 4);
    for (let event = 0; event < 1000; event += 1)
      calendar.schedule(event * 7, event % RANKS, event);
    calendar.take();
    calendar.clear();
    expect([calendar.size, calendar.time, calendar.take()]).toEqual([0, 0, false]);
    calendar.schedule(1, 1, 42);
    expect(drain(calendar)).toEqual([{ time: 1, rank: 1, payload: 42 }]);
  });

  it('refuses a ring that is no power of two', () => {
    expect(() => new Calendar(10, 12)).toThrow(/power of two/);
    expect(() => new Calendar(0, 16)).toThrow(/positive/);
  });
});

/** How long parties stay, from counts alone: Little's law, and simulated mornings with known stays. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Duration } from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { cutMoments, stayFromCounts } from '../../src/measuring/stay-from-counts.js';

const SLOT = 15;

/** Parties that come evenly over `hours` and stay by a lognormal law, counted up to `until` minutes. */
function counted(seed: string, parties: number, mean: number, cv: number, until: number) {
  const stream = new Stream(streamKey(seed, 'parties'));
  const law = new Duration({ law: 'lognormal', meanMs: mean * 60_000, sdMs: cv * mean * 60_000 });
  const slots = until / SLOT;
  const [came, went] = [Array<number>(slots).fill(0), Array<number>(slots).fill(0)];
  for (let party = 0; party < parties; party += 1) {
    const at = stream.uniform() * 180;
    const left = at + law.draw(stream) / 60_000;
    if (at < until) came[Math.floor(at / SLOT)]! += 1;
    if (left < until) went[Math.floor(left / SLOT)]! += 1;
  }
  return { slotMinutes: SLOT, came, went, before: 0 };
}

describe('stays from counts of those who come and go', () => {
  it("are Little's law where all have left: party-minutes over parties", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1, max: 12 })), {
          minLength: 3,
          maxLength: 10,
        }),
        (rows) => {
          // Each slot's parties leave so many slots later, and the counts go on until long after.
          const slots = 400;
          const [came, went] = [Array<number>(slots).fill(0), Array<number>(slots).fill(0)];
          let minutes = 0;
          rows.forEach(([parties, later], at) => {
            came[at]! += parties;
            went[at + later]! += parties;
            minutes += parties * later * SLOT;
          });
          const parties = came.reduce((sum, one) => sum + one, 0);
          fc.pre(parties > 0);
          const stay = stayFromCounts([{ slotMinutes: SLOT, came, went, before: 0 }], 0.5, null)!;
          expect(stay.plain).toBeCloseTo(minutes / parties, 9);
          expect(stay.mean / stay.plain).toBeCloseTo(1, 3);
        },
      ),
      { numRuns: 50, seed: 11 },
    );
  });

  it('hold the truth in their 95 % interval about as often as they say, also where many still sit at the end', () => {
    for (const until of [420, 180]) {
      const repeats = 200;
      let [inside, sum] = [0, 0];
      for (let at = 0; at < repeats; at += 1) {
        const stay = stayFromCounts([counted(`${until}/${at}`, 60, 40, 0.45, until)], 0.45, 12)!;
        inside += stay.low <= 40 && 40 <= stay.high ? 1 : 0;
        sum += stay.mean;
      }
      // Below 0.90 of 200 has a chance of under 0.3 % at 0.95.
      expect(inside / repeats).toBeGreaterThan(0.9);
      expect(Math.abs(sum / repeats / 40 - 1)).toBeLessThan(0.03);
    }
  });

  it('count parties that still sit with what is left of their stay', () => {
    const late = counted('late', 400, 60, 0.45, 180);
    const stay = stayFromCounts([late], 0.45, null)!;
    expect(stay.plain).toBeLessThan(54);
    expect(Math.abs(stay.mean / 60 - 1)).toBeLessThan(0.1);
  });

  it('say nothing where nobody came or nobody left', () => {
    const none = { slotMinutes: SLOT, came: [0, 0], went: [0, 0], before: 0 };
    expect(stayFromCounts([none], 0.5, null)).toBeNull();
    expect(stayFromCounts([{ ...none, came: [3, 2] }], 0.5, null)).toBeNull();
  });

  it('cut a law as sums over its density do', () => {
    const { first, second } = cutMoments(40, 0.5, 50);
    const draw = new Duration({ law: 'lognormal', meanMs: 40_000, sdMs: 20_000 });
    const stream = new Stream(streamKey('sum', 'cut'));
    const n = 40_000;
    let [one, two] = [0, 0];
    for (let at = 0; at < n; at += 1) {
      const x = Math.min(50, draw.draw(stream) / 1000);
      one += x / n;
      two += x ** 2 / n;
    }
    expect(first / one).toBeCloseTo(1, 2);
    expect(second / two).toBeCloseTo(1, 1);
  });
});

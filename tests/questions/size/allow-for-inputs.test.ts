/** The stock that allows for inputs, against brute force written from scratch on a house of one cup where all but stays is instant. */
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { allowForInputs, uncertainInputs } from '../../../src/questions/size/allow-for-inputs.js';
import { ask } from '../../../src/questions/size/ask.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { smallHouse } from '../../measuring/brute-force.js';

/** Park and Miller's generator (Communications of the ACM 31, 1988): no code in common with the engine's. */
function generator(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}

/** Most guests in the house at once on a morning of three hours: 0.6 come a minute, stays are lognormal with a spread of 45 %. */
function most(uniform: () => number, staysIn: number, meanStay: number): number {
  const sigma = Math.sqrt(Math.log(1 + 0.45 ** 2));
  const steps: [number, number][] = [];
  for (let at = -Math.log(uniform()) / 0.6; at < 180; at -= Math.log(uniform()) / 0.6) {
    if (uniform() >= staysIn) continue;
    const normal = Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    steps.push([at, 1], [at + meanStay * Math.exp(sigma * normal - sigma ** 2 / 2), -1]);
  }
  let [now, peak] = [0, 0];
  for (const [, step] of steps.sort((a, b) => a[0] - b[0])) peak = Math.max(peak, (now += step));
  return peak;
}

/** Evenly below and above the value, as ranges are drawn. */
const within = (low: number, value: number, high: number, rank: number): number =>
  rank < 0.5 ? low + (value - low) * rank * 2 : value + (high - value) * (rank * 2 - 1);

const read = readScenario(smallHouse, 'small.json', { piecesPerRack: piecesPerRackOf });
if (!read.ok) throw new Error('the small house cannot be read');

describe('the stock that allows for inputs', () => {
  it('is what brute force finds on a small house, as is how long the plain stock lasts', async () => {
    const uniform = generator(20_261);
    const peaks = Array.from({ length: 4000 }, () =>
      most(uniform, within(0.35, 0.6, 0.85, uniform()), within(15, 30, 45, uniform())),
    );
    const lasts = (pieces: number): number =>
      peaks.filter((peak) => peak <= pieces).length / peaks.length;
    const needed = peaks.toSorted((a, b) => a - b)[Math.ceil(0.95 * peaks.length) - 1]!;
    // With the inputs as they are written, to 95 %.
    const plain = Array.from({ length: 2000 }, () => most(uniform, 0.6, 30)).toSorted(
      (a, b) => a - b,
    )[1899]!;
    const answer = {
      stock: [{ ware: 'cup', pieces: plain }] as never,
      level: 0.95,
      seed: 'brute',
      spend: 0,
      currency: 'EUR',
    };
    const found = await allowForInputs(read, answer, inThisThread(), { draws: 100, daysEach: 4 });
    // 400 days of 100 draws each way: the error of a share is about 3 points, of the 95 % quantile about 1.5 pieces.
    expect(Math.abs(found.stock[0]!.pieces - needed)).toBeLessThanOrEqual(3);
    expect(Math.abs(found.plain.level - lasts(plain))).toBeLessThan(0.08);
    expect(found.plain.level).toBeLessThan(0.92);
    expect(found.held.low).toBeLessThanOrEqual(lasts(found.stock[0]!.pieces) + 0.01);
    expect(found.held.high).toBeGreaterThanOrEqual(lasts(found.stock[0]!.pieces) - 0.01);
  });

  it('draws what is in doubt, and leaves how the house is run', () => {
    expect(uncertainInputs(read).map(({ path }) => path)).toEqual(
      expect.arrayContaining(['guests.dwell', 'guests.staysIn']),
    );
    expect(uncertainInputs(read).map(({ path }) => path)).not.toContain('washing.partLoadWait');
  });

  it('has no place beside a given stock', async () => {
    await expect(
      ask({ opened: read, runner: inThisThread() } as never, {
        'allow-for-inputs': true,
        stock: { cup: 9 },
      }),
    ).rejects.toThrow(/leave out --stock, or --allow-for-inputs/);
  });
});

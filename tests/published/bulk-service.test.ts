/**
 * Racks as bulk service: the machine takes what is racked, from a pieces to b. The published values are those of
 * shared/checks/published.json; between them (1 < a < b) the embedded Markov chain is solved here.
 */
import { describe, expect, it } from 'vitest';
import { BENCH, RACKED } from '../../src/cafe/places.js';
import { bulkMeans } from './bulk-chain.js';
import { checks, expectWithin, input, replications } from './checks.js';
import { idealised, instantMachine, modelOf, steady } from './scenario-of.js';

const published = checks('bulk-M/D^[a,b]/1').map((check) => ({
  id: check.id,
  lambda: input(check, 'lambda'),
  a: input(check, 'a'),
  b: input(check, 'b'),
  expected: check.expected as { Wq: number; meanBatch: number },
}));

/** Waits from bench to machine, minutes, and pieces a load, run by run. */
function simulated(
  lambda: number,
  b: number,
  habit: Record<string, unknown>,
): {
  readonly waits: number[];
  readonly batches: number[];
  readonly loads: number[];
} {
  const model = modelOf(
    idealised({
      ...steady(lambda, Math.ceil(20_000 / lambda)),
      ware: { cup: { price: '1 EUR', family: 'china', perRack: b, drying: '0 s' } },
      washing: {
        machines: [{ ...instantMachine, cycle: '1 min' }],
        hands: 'unlimited',
        ...habit,
      },
    }),
  );
  const runs = replications(model, 12);
  return {
    waits: runs.map(
      ({ pieceMs, uses }) => (pieceMs[BENCH]! + pieceMs[RACKED]!) / uses[0]! / 60_000,
    ),
    batches: runs.map(({ sums, uses }) => uses[0]! / sums.loads),
    loads: runs.map(({ sums }) => sums.loads),
  };
}

describe('bulk service M/D^[a,b]/1 at the rack (Neuts 1967; Medhi, Stochastic Models in Queueing Theory, 2nd ed., ch. 4)', () => {
  it.each(published)(
    '$id: wait from bench to machine, and pieces a load',
    ({ lambda, a, b, expected }) => {
      const { waits, batches, loads } = simulated(lambda, b, {
        partLoadWait: a === 1 ? '0 s' : 'never',
      });
      expectWithin(waits, expected.Wq);
      // Full loads, but for what the end of a run leaves in the rack and in the machine: less than two loads.
      if (a === b)
        batches.forEach((batch, run) =>
          expect(Math.abs(batch - b) * loads[run]!).toBeLessThan(2 * b),
        );
      else expectWithin(batches, expected.meanBatch);
    },
  );

  it.each(published)('$id: the chain solved here agrees', ({ lambda, a, b, expected }) => {
    const solved = bulkMeans(lambda, a, b);
    expect(solved.wait).toBeCloseTo(expected.Wq, 5);
    expect(solved.meanBatch).toBeCloseTo(expected.meanBatch, 5);
  });

  it.each([
    [1.2, 2, 3],
    [3, 4, 10],
    [8, 6, 10],
    [5, 5, 12],
    [12, 10, 16],
  ])('lambda %d, from %d to %d pieces: part loads from a filled share of a/b', (lambda, a, b) => {
    const solved = bulkMeans(lambda, a, b);
    const { waits, batches } = simulated(lambda, b, {
      partLoadWait: '0 s',
      partLoadFrom: a / b,
    });
    expectWithin(waits, solved.wait);
    expectWithin(batches, solved.meanBatch);
  });
});

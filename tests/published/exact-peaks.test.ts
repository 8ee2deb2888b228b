import { describe, expect, it } from 'vitest';
import published from '../../shared/checks/exact-peaks.json' with { type: 'json' };
import { runDays } from '../../src/cafe/run-days.js';
import { exactBinomialTest } from '../../src/statistics/exact-binomial-test.js';
import { chancePeakAtMost, isLoop } from '../studies/exact-peak.js';
import { idealised, instantMachine, modelOf } from './scenario-of.js';

/**
 * Exact distribution of the largest number of pieces off the shelf: a continuous-time Markov chain
 * killed on leaving N, by uniformization (Jensen 1953; W. J. Stewart, Introduction to the Numerical
 * Solution of Markov Chains, 1994, ch. 8); values computed independently, shared/checks/exact-peaks.json.
 */
const DAYS = 8_000;

describe.each(published.cases)('the peak of $id', (one) => {
  const minutes = one.arrivals.reduce((sum, step) => sum + step.minutes, 0);
  const mean = 'loopMeanMinutes' in one ? one.loopMeanMinutes : one.dwellMeanMinutes;
  const machines =
    'cycleMeanMinutes' in one
      ? [
          {
            ...instantMachine,
            cycle: { exponential: `${one.cycleMeanMinutes} min` },
            count: one.machines,
          },
        ]
      : { unlimited: instantMachine };
  const model = modelOf(
    idealised({
      hours: { for: `${minutes} min` },
      arrivals: {
        steps: one.arrivals.map((step) => ({
          for: `${step.minutes} min`,
          parties: `${step.partiesPerMinute} / min`,
        })),
        dayFactor: 0,
      },
      guests: {
        partySize: 1,
        staysIn: '100 %',
        drinksEach: 1,
        secondDrink: 0,
        dwell: { exponential: `${mean} min` },
      },
      washing: { machines, hands: 'unlimited', partLoadWait: 'never' },
    }),
  );
  const { peaks } = runDays({
    model,
    seed: 'exact',
    from: 0,
    days: DAYS,
    stock: null,
    listed: null,
    byDay: false,
  });

  it('has the exact distribution at every stock', () => {
    for (const [stock, probability] of Object.entries(one.probabilityPeakAtMost)) {
      const within = peaks.reduce((count, peak) => count + (peak <= Number(stock) ? 1 : 0), 0);
      expect(
        exactBinomialTest(within, DAYS, probability),
        `P(peak ≤ ${stock}) = ${probability}, seen ${within / DAYS}`,
      ).toBeGreaterThanOrEqual(1e-6);
    }
  });
});

it.each(published.cases.filter((one) => isLoop(one)))(
  'the chain that studies draw from gives the peak of $id',
  (one) => {
    for (const [stock, probability] of Object.entries(one.probabilityPeakAtMost))
      expect(chancePeakAtMost(one, Number(stock))).toBeCloseTo(probability, 9);
  },
);

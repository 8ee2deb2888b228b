import oracle from '@stdlib/stats-base-dists-normal-quantile';
import { expect, it } from 'vitest';
import { normalQuantile } from '../../src/engine/normal.js';

it('agrees with @stdlib from the tails to the middle', () => {
  const shares = [
    2 ** -33,
    1e-9,
    1e-7,
    1e-5,
    ...Array.from({ length: 2000 }, (_, i) => (i + 0.5) / 2000),
    1 - 1e-5,
    1 - 1e-7,
    1 - 2 ** -33,
  ];
  for (const share of shares) {
    const expected = oracle(share, 0, 1);
    // The oracle works from 2·share − 1, which costs it digits in the tails.
    const digits = 4e-16 / Math.min(share, 1 - share);
    expect(Math.abs(normalQuantile(share) - expected), `at ${share}`).toBeLessThan(1e-13 + digits);
  }
});

it('has the values of the tables (NIST/SEMATECH e-Handbook 1.3.6.7.1, from memory)', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
  expect(normalQuantile(0.5)).toBe(0);
  expect(normalQuantile(0.01)).toBeCloseTo(-2.3263478740408408, 14);
});

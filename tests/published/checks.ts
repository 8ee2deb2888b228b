/** Published values, and what it takes to hold simulated ones against them. */
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { expect } from 'vitest';
import all from '../../shared/checks/published.json' with { type: 'json' };
import type { CafeModel } from '../../src/cafe/model.js';
import { runDays } from '../../src/cafe/run-days.js';
import type { DaysRun } from '../../src/cafe/rush.js';

export interface Check {
  id: string;
  topic: string;
  inputs: Record<string, number | string>;
  expected: unknown;
  source: string;
}

export const checks = (topic: string): Check[] => {
  const found = (all as unknown as Check[]).filter((check) => check.topic === topic);
  if (found.length === 0) throw new Error(`no check on ${topic}`);
  return found;
};
export const input = (check: Check, name: string): number => Number(check.inputs[name]);

/** Mean over replications within four standard errors of the value. */
export function expectWithin(values: readonly number[], expected: number): void {
  const error = sampleStandardDeviation([...values]) / Math.sqrt(values.length);
  expect(error).toBeGreaterThan(0);
  expect(
    Math.abs(mean([...values]) - expected),
    `${mean([...values])} ± ${error} against ${expected}`,
  ).toBeLessThanOrEqual(4 * error);
}

export const replications = (
  model: CafeModel,
  days: number,
  stock: readonly number[] | null = null,
): DaysRun[] =>
  Array.from({ length: days }, (_, day) =>
    runDays({ model, seed: 'queues', from: day, days: 1, stock, listed: null, byDay: false }),
  );

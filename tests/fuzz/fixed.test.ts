/** A fixed few of what `npm run fuzz` does by the hundred thousand. */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { kinds } from './kinds.js';

const RUNS: Readonly<Record<string, number>> = {
  scenario: 100,
  map: 40,
  sales: 8,
  counts: 200,
  listed: 100,
  sheet: 10,
  sites: 20,
  letter: 10,
};

describe('spoilt files are refused with reasons or answered truly', () => {
  it.each(Object.keys(kinds))('%s', async (kind) => {
    const { texts, holds } = kinds[kind]!;
    await fc.assert(
      fc.asyncProperty(texts, async (text) => void (await holds(text))),
      {
        seed: 7,
        numRuns: RUNS[kind]!,
      },
    );
  });
});

/** The plain floor against the days worked by hand, before it is used to judge anything. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ListedDay } from '../../src/cafe/listed-day.js';
import type { NeutralConfig } from './neutral-config.js';
import { modelFromNeutral } from './neutral-config.js';
import { plainFloor } from './plain-floor.js';

interface Expected {
  readonly peaks: Readonly<Record<string, number>>;
  readonly short: Readonly<Record<string, number>>;
  readonly firstShortMinute: number | null;
  readonly turnedAway: { readonly left: number; readonly takeawayInstead: number };
  readonly unserved: number;
}
interface WorkedDay {
  readonly name: string;
  readonly rule: string;
  readonly config: NeutralConfig;
  readonly day: ListedDay;
  readonly expected: Expected;
  readonly stock: Readonly<Record<string, number>>;
  readonly expectedWithStock: Expected;
}

// Worked by hand by the authors of the rules; they pin what the rules mean, not that cafés behave so.
const worked = JSON.parse(
  readFileSync(new URL('../../shared/checks/tiny-days.json', import.meta.url), 'utf8'),
) as { days: WorkedDay[] };

describe('the plain floor', () => {
  for (const { name, rule, config, day, expected, stock, expectedWithStock } of worked.days) {
    const model = modelFromNeutral(config);
    const found = (pieces: number[] | null): Expected => {
      const { peaks, short, firstShortMs, left, takeawayInstead, unserved } = plainFloor(
        model,
        day,
        pieces,
      );
      const byWare = (counts: readonly number[]): Record<string, number> =>
        Object.fromEntries(model.ware.map(({ id }, w) => [id, counts[w]!]));
      return {
        peaks: byWare(peaks),
        short: byWare(short),
        firstShortMinute: firstShortMs === null ? null : firstShortMs / 60_000,
        turnedAway: { left, takeawayInstead },
        unserved,
      };
    };
    it(`${name}: ${rule}`, () => {
      expect(found(null)).toEqual(expected);
      expect(found(model.ware.map(({ id }) => stock[id]!))).toEqual(expectedWithStock);
    });
  }
});

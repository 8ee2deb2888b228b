/** Dirty pieces counted at a few moments, held against simulated mornings of the house as it is now measured. */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { EveryStep } from '../../cafe/looking-on.js';
import type { CafeModel } from '../../cafe/model.js';
import { BENCH, DIRTY_TABLE, RACKED } from '../../cafe/places.js';
import { clockText, type Sheet } from '../../measuring/sheet.js';

const MINUTE = 60_000;
const DAYS = 400;
/** Counts that so many of 1,000 mornings reach or pass, either way, are worth a look: with the six counts of three moments, one house in 25 by chance; with more moments fewer. */
const RARE = 3.5 / 1000;
const MOMENTS = 3;

interface Span {
  readonly low: number;
  readonly high: number;
}

/** Where nearly all simulated mornings have their dirty pieces at a moment from opening. */
export function dirtyAt(
  model: CafeModel,
  seed: string,
  atMs: number,
  days = DAYS,
  moments = MOMENTS,
): { readonly tables: Span; readonly bench: Span } {
  const [floor, demand, day] = [new Floor(model, seed), new Demand(model, seed), new Day()];
  const [tables, bench]: [number[], number[]] = [[], []];
  const look = new EveryStep(
    1,
    atMs,
    (_, { ledger }) => {
      tables.push(ledger.at(DIRTY_TABLE));
      bench.push(ledger.at(BENCH) + ledger.at(RACKED));
    },
    atMs,
  );
  for (let number = 0; number < days; number += 1) {
    look.rewind();
    const before = tables.length;
    demand.draw(number, day);
    floor.run(day, number, null, look);
    // A day that is over by then has nothing dirty left.
    if (tables.length === before) {
      tables.push(0);
      bench.push(0);
    }
  }
  const rare = (RARE * MOMENTS) / Math.max(MOMENTS, moments);
  return { tables: spanOf(tables, rare), bench: spanOf(bench, rare) };
}

function spanOf(counts: readonly number[], rare: number): Span {
  const sorted = counts.toSorted((a, b) => a - b);
  const cut = Math.floor(rare * sorted.length);
  return { low: sorted[cut]!, high: sorted[sorted.length - 1 - cut]! };
}

/** One sentence on all counts, or none where nothing was counted. */
export function dirtyNotes(
  dirty: Sheet['dirty'],
  model: CafeModel,
  openingMinute: number,
  seed: string,
): string[] {
  if (dirty.length === 0) return [];
  const odd: string[] = [];
  const texts = dirty.map(({ minute, tables, bench }) => {
    const at = dirtyAt(
      model,
      seed,
      Math.max(0, minute - openingMinute) * MINUTE,
      DAYS,
      dirty.length,
    );
    const clock = clockText(minute);
    const held = (count: number, { low, high }: Span, where: string): string => {
      if (count < low) odd.push(`fewer ${where} at ${clock}`);
      if (count > high) odd.push(`more ${where} at ${clock}`);
      return `${count} ${where} (${low} to ${high})`;
    };
    return `${clock} ${held(tables, at.tables, 'on tables')}, ${held(bench, at.bench, 'waiting to be washed')}`;
  });
  const counted = `Dirty pieces counted, and in brackets what nearly all of ${DAYS} simulated mornings of the house as now measured have: ${texts.join('; ')}.`;
  return [
    odd.length === 0
      ? `${counted} The counts agree with the rush.`
      : `${counted} There were ${odd.join(', ')} than the rush has: look at rounds, trips and waits of racks, or at who else clears and washes.`,
  ];
}

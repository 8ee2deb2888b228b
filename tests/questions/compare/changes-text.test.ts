import { describe, expect, it } from 'vitest';
import type { AtBest, Changes } from '../../../src/questions/compare/answer.js';
import { changesText, habitText } from '../../../src/questions/compare/changes-text.js';
import { formatsFor } from '../../../src/tell/format.js';
import { english } from '../../../src/tell/words.js';

const formats = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: null });
const telling = {
  formats,
  whole: (amount: number) => `€${amount.toFixed(0)}`,
  name: (id: string) => id,
  days: 'mornings',
};
const none: Changes = { pieces: 0, ware: 0, staff: 0, now: 0, racks: 0, year: 0 };
const text = (changes: Partial<Changes>): string => changesText({ ...none, ...changes }, telling);

describe('what a change does', () => {
  it('names racks where they alone are bought or spared beside the pieces: the figure is no sum of both', () => {
    expect(text({ pieces: 63, ware: 176, now: -28, racks: -28 })).toBe(
      'saves €28 of racks, but needs 63 more pieces (€176)',
    );
    expect(text({ pieces: -14, ware: -34, now: 78, racks: 78 })).toBe(
      'saves 14 pieces (€34), but costs €78 of racks',
    );
    expect(text({ now: 6028, racks: 28 })).toBe('saves nothing, and costs €6028 now');
  });
});

describe('a better habit', () => {
  const best: AtBest = { waitMinutes: 3, from: null, edges: [], total: 0, againstBase: null };
  const habit = (of: Partial<AtBest>): string =>
    habitText({ ...best, ...of }, formats).replaceAll('\u00A0', ' ');

  it('is a wait alone, or a filling and then a wait', () => {
    expect(habit({})).toBe('let a rack that is not full wait 3.0 min');
    expect(habit({ from: 0.9, edges: ['shortestWait', 'fullest'] })).toBe(
      'start a rack that is not full only once it is 90 % full (the fullest we tried) and has waited 3.0 min (the shortest we tried)',
    );
  });

  it('is not said to cost nothing, as it may need more pieces', () => {
    const said = english.compare.habitsFirst('wait', 'needs 63 more pieces', '€1', '€0', '€2', '8');
    expect(said).toMatch(/^First change a habit: wait\. /);
    expect(said).not.toContain('costs nothing');
  });
});

/** How long a wait still is, from what has been done. */
import { describe, expect, it } from 'vitest';
import { begun, further, secondsLeft, waitInWords } from '../../src/page/wait.js';
import { formatsFor } from '../../src/tell/format.js';
import { english } from '../../src/tell/words.js';

const formats = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: null });
const told = (wait: Parameters<typeof waitInWords>[0], now: number): string =>
  english.page.workingDays(...waitInWords(wait, formats, now));

describe('a wait', () => {
  it('counts days, and says what is left once it is known how many there may be', () => {
    const first = further(begun(1000), { kind: 'progress', days: 500 });
    expect(told(first, 2000)).toBe('Working it out: 500 days run so far.');
    // 500 days took a second, and at most 4,500 more follow.
    const known = further(first, { kind: 'progress', days: 0, most: 4500 });
    expect(secondsLeft(known, 2000)).toBe(9);
    expect(told(known, 2000)).toBe('Working it out: 500 of up to 5,000 days, up to 9 s left.');
    // What was said before of how many follow no longer counts.
    const fewer = further(known, { kind: 'progress', days: 500, most: 1000 });
    expect(told(fewer, 3000)).toBe('Working it out: 1,000 of up to 2,000 days, up to 2 s left.');
    expect(told({ ...fewer, most: 1_000_000 }, 3000)).toContain('up to 34 min left');
    expect(told({ ...fewer, most: 900 }, 3000)).toBe('Working it out: 1,000 of up to 900 days.');
  });
});

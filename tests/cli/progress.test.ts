import { describe, expect, it } from 'vitest';
import { oneLine, type Bar } from '../../src/cli/progress.js';

/** What is said of work of so many days, each of so many ms, in parts of ten; the first second goes into warming up. */
function saidOf(days: number, msADay: number, begin: (bar: Bar) => void = () => {}): string[] {
  const lines: string[] = [];
  let used = 0;
  const bar = oneLine(
    'running days',
    'days',
    (line) => lines.push(line),
    () => used,
  );
  bar.ahead(days);
  begin(bar);
  for (let done = 0; done < days; done += 10) {
    used += done === 0 ? 1 : (10 * msADay) / 1000;
    bar.add(10);
  }
  return lines;
}

describe('where no terminal shows a bar', () => {
  it('long work is told once, with how much there is', () => {
    const [line, ...more] = saidOf(16_000, 1);
    expect(more).toEqual([]);
    expect(line).toMatch(/^running days: 1,0\d0 of at least 16,000 days/);
  });

  it('a number of days that is the most says so', () =>
    expect(saidOf(2000, 20, (bar) => bar.expect(2000))[0]).toMatch(/of up to 2,000 days/));

  it.each([
    [16_000, 0.5],
    [300, 30],
  ])('%i days of %d ms are not long, though the first take a second', (days, ms) =>
    expect(saidOf(days, ms)).toEqual([]),
  );
});

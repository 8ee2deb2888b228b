/** Plain discs against the best-known packings of equal circles in a square (E. Specht's table). */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { piecesPerRack } from '../../src/racking/layout.js';
import { disc } from './some.js';

const table = readFileSync(
  new URL('../../shared/checks/circles-in-square.csv', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([n, radius]) => ({ n: Number(n), radius: Number(radius) }));

describe.each([
  { side: 460, gap: 0 },
  { side: 337.5, gap: 4.2 },
])('discs in a square of $side mm with a gap of $gap mm', ({ side, gap }) => {
  const rack = { id: 'open', kind: 'open' as const, usableMm: side, clearanceMm: gap };
  // n discs fit iff (D + gap) / (2 (side - gap)) ≤ radius.
  const widest = (radius: number): number => 2 * (side - gap) * radius - gap;

  test.each(table)('$n: at most 3 below the best known', ({ n, radius }) => {
    expect(piecesPerRack(disc(widest(radius)), rack)).toBeGreaterThanOrEqual(n - 3);
  });

  test.each(table)('$n: never more', ({ n, radius }) => {
    expect(piecesPerRack(disc(widest(radius) * (1 + 1e-7)), rack)).toBeLessThan(n);
  });

  // Where the table's best is itself a grid or staggered rows, it is met.
  test.each([1, 2, 4, 5, 9, 12, 16, 18, 20, 25, 27, 30, 36])('%i: as many', (n) => {
    const { radius } = table.find((row) => row.n === n)!;
    expect(piecesPerRack(disc(widest(radius) * (1 - 1e-12)), rack)).toBe(n);
  });
});

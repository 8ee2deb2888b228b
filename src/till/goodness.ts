/**
 * How well the fit holds: do parties within a slot scatter as a Poisson process does once the day's
 * level is taken out, and do the daily totals follow the fitted distribution?
 */
import { mean, sampleVariance } from 'simple-statistics';
import { square } from '../elementary/powers.js';
import { chiSquareTail, gammaTail } from './chi-square.js';
import { mixedPoisson } from './mixed-poisson.js';

export interface TableTest {
  /** Pearson's X² of the table of days by slots. */
  readonly statistic: number;
  /** Mean and variance of X² under the fit, given the totals of days and slots. */
  readonly expected: number;
  readonly variance: number;
  /** Chance of an X² as large or larger if the fit is true. */
  readonly p: number;
}

export interface TotalsTest {
  readonly statistic: number;
  readonly freedom: number;
  readonly p: number;
}

export interface Goodness {
  /** Variance over mean of the counts of a slot over the days, all slots weighed by their mean. */
  readonly withinSlots: number;
  /** The same with the day's level taken out: X² over its expected value. 1 is Poisson. */
  readonly beyondDayLevel: number | null;
  readonly table: TableTest | null;
  /** Daily totals against the fitted distribution; null with too few days to part them into classes. */
  readonly totals: TotalsTest | null;
}

/**
 * Test that days differ in level alone: the counts of a day fall on the slots in the same proportions
 * every day, as they do when parties come by a Poisson process with one factor for the whole day.
 *
 * X² with sparse cells is not chi-square; its exact mean and variance given both margins are those of
 * Haldane (Biometrika 31, 1940) in the form of Dawson (Biometrika 41, 1954), and a gamma distribution
 * with these moments gives p. Days and slots without a party say nothing and are left out.
 *
 * @returns null for fewer than two days or slots with parties.
 */
export function testTable(table: readonly (readonly number[])[]): TableTest | null {
  const days = table.filter((row) => row.some((count) => count > 0));
  const rowTotals = days.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columnTotals = (days[0] ?? []).map((_, slot) =>
    days.reduce((sum, row) => sum + row[slot]!, 0),
  );
  const n = rowTotals.reduce((sum, total) => sum + total, 0);
  const filled = columnTotals.filter((total) => total > 0);
  const r = rowTotals.length;
  const c = filled.length;
  if (r < 2 || c < 2 || n < 5) return null;

  let statistic = 0;
  days.forEach((row, day) =>
    row.forEach((count, slot) => {
      const expected = (rowTotals[day]! * columnTotals[slot]!) / n;
      if (expected > 0) statistic += square(count - expected) / expected;
    }),
  );
  const inverse = (totals: readonly number[]): number =>
    totals.reduce((sum, total) => sum + 1 / total, 0);
  const spread = (k: number): number => ((k - 1) * (n - k)) / (n - 1);
  const uneven = (k: number, totals: readonly number[]): number =>
    (n * inverse(totals) - k * k) / (n - 2);
  const [v1, v2] = [spread(r), spread(c)];
  const [w1, w2] = [uneven(r, rowTotals), uneven(c, filled)];
  const expected = (n * (r - 1) * (c - 1)) / (n - 1);
  const spreadOfX2 = ((2 * n) / (n - 3)) * (v1 - w1) * (v2 - w2) + ((n * n) / (n - 1)) * w1 * w2;
  return {
    statistic,
    expected,
    variance: spreadOfX2,
    p: spreadOfX2 > 0 ? gammaTail(statistic, expected, spreadOfX2) : 1,
  };
}

const FEWEST_IN_A_CLASS = 5;

/**
 * Chi-square of daily totals against the fitted distribution, in classes that expect five days or more;
 * mean and spread were fitted, so two degrees of freedom go. Null when fewer than four classes come out.
 */
export function testTotals(totals: readonly number[], cv: number): TotalsTest | null {
  const chances = mixedPoisson(mean([...totals]), cv);
  const bounds: number[] = [];
  const expected: number[] = [];
  let sum = 0;
  chances.forEach((chance, total) => {
    sum += chance * totals.length;
    if (sum >= FEWEST_IN_A_CLASS) {
      bounds.push(total);
      expected.push(sum);
      sum = 0;
    }
  });
  if (expected.length < 4) return null;
  // What is left beyond the last bound belongs to the last class.
  bounds[bounds.length - 1] = Infinity;
  expected[expected.length - 1]! += totals.length - expected.reduce((all, part) => all + part, 0);
  let statistic = 0;
  bounds.forEach((bound, at) => {
    const observed = totals.filter(
      (total) => total <= bound && (at === 0 || total > bounds[at - 1]!),
    ).length;
    statistic += square(observed - expected[at]!) / expected[at]!;
  });
  const freedom = expected.length - 3;
  return { statistic, freedom, p: chiSquareTail(statistic, freedom) };
}

/** All measures, for parties by day (rows) and slot, under the fitted day factor. */
export function goodness(table: readonly (readonly number[])[], cv: number): Goodness {
  const columns = table[0]!.map((_, slot) => table.map((row) => row[slot]!));
  const test = testTable(table);
  return {
    withinSlots:
      columns.reduce((sum, column) => sum + sampleVariance(column), 0) /
      columns.reduce((sum, column) => sum + mean(column), 0),
    beyondDayLevel: test ? test.statistic / test.expected : null,
    table: test,
    totals: testTotals(
      table.map((row) => row.reduce((sum, count) => sum + count, 0)),
      cv,
    ),
  };
}

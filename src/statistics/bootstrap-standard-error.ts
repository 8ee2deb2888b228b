import { sampleStandardDeviation } from 'simple-statistics';

/**
 * The bootstrap standard error of a statistic of n exchangeable days (Efron, Annals of Statistics 7, 1979): the
 * standard deviation of the statistic over samples of n days drawn from them with replacement.
 *
 * @param n number of days, ≥ 1
 * @param statistic computes the value from the indices of the days drawn; must not keep the array
 * @param replicates number of samples, ≥ 2
 * @param uniform a source of independent numbers in [0, 1)
 * @throws RangeError for fewer days or samples
 */
export function bootstrapStandardError(
  n: number,
  statistic: (days: Int32Array) => number,
  replicates: number,
  uniform: () => number,
): number {
  if (!(Number.isInteger(n) && n >= 1 && Number.isInteger(replicates) && replicates >= 2)) {
    throw new RangeError(
      `a bootstrap needs at least one day and two samples; given ${n} days, ${replicates} samples`,
    );
  }
  const days = new Int32Array(n);
  const values: number[] = [];
  for (let replicate = 0; replicate < replicates; replicate++) {
    for (let i = 0; i < n; i++) days[i] = Math.floor(uniform() * n);
    values.push(statistic(days));
  }
  return sampleStandardDeviation(values);
}

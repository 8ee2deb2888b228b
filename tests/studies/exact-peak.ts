/**
 * The exact law of the largest number of pieces off the shelf: single guests by a Poisson process whose rate changes in
 * steps, a piece each, back after an exponential time. The chance that the number never passes N is that of a Markov chain
 * that is killed on leaving N, by uniformization (Jensen 1953; W. J. Stewart, Introduction to the Numerical Solution of
 * Markov Chains, 1994, ch. 8).
 */
export interface Loop {
  readonly arrivals: readonly { readonly minutes: number; readonly partiesPerMinute: number }[];
  readonly loopMeanMinutes: number;
}

/** Whether a published house is one. */
export const isLoop = <T extends object>(house: T): house is T & Loop => 'loopMeanMinutes' in house;

/** Terms of the Poisson series stop where what is left is below this. */
const LEFT_OUT = 1e-13;

/** P(peak ≤ most), 0 to 1. */
export function chancePeakAtMost({ arrivals, loopMeanMinutes }: Loop, most: number): number {
  let state = Float64Array.from({ length: most + 1 }, (_, pieces) => (pieces === 0 ? 1 : 0));
  for (const { minutes, partiesPerMinute } of arrivals) {
    const rate = partiesPerMinute + most / loopMeanMinutes;
    const step = (from: Float64Array): Float64Array<ArrayBuffer> => {
      const to = new Float64Array(most + 1);
      for (let pieces = 0; pieces <= most; pieces += 1) {
        const back = pieces / loopMeanMinutes;
        to[pieces]! += from[pieces]! * (1 - (partiesPerMinute + back) / rate);
        if (pieces > 0) to[pieces - 1]! += (from[pieces]! * back) / rate;
        if (pieces < most) to[pieces + 1]! += (from[pieces]! * partiesPerMinute) / rate;
      }
      return to;
    };
    const mean = rate * minutes;
    const sum = new Float64Array(most + 1);
    for (let n = 0, log = -mean, seen = 0; seen < 1 - LEFT_OUT; n += 1) {
      const weight = Math.exp(log);
      for (let pieces = 0; pieces <= most; pieces += 1) sum[pieces]! += weight * state[pieces]!;
      seen += weight;
      state = step(state);
      log += Math.log(mean) - Math.log(n + 1);
      // Rounding may keep the sum of the weights just below its end.
      if (n > mean + 20 * Math.sqrt(mean) + 50) break;
    }
    state = sum;
  }
  return state.reduce((sum, chance) => sum + chance, 0);
}

/** P(peak ≤ 0), P(peak ≤ 1) and so on, until it is 1 to 12 digits. */
export function lawOfPeak(loop: Loop): number[] {
  const law: number[] = [];
  do law.push(chancePeakAtMost(loop, law.length));
  while (law.at(-1)! < 1 - 1e-12);
  return law;
}

/** Number of the first value of an ascending list that is above `rank`. */
export function firstAbove(law: readonly number[], rank: number): number {
  let [low, high] = [0, law.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (law[middle]! > rank) high = middle;
    else low = middle + 1;
  }
  return low;
}

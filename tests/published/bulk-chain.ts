/**
 * The general bulk service queue M/D^[a,b]/1 solved from its embedded Markov chain (Neuts' general bulk
 * service rule: a free server starts as soon as `a` wait, and takes at most `b`).
 *
 * The chain is looked at when a service ends. From n waiting pieces the server takes min(n, b), or waits for the
 * a-th and takes a; those who come during the service (Poisson) are the next n, with those left behind. Means over
 * time follow by renewal reward over one round of the chain.
 */

export interface BulkMeans {
  /** Mean wait from arrival to start of service, in units of the service time. */
  readonly wait: number;
  readonly meanBatch: number;
}

/** @param lambda arrivals in one (constant) service time, below b */
export function bulkMeans(lambda: number, a: number, b: number): BulkMeans {
  const states = Math.ceil(b + lambda + 40 * Math.sqrt(b + lambda)) * 4;
  const arrivals = poisson(lambda, states);
  let p = new Float64Array(states).fill(1 / states);
  for (let round = 0, moved = 1; moved > 1e-14 && round < 200_000; round += 1) {
    const next = new Float64Array(states);
    for (let n = 0; n < states; n += 1) {
      const left = Math.max(0, n - b);
      for (let k = 0; k + left < states; k += 1) next[k + left]! += p[n]! * arrivals[k]!;
    }
    const total = next.reduce((sum, one) => sum + one, 0);
    moved = 0;
    for (let n = 0; n < states; n += 1) {
      next[n]! /= total;
      moved += Math.abs(next[n]! - p[n]!);
    }
    p = next;
  }
  let [batch, time, queue] = [0, 0, 0];
  p.forEach((share, n) => {
    batch += share * Math.max(a, Math.min(n, b));
    // Idle until the a-th has come: one gap with n waiting, one with n + 1, up to a - 1.
    for (let waiting = n; waiting < a; waiting += 1) {
      time += share / lambda;
      queue += (share * waiting) / lambda;
    }
    time += share;
    queue += share * (Math.max(0, n - b) + lambda / 2);
  });
  return { wait: queue / time / lambda, meanBatch: batch };
}

function poisson(mean: number, states: number): Float64Array {
  const p = new Float64Array(states);
  p[0] = Math.exp(-mean);
  for (let k = 1; k < states; k += 1) p[k] = (p[k - 1]! * mean) / k;
  return p;
}

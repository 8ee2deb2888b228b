import { betaQuantile } from './beta-quantile.js';

/** A share that was seen, between the ends of its confidence interval. */
export interface ShareInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
}

/**
 * The exact interval for a share of which `successes` in `trials` were seen (Clopper & Pearson, Biometrika 26, 1934):
 * each end is the share at which a result so far out would be seen with chance (1 − confidence)/2.
 * It covers the true share at least as often as it says, at any number of trials; with none seen the low end is 0,
 * with all seen the high end is 1.
 *
 * @throws RangeError unless 0 ≤ successes ≤ trials are whole, trials > 0 and 0 < confidence < 1
 */
export function exactBinomialInterval(
  successes: number,
  trials: number,
  confidence = 0.95,
): ShareInterval {
  const whole = Number.isInteger(successes) && Number.isInteger(trials);
  if (
    !whole ||
    trials < 1 ||
    successes < 0 ||
    successes > trials ||
    !(confidence > 0 && confidence < 1)
  ) {
    throw new RangeError(
      `an interval needs 0 ≤ successes ≤ trials and 0 < confidence < 1; given ${successes} of ${trials} at ${confidence}`,
    );
  }
  const tail = (1 - confidence) / 2;
  const failures = trials - successes;
  return {
    share: successes / trials,
    low: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    // Through the failures, so that an end near 1 keeps its digits.
    high: failures === 0 ? 1 : 1 - betaQuantile(tail, failures, successes + 1),
    confidence,
  };
}

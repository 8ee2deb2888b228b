import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { logGamma } from './log-gamma.js';

/** Stands in for a zero denominator in Lentz's recurrence. */
const TINY = 1e-300;
const PRECISION = 1e-16;

/**
 * The regularised incomplete beta function I_x(a, b): the chance that a beta(a, b) variable is at most x.
 * Binomial and Student t probabilities are both this function, so it is the only special function of the project.
 *
 * Evaluated by its continued fraction (NIST Digital Library of Mathematical Functions, 8.17.22) with Lentz's
 * recurrence, on the side where the fraction converges fast; the other side follows from
 * I_x(a, b) = 1 − I_{1−x}(b, a) (DLMF 8.17.4). About √max(a, b) terms are needed.
 *
 * Our own rather than a library's because the ones that are accurate build code from strings when they are
 * loaded, which the page's content policy forbids, and weigh 185 kB; they serve as oracles in the tests.
 *
 * @param x a number in [0, 1]
 * @param a first shape, > 0
 * @param b second shape, > 0
 * @throws RangeError outside those ranges
 */
export function regularisedIncompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && a > 0 && b > 0)) {
    throw new RangeError(
      `the incomplete beta function needs 0 ≤ x ≤ 1 and a, b > 0; given x = ${x}, a = ${a}, b = ${b}`,
    );
  }
  if (x === 0 || x === 1) return x;
  if (x > (a + 1) / (a + b + 2)) return 1 - lowerTail(1 - x, b, a);
  return lowerTail(x, a, b);
}

function lowerTail(x: number, a: number, b: number): number {
  const logFront = logGamma(a + b) - logGamma(a) - logGamma(b) + a * log(x) + b * log1p(-x);
  return (exp(logFront) * continuedFraction(x, a, b)) / a;
}

/** 1/(1 + d₁/(1 + d₂/(1 + …))) of DLMF 8.17.22, two terms a round. */
function continuedFraction(x: number, a: number, b: number): number {
  const rounds = 200 + 20 * Math.sqrt(Math.max(a, b));
  let numerator = 1;
  let denominator = away(1 - ((a + b) * x) / (a + 1));
  let value = 1 / denominator;
  for (let m = 1; m <= rounds; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    denominator = away(1 + even / denominator);
    numerator = away(1 + even / numerator);
    value *= numerator / denominator;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    denominator = away(1 + odd / denominator);
    numerator = away(1 + odd / numerator);
    const factor = numerator / denominator;
    value *= factor;
    if (Math.abs(factor - 1) < PRECISION) break;
  }
  return value;
}

function away(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}

/**
 * How far an interval must reach when several differences are looked at several times.
 *
 * Repeated confidence intervals (C. Jennison and B. W. Turnbull, "Interim analyses: the repeated confidence
 * interval approach", Journal of the Royal Statistical Society B 51, 1989): one constant critical value c for all
 * looks, chosen so that the chance that any of the intervals of one difference misses the truth is α. They hold
 * whatever rule says when to stop. c comes from the recursion of P. Armitage, C. K. McPherson and B. C. Rowe,
 * "Repeated significance tests on accumulating data", JRSS A 132, 1969 (for equal looks c is Pocock's constant).
 * Of m differences each gets α/m (Bonferroni; O. J. Dunn, Journal of the American Statistical Association 56, 1961),
 * which is right however they hang together, as they do under common random numbers. Where the standard error is itself
 * estimated, Student's t takes the normal's place at the same nominal level (Jennison and Turnbull, "Group
 * Sequential Methods", 2000, section 11.5).
 */
import { exp } from '../elementary/exp.js';
import { normalQuantile } from '../engine/normal.js';
import { studentTQuantile } from '../statistics/student-t-quantile.js';
import { normalUpper } from './normal-upper.js';

/** Points of the grid that the recursion runs on; odd, for Simpson's rule. */
const POINTS = 121;
/** Where a normal law is over, in standard deviations: the far end of a boundary with one side. */
const FAR = 8;

const density = (z: number): number => exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Chance that a standardised sum with no drift is beyond ±c (above c, with one side) at any of the looks.
 * @param information days, or any multiple of them, at each look; rising
 */
export function chanceOfCrossing(
  c: number,
  information: readonly number[],
  sides: 1 | 2 = 2,
): number {
  checkLooks(information);
  let [grid, weights]: [number[], number[]] = [[0], [1]];
  let before = 0;
  let crossed = 0;
  for (const [look, now] of information.entries()) {
    const step = Math.sqrt(now - before);
    const edge = c * Math.sqrt(now);
    for (const [at, from] of grid.entries())
      crossed +=
        weights[at]! *
        (normalUpper((edge - from) / step) + (sides === 2 ? normalUpper((edge + from) / step) : 0));
    if (look === information.length - 1) break;
    const least = sides === 2 ? -edge : -FAR * Math.sqrt(now);
    const width = (edge - least) / (POINTS - 1);
    const next = Array.from({ length: POINTS }, (_, at) => least + at * width);
    const nextWeights = next.map((to, at) => {
      let value = 0;
      for (const [index, from] of grid.entries())
        value += (weights[index]! * density((to - from) / step)) / step;
      const simpson = at === 0 || at === POINTS - 1 ? 1 : at % 2 === 1 ? 4 : 2;
      return (value * simpson * width) / 3;
    });
    [grid, weights, before] = [next, nextWeights, now];
  }
  return crossed;
}

/** Constants worked out before: the same few are asked for with every comparison. */
const known = new Map<string, number>();

/**
 * The constant c at which the chance of crossing at any look is α.
 * @throws RangeError unless 0 < α < 1 and the information rises from above 0
 */
export function criticalValue(
  alpha: number,
  information: readonly number[],
  sides: 1 | 2 = 2,
): number {
  checkLooks(information);
  if (!(alpha > 0 && alpha < 1)) throw new RangeError(`an error needs 0 < α < 1; given ${alpha}`);
  const once = -normalQuantile(alpha / sides);
  if (information.length === 1) return once;
  const key = `${alpha}/${information.join()}/${sides}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  let [low, high] = [once, -normalQuantile(alpha / sides / information.length)];
  while (high - low > 1e-5) {
    const middle = (low + high) / 2;
    if (chanceOfCrossing(middle, information, sides) > alpha) low = middle;
    else high = middle;
  }
  known.set(key, (low + high) / 2);
  return (low + high) / 2;
}

/**
 * Standard errors that each of `differences` two-sided intervals reaches to either side, so that with chance
 * `confidence` all of them hold at all looks.
 * @param information days at each look that may be taken
 * @param freedom degrees of freedom of the standard error
 */
export function reachOfMany(
  confidence: number,
  differences: number,
  information: readonly number[],
  freedom: number,
): number {
  const normal = criticalValue((1 - confidence) / Math.max(1, differences), information);
  return studentTQuantile(1 - normalUpper(normal), freedom);
}

function checkLooks(information: readonly number[]): void {
  if (information.length === 0 || information.some((now, at) => now <= (information[at - 1] ?? 0)))
    throw new RangeError(
      `looks need information that rises from above 0; given ${information.join(', ')}`,
    );
}

/**
 * How long something takes: a plain-data law, and drawing from it.
 *
 * Every law is in milliseconds. Draws are rounded to whole milliseconds, half up, so that ties in the
 * calendar are real ties. All laws but gamma use one uniform a draw (inversion): when a rate or a mean
 * changes between two alternatives, the same guest keeps the same luck.
 */
import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { square } from '../elementary/powers.js';
import type { Stream } from './streams.js';
import { normalQuantile } from './normal.js';

export type DurationLaw =
  | { readonly law: 'constant'; readonly ms: number }
  | { readonly law: 'exponential'; readonly meanMs: number }
  | { readonly law: 'lognormal'; readonly meanMs: number; readonly sdMs: number }
  | { readonly law: 'gamma'; readonly meanMs: number; readonly sdMs: number }
  | { readonly law: 'measured'; readonly valuesMs: readonly number[] };

/** A standard deviation below this share of its mean is none: far below a millisecond, and its square would vanish. */
export const LEAST_SPREAD = 1e-12;

/** A law made ready for drawing: parameters worked out once. */
export class Duration {
  private readonly kind: 0 | 1 | 2 | 3 | 4;
  private readonly a: number;
  private readonly b: number;
  private readonly values: Float64Array;

  constructor(law: DurationLaw) {
    let [kind, a, b]: [0 | 1 | 2 | 3 | 4, number, number] = [0, 0, 0];
    this.values = Float64Array.from(law.law === 'measured' ? law.valuesMs : []);
    switch (law.law) {
      case 'constant':
        a = wholeMs(law.ms);
        break;
      case 'exponential':
        [kind, a] = [1, law.meanMs];
        break;
      case 'lognormal': {
        const spread = log1p(square(law.sdMs / law.meanMs));
        [kind, a, b] = [2, log(law.meanMs) - spread / 2, Math.sqrt(spread)];
        break;
      }
      case 'gamma':
        [kind, a, b] = [3, square(law.meanMs / law.sdMs), square(law.sdMs) / law.meanMs];
        break;
      case 'measured':
        kind = 4;
        break;
    }
    // A spread or a mean of nothing is a constant.
    if (
      (law.law === 'lognormal' || law.law === 'gamma') &&
      (law.sdMs <= LEAST_SPREAD * law.meanMs || law.meanMs === 0)
    )
      [kind, a] = [0, wholeMs(law.meanMs)];
    this.kind = kind;
    this.a = a;
    this.b = b;
  }

  /** Whether it always takes the same time; no random number is then used. */
  get constant(): boolean {
    return this.kind === 0;
  }

  /** One draw, whole milliseconds. */
  draw(stream: Stream): number {
    switch (this.kind) {
      case 0:
        return this.a;
      case 1:
        return wholeMs(this.a * stream.exponential());
      case 2:
        return wholeMs(exp(this.a + this.b * normalQuantile(stream.uniform())));
      case 3:
        return wholeMs(this.b * standardGamma(this.a, stream));
      default:
        return wholeMs(this.values[Math.floor(stream.uniform() * this.values.length)]!);
    }
  }
}

/** Mean of a law, ms. */
export function meanMs(law: DurationLaw): number {
  if (law.law === 'constant') return law.ms;
  if (law.law === 'measured')
    return law.valuesMs.reduce((sum, value) => sum + value, 0) / law.valuesMs.length;
  return law.meanMs;
}

/** The law with every duration times `factor`: its kind and the ratio of its spread to its mean stay. */
export function scaledLaw(law: DurationLaw, factor: number): DurationLaw {
  switch (law.law) {
    case 'constant':
      return { ...law, ms: law.ms * factor };
    case 'exponential':
      return { ...law, meanMs: law.meanMs * factor };
    case 'measured':
      return { ...law, valuesMs: law.valuesMs.map((ms) => ms * factor) };
    default:
      return { ...law, meanMs: law.meanMs * factor, sdMs: law.sdMs * factor };
  }
}

/** Rounded to whole milliseconds, half up. */
export function wholeMs(ms: number): number {
  return Math.floor(ms + 0.5);
}

/**
 * A gamma draw with scale 1: G. Marsaglia and W. Tsang, "A simple method for generating gamma
 * variables", ACM TOMS 26(3), 2000; shapes below 1 by their boost.
 */
export function standardGamma(shape: number, stream: Stream): number {
  if (shape < 1) return standardGamma(shape + 1, stream) * exp(-stream.exponential() / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalQuantile(stream.uniform());
    const root = 1 + c * x;
    const v = root * root * root;
    const u = stream.uniform();
    // Their squeeze: nearly every draw is accepted without a logarithm.
    if (v > 0 && (u < 1 - 0.0331 * square(x * x) || accepted(u, x, v, d))) return d * v;
  }
}

const accepted = (u: number, x: number, v: number, d: number): boolean =>
  log(u) < 0.5 * x * x + d - d * v + d * log(v);

/**
 * What must be the same in every engine, as digests: values of functions over many arguments, many draws of
 * each law, days of guests, and answers of small scenarios. Plain JavaScript, so that a browser can run it too.
 */
import { normalUpper } from '../../src/comparing/normal-upper.js';
import { atan2, cos, sin } from '../../src/elementary/angles.js';
import { exp, expm1 } from '../../src/elementary/exp.js';
import { atanh, tanh } from '../../src/elementary/hyperbolic.js';
import { log, log1p } from '../../src/elementary/log.js';
import { cbrt, hypot, power } from '../../src/elementary/powers.js';
import { Duration, standardGamma, type DurationLaw } from '../../src/engine/durations.js';
import { normalQuantile } from '../../src/engine/normal.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { betaQuantile } from '../../src/statistics/beta-quantile.js';
import { binomialProbability } from '../../src/statistics/binomial-probability.js';
import { exactBinomialTest } from '../../src/statistics/exact-binomial-test.js';
import { logGamma } from '../../src/statistics/log-gamma.js';
import { rankCorrelation } from '../../src/statistics/rank-correlation.js';
import { studentTQuantile } from '../../src/statistics/student-t-quantile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { inThisThread } from '../../src/cafe/runner.js';
import { scenarioStudy } from '../../src/questions/size/scenario-study.js';
import { mixedPoisson } from '../../src/till/mixed-poisson.js';
import { SCENARIOS } from './conformance-scenarios.js';

const ARGUMENTS = 20_000;
const DRAWS = 50_000;
/** Days on which a small answer is sized, and on which it is certified. */
const DAYS = 150;

type Uniform = () => number;

/** By name: a value from uniform numbers. */
const FUNCTIONS: Readonly<Record<string, (u: Uniform) => number>> = {
  'log of shares': (u) => log(u()),
  'log near 1': (u) => log(1 + (u() - 0.5) / 50),
  'log over all numbers': (u) => log(u() * power(2, Math.floor(2040 * u()) - 1020)),
  log1p: (u) => log1p(2 * u() - 1) + log1p(u() * 1e-6),
  exp: (u) => exp(1400 * (u() - 0.5)),
  expm1: (u) => expm1(20 * (u() - 0.5)) + expm1(u() * 1e-6),
  sin: (u) => sin(200 * (u() - 0.5)),
  cos: (u) => cos(200 * (u() - 0.5)),
  atan2: (u) => atan2(u() - 0.5, u() - 0.5),
  tanh: (u) => tanh(10 * (u() - 0.5)),
  atanh: (u) => atanh(2 * u() - 1),
  cbrt: (u) => cbrt(1000 * (u() - 0.5)),
  hypot: (u) => hypot(u(), 100 * u(), u() - 0.5),
  power: (u) => power(2 * u(), 10 * (u() - 0.5)) + power(u(), Math.floor(40 * u())),
  'logarithm of the gamma function': (u) => logGamma(100 * u()) + logGamma(10_000 * u()),
  'normal quantile': (u) => normalQuantile(u()),
  'chance above a normal': (u) => normalUpper(12 * (u() - 0.5)),
  'binomial chance': (u) => binomialProbability(Math.floor(101 * u()), 100, u()),
};

/** The same, of functions that search, over fewer arguments. */
const SLOW: Readonly<Record<string, (u: Uniform) => number>> = {
  'beta quantile': (u) => betaQuantile(u(), 1 + 500 * u(), 1 + 500 * u()),
  't quantile': (u) => studentTQuantile(u(), 1 + Math.floor(200 * u())),
  'binomial test': (u) => exactBinomialTest(Math.floor(201 * u()), 200, u()),
  'mixed Poisson': (u) => mixedPoisson(1 + 20 * u(), u())[Math.floor(10 * u())]!,
  'rank correlation': (u) => {
    const x = Array.from({ length: 12 }, u);
    return rankCorrelation(
      x,
      x.map((one) => one + u()),
    ).high!;
  },
};

const LAWS: Readonly<Record<string, DurationLaw>> = {
  exponential: { law: 'exponential', meanMs: 90_000 },
  lognormal: { law: 'lognormal', meanMs: 2_520_000, sdMs: 1_080_000 },
  gamma: { law: 'gamma', meanMs: 2_520_000, sdMs: 1_080_000 },
  'gamma of a shape below 1': { law: 'gamma', meanMs: 2_520_000, sdMs: 4_000_000 },
  measured: { law: 'measured', valuesMs: [10_000, 20_000, 20_000, 50_000] },
};

/** The digests by name. */
export async function digests(): Promise<Readonly<Record<string, string>>> {
  const found: Record<string, string> = {};
  const stream = (name: string): Stream => new Stream(streamKey('conformance', name));
  const values = (name: string, count: number, next: (of: Stream) => number): void => {
    const of = stream(name);
    found[name] = digestOf(Float64Array.from({ length: count }, () => next(of)));
  };
  for (const [functions, count] of [
    [FUNCTIONS, ARGUMENTS],
    [SLOW, 500],
  ] as const)
    for (const [name, value] of Object.entries(functions))
      values(`function: ${name}`, count, (of) => value(() => of.uniform()));
  values('draws: bits', DRAWS, (of) => of.bits());
  values('draws: exponential of 1', DRAWS, (of) => of.exponential());
  values('draws: exponential by ziggurat', DRAWS, (of) => of.quickExponential());
  values('draws: gamma of 25', DRAWS, (of) => standardGamma(25, of));
  for (const [name, law] of Object.entries(LAWS)) {
    const duration = new Duration(law);
    values(`draws: ${name}`, DRAWS, (of) => duration.draw(of));
  }
  for (const [name, text] of Object.entries(SCENARIOS)) {
    const read = readScenario(text, name, { piecesPerRack: piecesPerRackOf });
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
    const { answer } = await scenarioStudy(read, inThisThread(), { days: DAYS, certifyOn: DAYS });
    // Of the answer what will stay as it is named while other fields come to it.
    const { certified, cost, guests } = answer;
    const stock = answer.stock.map(({ ware, pieces, low, high }) => [ware, pieces, low, high]);
    const numbers = JSON.stringify([certified, stock, cost, guests.served, guests.left]);
    found[`answer: ${name}`] = digestOf(new TextEncoder().encode(numbers));
  }
  return found;
}

/** 64 bits of the bytes: FNV-1a (G. Fowler, L. C. Noll, P. Vo) twice, from two beginnings. */
function digestOf(values: Float64Array | Uint8Array): string {
  const bytes = new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
  const hash = (start: number): string => {
    let state = start;
    for (const byte of bytes) state = Math.imul(state ^ byte, 0x01000193);
    return (state >>> 0).toString(16).padStart(8, '0');
  };
  return hash(0x811c9dc5) + hash(0x01234567);
}

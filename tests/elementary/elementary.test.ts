import { describe, expect, it } from 'vitest';
import { atan2, cos, sin } from '../../src/elementary/angles.js';
import { exp, expm1 } from '../../src/elementary/exp.js';
import { atanh, tanh } from '../../src/elementary/hyperbolic.js';
import { log, log1p } from '../../src/elementary/log.js';
import { cbrt, decimalExponent, hypot, power } from '../../src/elementary/powers.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { cosOf, exactly, expOf, lastPlaces, logOf, ONE, sinOf } from './exact.js';

const POINTS = 1500;

/** The worst error over random arguments, in units of the last place. */
function worst(
  found: (x: number) => number,
  exact: (x: bigint) => bigint,
  argument: (u: number, v: number) => number,
): number {
  const stream = new Stream(streamKey('elementary', String(argument)));
  let most = 0;
  for (let point = 0; point < POINTS; point += 1) {
    const x = argument(stream.uniform(), stream.uniform());
    most = Math.max(most, lastPlaces(found(x), exact(exactly(x))));
  }
  return most;
}

describe('errors against series of 200 bits, in units of the last place', () => {
  it.each<[string, (u: number, v: number) => number]>([
    ['shares as drawn', (u) => u],
    ['near 1', (u) => 1 + (u - 0.5) * 0.02],
    ['closer to 1', (u, v) => 1 + (u - 0.5) * 2 ** (-40 * v)],
    ['around √2, where the power of two changes', (u) => Math.SQRT2 + (u - 0.5) * 0.02],
    ['over many powers of two', (u) => 2 ** (200 * (u - 0.5))],
  ])('log: %s', (_, argument) => {
    expect(worst(log, logOf, argument)).toBeLessThan(1.2);
  });

  it.each<[string, (u: number, v: number) => number]>([
    ['between -1 and 1', (u) => 2 * u - 1],
    ['small', (u, v) => (u - 0.5) * 2 ** (-60 * v)],
    ['large', (u) => 2 ** (100 * u)],
  ])('log1p: %s', (_, argument) => {
    expect(worst(log1p, (x) => logOf(x + ONE), argument)).toBeLessThan(1.6);
  });

  it.each<[string, (u: number) => number]>([
    ['as in lognormal draws', (u) => 40 * (u - 0.5)],
    ['wide', (u) => 200 * (u - 0.5)],
    ['small', (u) => (u - 0.5) * 1e-3],
  ])('exp: %s', (_, argument) => {
    expect(worst(exp, expOf, argument)).toBeLessThan(0.6);
  });

  it.each<[string, (u: number, v: number) => number]>([
    ['around 0', (u) => 4 * (u - 0.5)],
    ['small', (u, v) => (u - 0.5) * 2 ** (-60 * v)],
    ['from one step of the table to the next', (u) => (u - 0.5) * 0.02],
    ['wide', (u) => 100 * (u - 0.5)],
  ])('expm1: %s', (_, argument) => {
    expect(worst(expm1, (x) => expOf(x) - ONE, argument)).toBeLessThan(2.2);
  });

  it('sin and cos', () => {
    const turns = (u: number): number => 20 * (u - 0.5);
    expect(worst(sin, sinOf, turns)).toBeLessThan(1.2);
    expect(worst(cos, cosOf, turns)).toBeLessThan(1.2);
  });

  it('tanh and atanh', () => {
    const wide = (u: number): number => 8 * (u - 0.5);
    const tanhOf = (x: bigint): bigint => {
      const grown = expOf(2n * x);
      return ((grown - ONE) * ONE) / (grown + ONE);
    };
    expect(worst(tanh, tanhOf, wide)).toBeLessThan(4);
    const atanhOf = (x: bigint): bigint => logOf(((ONE + x) * ONE) / (ONE - x)) / 2n;
    expect(worst(atanh, atanhOf, (u) => 1.98 * (u - 0.5))).toBeLessThan(4);
  });

  it('cbrt, cubed again, is within its rounding; atan2 gives the angle back', () => {
    const stream = new Stream(streamKey('elementary', 'back'));
    for (let point = 0; point < POINTS; point += 1) {
      const x = stream.uniform() * 1000;
      // Half a unit of the root, 1.1e-16 of it, is three times as much of the cube.
      const root = exactly(cbrt(x));
      const cubed = (((root * root) / ONE) * root) / ONE;
      expect(Math.abs(Number(cubed - exactly(x)) / 2 ** 256)).toBeLessThan(4.5e-16 * x);
      const angle = 2 * Math.PI * (stream.uniform() - 0.5);
      const length = 1 + 100 * stream.uniform();
      expect(
        Math.abs(atan2(length * sin(angle), length * cos(angle)) - angle),
        `${angle}`,
      ).toBeLessThan(2e-15);
    }
  });

  it('powers: whole ones of ten are exact, others within what the logarithm allows', () => {
    for (let n = 0; n <= 22; n += 1) {
      expect(power(10, n)).toBe(Number(`1e${n}`));
      expect(power(10, -n)).toBe(Number(`1e-${n}`));
    }
    expect([power(0.5, 1000), power(3, 0), power(-2, 3), power(2, -1)]).toEqual([
      0.5 ** 1000,
      1,
      -8,
      0.5,
    ]);
    const between = worst(
      (x) => power(x, 2.4),
      (x) => expOf((logOf(x) * 12n) / 5n),
      (u) => 0.04 + u,
    );
    expect(between).toBeLessThan(12);
  });
});

describe('the ends of the numbers', () => {
  it('log and log1p', () => {
    expect([0, 1, Infinity, -1, NaN].map(log)).toEqual([-Infinity, 0, Infinity, NaN, NaN]);
    expect([0, -1, Infinity, -2, NaN].map(log1p)).toEqual([0, -Infinity, Infinity, NaN, NaN]);
    // The least number there is: 2⁻¹⁰⁷⁴.
    expect(log(Number.MIN_VALUE)).toBeCloseTo(-1074 * Math.LN2, 10);
    expect(log(Number.MAX_VALUE)).toBeCloseTo(1024 * Math.LN2, 12);
  });

  it('exp and expm1', () => {
    expect([0, -Infinity, Infinity, 710, -746, NaN].map(exp)).toEqual([
      1,
      0,
      Infinity,
      Infinity,
      0,
      NaN,
    ]);
    expect(exp(-745)).toBe(Number.MIN_VALUE);
    expect(exp(709.78)).toBeLessThan(Infinity);
    expect(exp(709.78) / exp(709)).toBeCloseTo(exp(0.78), 10);
    expect([0, -Infinity, Infinity, NaN, -40].map(expm1)).toEqual([0, -1, Infinity, NaN, -1]);
  });

  it('angles, roots and hyperbolic functions', () => {
    expect([atan2(0, 1), atan2(1, 0), atan2(0, -1), atan2(-1, 0), atan2(0, 0)]).toEqual([
      0,
      Math.PI / 2,
      Math.PI,
      -Math.PI / 2,
      0,
    ]);
    expect([sin(0), cos(0), sin(Math.PI / 2), cos(Math.PI)]).toEqual([0, 1, 1, -1]);
    expect(() => sin(1e9)).toThrow(/too many turns/);
    expect(() => cos(NaN)).toThrow(RangeError);
    expect([cbrt(27), cbrt(-8), cbrt(0), hypot(3, 4), hypot()]).toEqual([3, -2, 0, 5, 0]);
    expect([tanh(Infinity), tanh(-Infinity), tanh(0), atanh(1), atanh(-1), atanh(0)]).toEqual([
      1,
      -1,
      0,
      Infinity,
      -Infinity,
      0,
    ]);
    expect([0.01, 0.0999, 1, 9.99, 10, 0].map(decimalExponent)).toEqual([-2, -2, 0, 0, 1, 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { meanMs, type DurationLaw } from '../../src/engine/durations.js';
import { ABOUT_SPREAD, durationLaw } from '../../src/quantities/duration-law.js';
import { isSpread, scaleWritten, withMean, writtenMean } from '../../src/quantities/law-text.js';

const laws: readonly unknown[] = [
  'about 10 min',
  '10 min',
  { constant: '10 min' },
  { exponential: '10 min' },
  { gamma: { mean: '10 min', sd: '4 min' } },
  { lognormal: { mean: '600 s', sd: '2 min' } },
  { measured: ['8 min', '9 min', '13 min'] },
];
const read = (written: unknown): DurationLaw => durationLaw.parse(written);
const ratio = (law: DurationLaw): number | null =>
  law.law === 'gamma' || law.law === 'lognormal' ? law.sdMs / law.meanMs : null;

describe('"about"', () => {
  it('is a gamma law with a spread in one place', () => {
    expect(read('about 10 min')).toEqual({
      law: 'gamma',
      meanMs: 600_000,
      sdMs: 600_000 * ABOUT_SPREAD,
    });
    expect(read(' about  90 s ')).toMatchObject({ law: 'gamma', meanMs: 90_000 });
    expect(read('about 0 s')).toEqual({ law: 'constant', ms: 0 });
  });

  it.each(['about 10', 'about ten min', 'about -3 min', 'roughly 10 min', 'about 10 minuts'])(
    'refuses %j',
    (text) => {
      expect(durationLaw.safeParse(text).success).toBe(false);
    },
  );
});

describe('another mean', () => {
  it.each(laws)('%j keeps its kind and the ratio of its spread to its mean', (law) => {
    const before = read(law);
    const after = read(withMean(law, '12 min'));
    expect(writtenMean(law)).toBe(600_000);
    expect(after.law).toBe(before.law);
    expect(meanMs(after)).toBeCloseTo(720_000, 6);
    const [now, then] = [ratio(after), ratio(before)];
    if (then === null) expect(now).toBe(null);
    else expect(now).toBeCloseTo(then, 12);
  });

  it.each(laws)('%j scales alike', (law) => {
    const [before, after] = [read(law), read(scaleWritten(law, 1.2))];
    expect(after.law).toBe(before.law);
    expect(meanMs(after)).toBeCloseTo(meanMs(before) * 1.2, 6);
  });

  it('is the mean itself where no law stands', () => {
    expect(withMean('never', '12 min')).toBe('12 min');
    expect(withMean(undefined, '12 min')).toBe('12 min');
    expect(withMean('about 10 min', 'never')).toBe('never');
    expect(['about 10 min', '10 min', 'never'].map(isSpread)).toEqual([true, false, false]);
  });
});

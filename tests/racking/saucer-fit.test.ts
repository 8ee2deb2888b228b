import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitWords, isMisfit, saucerFits } from '../../src/racking/saucer-fit.js';

const cups = [
  { id: 'espresso-cup', footMm: 37, colour: 'white' },
  { id: 'medium-cup', footMm: 45, colour: 'White ' },
  { id: 'large-cup', footMm: 60, colour: 'grey' },
  { id: 'mug', footMm: null },
];
const saucers = [
  { id: 'small-saucer', wellMm: 40, colour: 'white' },
  { id: 'saucer', wellMm: 46, colour: 'white', takes: ['espresso-cup', 'mug'] },
  { id: 'blue-saucer', wellMm: 62, colour: 'blue' },
  { id: 'bare-saucer', wellMm: null },
];

describe('which cup sits on which saucer', () => {
  const pairs = saucerFits(cups, saucers);
  const pair = (cup: string, saucer: string) =>
    pairs.find((one) => one.cup === cup && one.saucer === saucer)!;

  test('computed from foot and well with the stated clearance, given, or barred by colour', () => {
    expect(pair('espresso-cup', 'small-saucer')).toMatchObject({
      fits: true,
      reason: 'computed',
      clearanceMm: 3,
    });
    expect(pair('medium-cup', 'small-saucer')).toMatchObject({
      fits: false,
      reason: 'foot too wide',
      clearanceMm: -5,
    });
    expect(pair('medium-cup', 'saucer')).toMatchObject({
      fits: true,
      reason: 'computed',
      clearanceMm: 1,
    });
    // 9 mm would let the cup slide, but somebody tried it.
    expect(pair('espresso-cup', 'saucer')).toMatchObject({
      fits: true,
      reason: 'given',
      clearanceMm: 9,
    });
    expect(pair('mug', 'saucer')).toMatchObject({ fits: true, reason: 'given', clearanceMm: null });
    expect(pair('mug', 'small-saucer')).toMatchObject({ fits: false, reason: 'measures missing' });
    expect(pair('large-cup', 'blue-saucer')).toMatchObject({
      fits: false,
      reason: 'colours differ',
    });
    expect(saucerFits([{ id: 'c', footMm: 30 }], [{ id: 's', wellMm: 45 }])[0]).toMatchObject({
      fits: false,
      reason: 'cup would slide',
    });
  });

  test('what was tried decides, and what the measures say is said beside it', () => {
    const mm = (length: number) => `${length} mm`;
    expect(fitWords(pair('espresso-cup', 'saucer'), mm)).toBe(
      'fits; you tried it (by its measures it would slide, with 9 mm of play)',
    );
    expect(fitWords(pair('medium-cup', 'small-saucer'), mm)).toBe(
      'by its measures it does not fit, as the foot is 5 mm too wide',
    );
    expect(pairs.filter(isMisfit).map(({ cup, saucer }) => `${cup} on ${saucer}`)).toEqual([
      'medium-cup on small-saucer',
    ]);
  });

  test('a wider well never makes a foot too wide, and every pair is judged once', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (footMm, wellMm, wider) => {
          const [before, after] = [wellMm, wellMm + wider].map(
            (well) => saucerFits([{ id: 'c', footMm }], [{ id: 's', wellMm: well }])[0]!,
          );
          if (before!.reason !== 'foot too wide') expect(after!.reason).not.toBe('foot too wide');
        },
      ),
      { seed: 20 },
    );
    expect(pairs).toHaveLength(cups.length * saucers.length);
  });
});

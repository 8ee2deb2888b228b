import { describe, expect, test } from 'vitest';
import { gripOf, handleMoment } from '../../src/suiting/grip.js';
import type { GripInput } from '../../src/suiting/grip.js';

const wide = { widthMm: 28, heightMm: 48 };
const cup: GripInput = { massG: 280, drinkG: 190, rimMm: 90, handleMm: 28, opening: wide };

describe('grip', () => {
  // By hand: 0.470 kg × 9.81 m/s² × (45 + 14) mm = 0.2720 N m.
  test('the moment about the handle', () => {
    expect(handleMoment(470, 90, 28)).toBeCloseTo(0.272, 3);
    expect(gripOf(cup).momentNm).toBeCloseTo(0.272, 3);
    expect(gripOf(cup).filledG).toBe(470);
  });

  test('an opening for two fingers makes it easy', () => {
    expect(gripOf(cup)).toMatchObject({ easy: true, fingers: 2, flags: [] });
  });

  // Limits from memory: 650 g filled, 25 mm wide, 45 mm tall.
  test.each([
    ['heavy', { ...cup, massG: 470 }, 'heavy', 660],
    ['narrow', { ...cup, opening: { widthMm: 24, heightMm: 48 } }, 'narrow-opening', 24],
    ['low', { ...cup, opening: { widthMm: 28, heightMm: 44 } }, 'low-opening', 44],
  ])('%s is flagged with its basis', (_, input, code, value) => {
    const { flags, easy } = gripOf(input);
    expect(flags).toHaveLength(1);
    expect(flags[0]).toMatchObject({ code, value, basis: 'assumed' });
    expect(flags[0]!.source).not.toBe('');
    expect(easy).toBe(false);
  });

  test('limits themselves pass', () => {
    expect(gripOf({ ...cup, massG: 460, opening: { widthMm: 25, heightMm: 45 } }).flags).toEqual(
      [],
    );
  });

  test('nobody can say of an unmeasured handle that it is easy; a body without one is not', () => {
    expect(gripOf({ ...cup, opening: null }).easy).toBeNull();
    expect(gripOf({ ...cup, opening: null, massG: 500 }).easy).toBe(false);
    expect(gripOf({ ...cup, handleMm: 0 })).toMatchObject({
      easy: false,
      momentNm: null,
      fingers: null,
    });
  });
});

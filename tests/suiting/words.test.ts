import { expect, test } from 'vitest';
import { suit } from '../../src/suiting/suit.js';
import { celsius, millilitres, plainName } from '../../src/suiting/words.js';
import { drink, input } from './parts.js';

test('metric first, US beside', () => {
  // By hand: 180 / 29.5735 = 6.09; 62 × 9/5 + 32 = 143.6.
  expect(millilitres(180)).toBe('180 ml (6.1 fl oz)');
  expect(celsius(62)).toBe('62 °C (144 °F)');
});

test('a name can neither steer a terminal nor break a table', () => {
  expect(plainName('Flat\u001B[31m \u202Ewhite\n\tA')).toBe('Flat [31m white A');
  expect([...plainName('x'.repeat(10_000))]).toHaveLength(60);
  const { drinks, findings } = suit(
    input('drinks: { latte: {} }', {
      menu: [{ ...drink('latte', ['medium-cup']), name: '\u001B]0;gone\u0007\u2028Latte' }],
    }),
  );
  expect(drinks[0]!.name).toContain('Latte');
  for (const text of [drinks[0]!.name, ...findings.map(({ message }) => message)])
    expect(text).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
});

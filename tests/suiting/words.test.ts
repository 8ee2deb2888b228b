import { expect, test } from 'vitest';
import { suit } from '../../src/suiting/suit.js';
import { suitText } from '../../src/suiting/text.js';
import { celsius, columns, millilitres, plainName } from '../../src/suiting/words.js';
import { drink, input } from './parts.js';

test('metric first, US beside', () => {
  // By hand: 180 / 29.5735 = 6.09; 62 × 9/5 + 32 = 143.6.
  expect(millilitres(180)).toBe('180 ml (6.1 fl oz)');
  expect(celsius(62)).toBe('62 °C (144 °F)');
});

test('columns line up whatever is in them', () => {
  expect(
    columns(
      ['ware', 'ml'],
      [
        ['Tasse für Tee', '7'],
        ['a', '1200'],
      ],
    ),
  ).toBe('ware             ml\n-------------  ----\nTasse für Tee     7\na              1200');
});

test('a name can neither steer a terminal nor break a table', () => {
  expect(plainName('Flat\u001B[31m \u202Ewhite\n\tA')).toBe('Flat [31m white A');
  expect([...plainName('x'.repeat(10_000))]).toHaveLength(60);
  const text = suitText(
    suit(
      input('drinks: { latte: {} }', {
        menu: [{ ...drink('latte', ['medium-cup']), name: '\u001B]0;gone\u0007\u2028Latte' }],
      }),
    ),
  );
  expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(text).toContain('Latte');
});

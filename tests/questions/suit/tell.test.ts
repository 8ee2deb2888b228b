import { expect, test } from 'vitest';
import { suitBlocks } from '../../../src/questions/suit/tell.js';
import { withPooling } from '../../../src/suiting/answer.js';
import { suit } from '../../../src/suiting/suit.js';
import type { SuitAnswer } from '../../../src/suiting/answer.js';
import type { ReportContext } from '../../../src/tell/context.js';
import { columnsOf } from '../../../src/tell/clean-text.js';
import { writeText } from '../../../src/tell/write-text.js';
import { drink, input, mediumCup, saucer } from '../../suiting/parts.js';

const context: ReportContext = {
  locale: 'en-IE',
  currency: 'EUR',
  openingMinute: null,
  openMinutes: 240,
  seats: 40,
  ware: [],
  machines: [],
  capacity: { machines: 1, makers: 1, hands: 1, clearers: 1 },
  hotDrinks: true,
  inputs: [],
  version: '0',
};
const text = (answer: SuitAnswer, all = false): string =>
  writeText(suitBlocks(answer, context), { width: 80, all });

const NINE = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const house = suit(
  input('papers: { small: { brim: 280 ml } }\ndrinks: { two: { paper: small }, three: {} }', {
    menu: NINE.map((id) => drink(id, [`${id}-cup`, 'saucer'], 1 / 9)),
    ware: [
      ...NINE.slice(1).map((id) => ({ ...mediumCup, id: `${id}-cup`, name: `The ${id} cup` })),
      { ...mediumCup, id: 'one-cup', name: 'The one cup' },
      saucer,
    ],
  }),
);

test('no line is wider than the terminal, details or not', () => {
  for (const all of [false, true])
    for (const line of text(house, all).split('\n'))
      expect(columnsOf(line), line).toBeLessThanOrEqual(80);
});

test('few findings stand open, all of them with the details', () => {
  expect(house.findings.length).toBeGreaterThan(8);
  const flat = (said: string): string => said.replace(/\s+/g, ' ');
  const [short, long] = [flat(text(house)), flat(text(house, true))];
  const open = house.findings.filter(({ message }) => short.includes(flat(message)));
  const harm = house.findings.filter(({ consequence }) => consequence === 'harm');
  expect(open).toEqual(house.findings.slice(0, Math.max(5, harm.length)));
  for (const { message } of house.findings) expect(long).toContain(flat(message));
});

test('whatever can hurt stands open, however much of it there is', () => {
  const harm = Array.from({ length: 8 }, (_, at) => ({
    ...house.findings[0]!,
    consequence: 'harm' as const,
    message: `Harm number ${at}.`,
  }));
  const said = text({ ...house, findings: [...harm, ...house.findings] });
  for (const { message } of harm) expect(said).toContain(message);
});

test('columns without a value are left out', () => {
  const bare = suit(input('drinks: {}', { menu: [drink('tea', ['medium-cup', 'saucer'])] }));
  expect(text(bare)).not.toContain('Easy to hold');
  expect(text(house)).toContain('Easy to hold');
});

test('what pooling saves is told once it is known, and what saves nothing steps back', () => {
  const alike = suit(
    input('drinks: { flat-white: {}, cappuccino: {} }', {
      menu: [drink('flat-white', ['medium-cup'], 0.5), drink('cappuccino', ['easy-cup'], 0.5)],
    }),
  );
  expect(alike.merges).toHaveLength(2);
  const [easy, medium] = ['easy-cup', 'medium-cup'].map(
    (id) => alike.ware.find(({ ware }) => ware === id)!.name,
  );
  const pooled = withPooling(alike, [
    { keep: 'easy-cup', drop: 'medium-cup', apart: 72, pooled: 66, saved: 6 },
    { keep: 'medium-cup', drop: 'easy-cup', apart: 72, pooled: 72, saved: 0 },
  ]);
  expect(text(pooled)).toContain(`${easy} in place of ${medium}: 66 pieces instead of 72`);
  expect(text(pooled)).not.toContain(`${medium} in place of ${easy}`);
  expect(text(pooled, true)).toContain(`${medium} in place of ${easy}: 72 pieces instead of 72`);
});

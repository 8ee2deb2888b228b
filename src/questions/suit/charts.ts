/** The pictures of suiting: strength by drink, cooling over the stay. */
import type { Consequence, SuitAnswer } from '../../suiting/answer.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { coolingOfDrinks, coolingOfDrinksTable } from './cooling.js';
import { strengthByDrink, strengthByDrinkTable } from './strength.js';
import { formatsFor } from '../../tell/format.js';
import { english } from '../../tell/words.js';
import type { FindingList } from '../../tell/finding-list.js';
import type { Units } from '../../tell/measures.js';
import { suitWords } from './words.js';

const say = suitWords.groups;

export function suitCharts(answer: SuitAnswer, locale: string, units: Units = 'metric'): Chart[] {
  const look = {
    locale,
    formats: formatsFor({ locale, currency: answer.currency, openingMinute: null, units }),
  };
  const strength = strengthByDrink(answer, look);
  const cooling = coolingOfDrinks(answer, look);
  return [
    ...(strength === null ? [] : [chart('strength', strength, strengthByDrinkTable(answer, look))]),
    ...(cooling === null ? [] : [chart('cooling', cooling, coolingOfDrinksTable(answer, units))]),
  ];
}

/** What guests meet, what could cost less, what nobody knows yet: the letter folds each to a line. */
const GROUPS: readonly { readonly title: keyof typeof say; readonly of: readonly Consequence[] }[] =
  [
    { title: 'guests', of: ['harm', 'unusable', 'taste'] },
    { title: 'cost', of: ['cost'] },
    { title: 'open', of: ['unknown', 'note'] },
  ];

/** The findings in order of consequence, as the letter lists them. */
export const suitFindings = ({ findings }: SuitAnswer): FindingList => ({
  title: english.letter.suitHead,
  groups: GROUPS.map(({ title, of }) => ({
    title: say[title],
    items: findings.filter((one) => of.includes(one.consequence)).map(({ message }) => message),
  })),
});

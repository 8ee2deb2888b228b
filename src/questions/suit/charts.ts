/** The pictures of suiting: strength by drink, cooling over the stay. */
import type { SuitAnswer } from '../../suiting/answer.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { coolingOfDrinks, coolingOfDrinksTable } from './cooling.js';
import { strengthByDrink, strengthByDrinkTable } from './strength.js';
import { formatsFor } from '../../tell/format.js';
import { english } from '../../tell/words.js';
import type { Units } from '../../tell/measures.js';

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

/** The findings in order of consequence, as the letter lists them. */
export const suitFindings = (answer: SuitAnswer): { title: string; items: string[] } => ({
  title: english.letter.suitHead,
  items: answer.findings.map(({ message }) => message),
});

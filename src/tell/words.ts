/**
 * All wording of reports, in one place, so that it can be translated: write another object of this
 * shape and hand it over in the report's context.
 */
import { answerWords } from './words/answer.js';
import { cardWords } from './words/cards.js';
import { mistakeWords } from './words/mistakes.js';
import { cautionWords } from './words/cautions.js';
import { chartWords } from './words/charts.js';
import { compareWords } from './words/compare.js';
import { fillInWords } from './words/fill-in.js';
import { fieldWords, placeWords } from './words/fields.js';
import { formWords } from './words/forms.js';
import { letterWords } from './words/letter.js';
import { pageWords } from './words/page.js';
import { walkWords } from './words/walk.js';
import { sectionWords } from './words/sections.js';

export const english = {
  /** BCP 47 tag of the language of these words. */
  language: 'en',
  answer: answerWords,
  cards: cardWords,
  mistakes: mistakeWords,
  cautions: cautionWords,
  charts: chartWords,
  compare: compareWords,
  fillIn: fillInWords,
  fields: fieldWords,
  places: placeWords,
  forms: formWords,
  letter: letterWords,
  page: pageWords,
  walk: walkWords,
  sections: sectionWords,
};

export type Words = typeof english;

/** "a, b and c". */
export const listed = (items: readonly string[]): string =>
  new Intl.ListFormat(english.language === 'en' ? 'en-GB' : english.language, {
    type: 'conjunction',
  }).format(items);

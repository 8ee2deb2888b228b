/**
 * All wording of reports, in one place, so that it can be translated: write another object of this
 * shape and hand it over in the report's context.
 */
import { answerWords } from './words/answer.js';
import { cautionWords } from './words/cautions.js';
import { chartWords } from './words/charts.js';
import { compareWords } from './words/compare.js';
import { inputWords } from './words/inputs.js';
import { letterWords } from './words/letter.js';
import { orderWords } from './words/order.js';
import { rackWords } from './words/racks.js';

export const english = {
  /** BCP 47 tag of the language of these words. */
  language: 'en',
  answer: answerWords,
  cautions: cautionWords,
  charts: chartWords,
  compare: compareWords,
  inputs: inputWords,
  letter: letterWords,
  order: orderWords,
  racks: rackWords,
};

export type Words = typeof english;

/** "a, b and c". */
export const listed = (items: readonly string[], words: Words = english): string =>
  new Intl.ListFormat(words.language === 'en' ? 'en-GB' : words.language, { type: 'conjunction' }).format(items);

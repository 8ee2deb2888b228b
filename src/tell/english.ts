/**
 * The wording of reports by subject, so that a program that uses some of it carries no more; `words.ts` has it whole.
 */
export { answerWords as answer } from './words/answer.js';
export { cardWords as cards } from './words/cards.js';
export { mistakeWords as mistakes } from './words/mistakes.js';
export { cautionWords as cautions } from './words/cautions.js';
export { chartWords as charts } from './words/charts.js';
export { compareWords as compare } from './words/compare.js';
export { fillInWords as fillIn } from './words/fill-in.js';
export { fieldWords as fields, placeWords as places } from './words/fields.js';
export { formWords as forms } from './words/forms.js';
export { letterWords as letter } from './words/letter.js';
export { pageWords as page } from './words/page.js';
export { walkWords as walk } from './words/walk.js';
export { sectionWords as sections } from './words/sections.js';
/** BCP 47 tag of the language of these words. */
export const language = 'en';

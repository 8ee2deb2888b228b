/**
 * All wording of reports, in one place, so that it can be translated: write another object of this
 * shape and hand it over in the report's context.
 */
import * as english from './english.js';

export { english };

export type Words = typeof english;

/** "a, b and c". */
export const listed = (items: readonly string[]): string =>
  new Intl.ListFormat(english.language === 'en' ? 'en-GB' : english.language, {
    type: 'conjunction',
  }).format(items);

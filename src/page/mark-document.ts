/** What the document says of itself: whose letter it is, and that an answer is not certified yet, on screen, on paper and in the name of a tab or file. */
import { english } from '../tell/words.js';
import { cleanText, shorten } from '../tell/clean-text.js';
import type { PageState } from './store.js';

const NAME_LENGTH = 120;

export function markDocument({ phase, view }: PageState): void {
  document.body.dataset['phase'] = phase;
  if (view === null) return;
  const title = english.letter.heading(shorten(cleanText(view.name), NAME_LENGTH));
  const isSettled = phase === 'as-sent' || phase === 'certified';
  const wanted = isSettled ? title : `${english.page.provisionalTitle} ${title}`;
  if (document.title !== wanted) document.title = wanted;
}

/** What the document says of itself: whose letter it is, and that an answer is not certified yet, on screen, on paper and in the name of a tab or file. */
import * as english from '../tell/english.js';
import { cssString } from '../tell/escape-html.js';
import { cleanText, shorten } from '../tell/clean-text.js';
import { isAsSent, type PageState } from './store.js';

const NAME_LENGTH = 120;
const RUNNING_LENGTH = 80;

export function markDocument(state: PageState): void {
  const { phase, view, reader } = state;
  document.body.dataset['phase'] = phase;
  document.body.dataset['reader'] = reader;
  // How the stock would have done on recorded days was worked out of the house as it was sent.
  const recorded = document.querySelector<HTMLElement>('[data-part=recorded]');
  if (recorded !== null) recorded.hidden = !isAsSent(state);
  if (view === null) return;
  running(english.letter.runningHead(shorten(cleanText(view.name), RUNNING_LENGTH)));
  const title = english.letter.heading(shorten(cleanText(view.name), NAME_LENGTH));
  const isSettled = phase === 'as-sent' || phase === 'certified';
  const wanted = isSettled ? title : `${english.page.provisionalTitle} ${title}`;
  if (document.title !== wanted) document.title = wanted;
}

/** The head of every page on paper. */
function running(head: string): void {
  const style = document.getElementById('running') ?? document.createElement('style');
  const wanted = `@page{@top-left{content:${cssString(head)}}}`;
  if (style.textContent === wanted) return;
  style.id = 'running';
  style.textContent = wanted;
  document.head.append(style);
}

/** The letter's parts in the document: filled anew when their text changes, and only then. */
import type { LetterPart } from '../letter/letter.js';
import { addPictureTools } from './picture-tools.js';

type Part = LetterPart | 'cards';

const shown = new Map<string, string>();

const partOf = (part: Part): HTMLElement | null => document.querySelector(`[data-part="${part}"]`);

/** @param html as the functions of letter/ give it, all text in it escaped */
export function fill(part: Part, html: string): void {
  const element = partOf(part);
  if (element === null || shown.get(part) === html) return;
  shown.set(part, html);
  fillElement(element, html);
}

/** What stood open stays open. */
export function fillElement(element: HTMLElement, html: string): void {
  const open = [...element.querySelectorAll('details')].map((one) => one.open);
  element.innerHTML = html;
  [...element.querySelectorAll('details')].forEach((one, index) => {
    if (open[index] === true) one.open = true;
  });
  addPictureTools(element);
}

/** Parts that are of an answer before the last change, for as long as they are. */
export function markOlder(parts: readonly Part[], older: boolean): void {
  for (const part of parts) partOf(part)?.toggleAttribute('data-older', older);
}

/** What was asked beside the answer, of a house that has changed since: it is worked out anew. */
export function markStale(part: Part, stale: boolean): void {
  partOf(part)?.toggleAttribute('data-stale', stale);
}

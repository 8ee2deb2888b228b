/**
 * The same letter in another order for each reader: the owner begins with what could be changed, the
 * consultant with what it rests on, the trainer with the floor and the cards. Moved in the document
 * itself, so that the eye, the keyboard and a screen reader go the same way.
 */
import type { Reader } from './store.js';

const OPENING = ['sender', 'heading', 'lead', 'start', 'status'] as const;
const CLOSING = ['files'] as const;

const ORDER: Readonly<Record<Reader, readonly string[]>> = {
  owner: [
    'boxes',
    'order',
    'pieces',
    'mind',
    'pictures',
    'questions',
    'walk',
    'rush',
    'findings',
    'cautions',
    'inputs',
    'forms',
    'method',
    'cards',
  ],
  consultant: [
    'order',
    'mind',
    'pictures',
    'rush',
    'findings',
    'method',
    'inputs',
    'boxes',
    'pieces',
    'questions',
    'forms',
    'walk',
    'cautions',
    'cards',
  ],
  trainer: [
    'walk',
    'cards',
    'cautions',
    'rush',
    'pictures',
    'boxes',
    'order',
    'pieces',
    'mind',
    'findings',
    'questions',
    'inputs',
    'forms',
    'method',
  ],
};

export function orderFor(reader: Reader): void {
  const main = document.querySelector('main');
  if (main === null) return;
  const focused = document.activeElement;
  for (const name of [...OPENING, ...ORDER[reader], ...CLOSING]) {
    for (const element of main.querySelectorAll(
      `:scope > [data-part="${name}"], :scope > [data-island="${name}"]`,
    ))
      main.append(element);
  }
  if (focused instanceof HTMLElement) focused.focus();
}

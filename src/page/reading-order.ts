/**
 * The same letter in another order for each reader: the owner begins with what could be changed, the
 * consultant with what it is based on, the trainer with the floor and the cards. Moved in the document
 * itself, so that the eye, the keyboard and a screen reader go the same way.
 */
import type { Reader } from './store.js';

const OPENING = [
  'sender',
  'heading',
  'figures',
  'lead',
  'measured',
  'start',
  'status',
  'changed',
] as const;
const CLOSING = ['files'] as const;

const ORDER: Readonly<Record<Reader, readonly string[]>> = {
  owner: [
    'view',
    'questions',
    'order',
    'mind',
    'walk',
    'pictures',
    'rush',
    'findings',
    'recorded',
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
    'recorded',
    'method',
    'inputs',
    'view',
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
    'view',
    'order',
    'mind',
    'findings',
    'recorded',
    'questions',
    'inputs',
    'forms',
    'method',
  ],
};

/** On paper the order comes first, whoever reads. */
const ON_PAPER = ['order', 'mind', 'view'] as const;

/** @param onPaper as it is to be printed */
export function orderFor(reader: Reader, onPaper = false): void {
  const main = document.querySelector('main');
  if (main === null) return;
  const focused = document.activeElement;
  const rest = onPaper
    ? [...ON_PAPER, ...ORDER[reader].filter((name) => !ON_PAPER.some((one) => one === name))]
    : ORDER[reader];
  for (const name of [...OPENING, ...rest, ...CLOSING]) {
    for (const element of main.querySelectorAll(
      `:scope > [data-part="${name}"], :scope > [data-island="${name}"], :scope > [data-group="${name}"]`,
    ))
      main.append(element);
  }
  if (focused instanceof HTMLElement) focused.focus();
}

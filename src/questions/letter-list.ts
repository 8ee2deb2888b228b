/**
 * Questions that the letter carries too, in the order in which it offers them (it is itself the answer of `size`).
 * A new one: its folder, and one line here.
 */
import { question, type Question } from './question.js';
import { cards } from './cards/head.js';
import { collections } from './collections/head.js';
import { compare } from './compare/head.js';
import { guide } from './guide/head.js';
import { order } from './order/head.js';
import { racks } from './racks/head.js';
import { measure } from './measure/head.js';
import { suit } from './suit/head.js';

export const inLetter: readonly Question[] = [
  question(compare, () => import('./compare/ask.js')),
  question(racks, () => import('./racks/ask.js')),
  question(suit, () => import('./suit/ask.js')),
  question(order, () => import('./order/ask.js')),
  question(collections, () => import('./collections/ask.js')),
  question(guide, () => import('./guide/ask.js')),
  question(measure, () => import('./measure/ask.js')),
  question(cards, () => import('./cards/ask.js')),
];

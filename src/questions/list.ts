/** All questions, in the order of the help. A new one: its folder, and one line here. */
import { question, type Question } from './question.js';
import { collections } from './collections/head.js';
import { guide } from './guide/head.js';
import { backtest } from './backtest/head.js';
import { measure } from './measure/head.js';
import { order } from './order/head.js';
import { racks } from './racks/head.js';
import { size } from './size/head.js';
import { stocktake } from './stocktake/head.js';
import { suit } from './suit/head.js';

export const questions: readonly Question[] = [
  question(size, () => import('./size/ask.js')),
  question(order, () => import('./order/ask.js')),
  question(collections, () => import('./collections/ask.js')),
  question(stocktake, () => import('./stocktake/ask.js')),
  question(guide, () => import('./guide/ask.js')),
  question(measure, () => import('./measure/ask.js')),
  question(backtest, () => import('./backtest/ask.js')),
  question(racks, () => import('./racks/ask.js')),
  question(suit, () => import('./suit/ask.js')),
];

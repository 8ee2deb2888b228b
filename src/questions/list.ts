/** All questions, in the order of the help. A new one that the letter has no need of: its folder, and one line here. */
import { question, type Question } from './question.js';
import { backtest } from './backtest/head.js';
import { size } from './size/head.js';
import { stocktake } from './stocktake/head.js';
import { inLetter } from './letter-list.js';

export const questions: readonly Question[] = [
  question(size, () => import('./size/ask.js')),
  ...inLetter,
  question(stocktake, () => import('./stocktake/ask.js')),
  question(backtest, () => import('./backtest/ask.js')),
];

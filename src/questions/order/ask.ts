/** The order, asked and answered: scenario → order sheet → blocks and files. */
import { orderSheetCsv } from '../../ordering/order-sheet-csv.js';
import { inOrder } from '../../scenario/problems.js';
import { placed } from '../part-checks.js';
import type { Ask } from '../question.js';
import { orderFiles } from './files.js';
import type { order } from './head.js';
import { orderAnswer, orderStudy, type OrderAnswer } from './study.js';
import { orderBlocks } from './tell.js';
import { orderWorkbookFile } from './workbook.js';

export const ask: Ask<typeof order, OrderAnswer> = async (asking, given) => {
  const { opened, fileName, runner, context, today, loadSolver } = asking;
  const { level, seed, days } = given;
  const study = await orderStudy(opened.scenario, runner, {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    date: given.date ?? opened.scenario.supply?.date ?? today,
    loadSolver,
    inputs: opened.inputs,
    ...(given['allow-for-inputs'] === true ? { allowFor: { house: opened } } : {}),
  });
  if (!study.ok) return { ok: false, problems: inOrder(placed(study.problems, opened, fileName)) };
  return {
    ok: true,
    value: {
      json: orderAnswer(study.value),
      blocks: orderBlocks(study.value, context),
      figures: { ending: 'order.csv', content: orderSheetCsv(study.value.sheet) },
      workbook: (made) => orderWorkbookFile(study.value.sheet, made),
      jsonFile: 'order.json',
      // Where nobody gave the day, the order is made again with that of today.
      ...(given.date === undefined && opened.scenario.supply?.date === undefined
        ? { filledIn: { date: today } }
        : {}),
      files: (draw, _, made) => orderFiles(study.value, context, draw, made),
    },
  };
};

/** Vessel, drink and guest, asked and answered: scenario → checks → blocks and files. */
import { inOrder } from '../../scenario/problems.js';
import type { SuitAnswer } from '../../suiting/answer.js';
import { placed } from '../part-checks.js';
import type { Ask } from '../question.js';
import { suitFiles } from './files.js';
import type { suit } from './head.js';
import { suitStudy } from './study.js';
import { suitBlocks } from './tell.js';

export const ask: Ask<typeof suit, SuitAnswer> = async (
  { opened, fileName, runner, context },
  { seed },
) => {
  const answer = await suitStudy(
    opened.scenario,
    opened.inputs,
    runner,
    seed === undefined ? {} : { seed },
  );
  if (answer.problems.length > 0)
    return { ok: false, problems: inOrder(placed(answer.problems, opened, fileName)) };
  return {
    ok: true,
    value: {
      json: answer,
      blocks: suitBlocks(answer, context),
      files: () => suitFiles(answer, context),
    },
  };
};

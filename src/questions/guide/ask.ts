/** The planning guide, asked and answered: scenario and sizes → one page to hand out. */
import type { Ask } from '../question.js';
import { guideCsv } from './csv.js';
import { guideFiles } from './files.js';
import type { guide } from './head.js';
import { checkTakeaway, housesOf } from './houses.js';
import { guideStudy } from './study.js';
import { guideBlocks } from './tell.js';

export const ask: Ask<typeof guide> = async (asking, given) => {
  const { opened, fileName, runner, context, letter } = asking;
  const houses = housesOf(opened.scenario, given.seats, given.takeaway);
  checkTakeaway(opened.scenario, given.takeaway ?? []);
  const { level, seed, days } = given;
  const study = await guideStudy(opened, fileName, runner, { houses, level, seed, days });
  if (!study.ok) return study;
  return {
    ok: true,
    value: {
      json: study.value,
      blocks: guideBlocks(study.value, context, { alone: letter === undefined }),
      figures: { ending: 'guide.csv', content: guideCsv(study.value) },
      jsonFile: 'guide.json',
      files: (_draw, faces) => guideFiles(study.value, context, faces),
    },
  };
};

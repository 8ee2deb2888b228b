/** The whole comparison: alternatives of a scenario → houses side by side, told, and as files. */
import { inOrder } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { placed } from '../part-checks.js';
import type { Ask, FromLetter } from '../question.js';
import type { Given } from '../settings.js';
import type { Answer } from '../size/answer.js';
import { candidatesOf } from './alternatives.js';
import type { Comparison } from './answer.js';
import { compareFiles } from './files.js';
import type { compare } from './head.js';
import { mapFlaws } from './map.js';
import { compareStudy } from './study.js';
import { tellSoFar } from './tell-so-far.js';
import { tellComparison } from './tell.js';

export const wholeComparison: Ask<typeof compare, Comparison> = async (asking, given) => {
  const { opened, fileName, runner, context, interim } = asking;
  const { level, seed, days, map = false, moves = false, uncertainty = 0 } = given;
  const candidates = candidatesOf(opened, fileName, { piecesPerRack: piecesPerRackOf });
  const mapped = map ? placed(mapFlaws(opened), opened, fileName) : [];
  if (!candidates.ok || mapped.length > 0)
    return {
      ok: false,
      problems: inOrder([...(candidates.ok ? [] : candidates.problems), ...mapped]),
    };
  const comparison = await compareStudy(candidates.all, runner, {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    usual: !map && !moves && uncertainty === 0,
    map,
    moves: moves || uncertainty > 0,
    draws: uncertainty,
    equalGuests: given['equal-guests'] === true,
    piecesPerRack: piecesPerRackOf,
    certified: certifiedFor(asking.letter, given),
    ...(interim && { soFar: (rows) => interim(tellSoFar(rows, opened.scenario, context)) }),
  });
  const blocks = tellComparison(comparison, context);
  return {
    ok: true,
    value: {
      json: comparison,
      jsonFile: 'compare.json',
      blocks,
      files: () => compareFiles(comparison, blocks, context),
    },
  };
};

/** The letter's own answer, where it was asked as the comparison is. */
function certifiedFor(
  letter: FromLetter | undefined,
  { level, seed, days }: Given<typeof compare.settings>,
): Answer | undefined {
  if (letter?.answer === undefined) return undefined;
  const { options } = letter;
  const isOther =
    options.stock !== undefined ||
    options.listed !== undefined ||
    options.confidence !== undefined ||
    options.level !== level ||
    options.seed !== seed ||
    options.days !== days;
  return isOther ? undefined : letter.answer;
}

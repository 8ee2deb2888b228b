/** The racks, asked and answered: scenario and a lift → study → blocks and drawings. */
import { didYouMean } from '../../quantities/nearest.js';
import type { Ask } from '../question.js';
import { SettingError } from '../settings.js';
import { racksFiles } from './files.js';
import type { racks } from './head.js';
import { ASSUMED_LIFT, racksStudy } from './study.js';
import type { RacksAnswer } from './answer.js';
import { racksBlocks } from './tell.js';

const cm = (mm: number | undefined, assumed: number): number =>
  mm === undefined ? assumed : mm / 10;

/** @throws SettingError for an item that the scenario does not have */
export const ask: Ask<typeof racks> = async ({ opened, runner, context }, given) => {
  const { scenario } = opened;
  const { ware, seed } = given;
  const known = Object.keys(scenario.ware);
  if (ware !== undefined && !known.includes(ware))
    throw new SettingError(
      `"${ware}" is not an item of this scenario; ${didYouMean(ware, known)}`,
      'ware',
    );
  const answer = await racksStudy(scenario, runner, {
    lift: {
      reachCm: cm(given.reach, ASSUMED_LIFT.reachCm),
      fromCm: cm(given['lift-from'], ASSUMED_LIFT.fromCm),
      toCm: cm(given['lift-to'], ASSUMED_LIFT.toCm),
    },
    wider: ware === undefined,
    ...(seed === undefined ? {} : { seed }),
  });
  return {
    ok: true,
    value: {
      json: ware === undefined ? answer : ofWare(answer, ware),
      blocks: racksBlocks(answer, scenario, context, ware),
      files: () => racksFiles(answer, scenario, context, ware),
    },
  };
};

type OfWare = Omit<RacksAnswer, 'washing' | 'twoShapes' | 'plan'>;

/** What is said of one item alone: its lines, and the lift. */
function ofWare(answer: RacksAnswer, id: string): OfWare {
  const { washing: _washing, twoShapes: _twoShapes, plan: _plan, ...rest } = answer;
  return {
    ...rest,
    lines: answer.lines.filter(({ ware }) => ware === id),
    given: answer.given.filter(({ ware }) => ware === id),
  };
}

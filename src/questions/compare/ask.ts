/** The comparison, asked and answered: the whole, or the part of it that the letter asks for. */
import type { Block } from '../../tell/block.js';
import type { Ask, Asking } from '../question.js';
import type { Result } from '../result.js';
import type { Given } from '../settings.js';
import { FEW_HABIT_DAYS, withHabits } from '../size/ask.js';
import { scenarioStudy } from '../size/scenario-study.js';
import { habitsBlocks } from '../size/tell-habits.js';
import type { compare } from './head.js';
import { mapOf, movesOf } from './parts.js';
import { mapBlocks } from './tell-map.js';
import { movesBlocks } from './tell-moves.js';
import { wholeComparison } from './whole.js';

type Settings = Given<typeof compare.settings>;

/** What the letter asks for alone. */
const PARTS: Readonly<
  Record<string, (asking: Asking, given: Settings) => Promise<Result<readonly Block[]>>>
> = {
  async map(asking, given) {
    const map = await mapOf(asking, given);
    return map.ok ? { ok: true, value: mapBlocks(map.value, asking.context) } : map;
  },
  async moves(asking, given) {
    const moves = await movesOf(asking, given);
    return {
      ok: true,
      value: [...movesBlocks(moves, asking.context), ...(await habitsOf(asking))],
    };
  },
};

export const ask: Ask<typeof compare> = async (asking, given) => {
  const part = PARTS[asking.letter?.offer ?? ''];
  if (part === undefined) return wholeComparison(asking, given);
  const blocks = await part(asking, given);
  return blocks.ok ? { ok: true, value: { json: null, blocks: blocks.value } } : blocks;
};

/** How far the answer moves as habits vary; nothing for a stock or for days that were given. */
async function habitsOf(asking: Asking): Promise<readonly Block[]> {
  const options = asking.letter?.options ?? {};
  if (options.stock !== undefined || options.listed !== undefined) return [];
  const { answer } = await scenarioStudy(asking.opened, asking.runner, options);
  const { habits } = await withHabits(asking, answer, FEW_HABIT_DAYS);
  return habitsBlocks(habits!, answer, asking.context);
}

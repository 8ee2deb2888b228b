/** Sections that are worked out when the reader asks: one function each, scenario → HTML. */
import { trainerCards } from '../../questions/cards/cards.js';
import type { Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { tellComparison } from '../../questions/compare/tell.js';
import { mapBlocks } from '../../questions/compare/tell-map.js';
import { movesBlocks } from '../../questions/compare/tell-moves.js';
import { guide as guideHead } from '../../questions/guide/head.js';
import { guideBlocks } from '../../questions/guide/tell.js';
import { orderBlocks } from '../../questions/order/tell.js';
import { formatsFor } from '../../tell/format.js';
import { writeHtml } from '../../tell/write-html.js';
import { english } from '../../tell/words.js';
import { racksBlocks } from '../../questions/racks/tell.js';
import { suitBlocks } from '../../questions/suit/tell.js';
import { slowerClearing, storageOf } from '../../questions/cards/facts.js';
import type { OrderStudy } from '../../questions/order/study.js';
import type { Problem } from '../../scenario/problems.js';
import {
  askAlternatives,
  askGuide,
  askMap,
  askMoves,
  askOrder,
  askRacks,
  askSuit,
  type Question as Inquiry,
} from '../../questions/questions.js';
import type { Result } from '../../questions/result.js';
import { settingsTyped } from '../../questions/settings.js';
import { FEW_HABIT_DAYS, withHabits } from '../../questions/size/ask.js';
import { habitsBlocks } from '../../questions/size/tell-habits.js';
import { scenarioStudy } from '../../questions/size/scenario-study.js';
import type { GivenOptions } from '../../letter/live.js';
import type { Question } from '../messages.js';
import { drawnCharts } from '../../tell/drawn-chart.js';

export interface Asking {
  readonly inquiry: Inquiry;
  readonly options: GivenOptions;
  readonly context: ReportContext;
}

/** A question that the scenario as it stands cannot answer. */
export class NoAnswer extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join('. '));
  }
}

function valueOf<A>(answer: Result<A>): A {
  if (!answer.ok) throw new NoAnswer(answer.problems);
  return answer.value;
}

/** Blocks as the letter shows them, pictures drawn. */
const written = (blocks: readonly Block[], context: ReportContext): Promise<string> =>
  writeHtml(blocks, {
    draw: drawnCharts,
    formats: formatsFor(context),
    words: english,
  });

type Typed = { readonly typed?: Readonly<Record<string, string>> };

export const answers: Readonly<Record<Question, (asking: Asking & Typed) => Promise<string>>> = {
  async alternatives({ inquiry, context }) {
    return written(tellComparison(valueOf(await askAlternatives(inquiry)), context), context);
  },
  async map({ inquiry, context }) {
    return written(mapBlocks(valueOf(await askMap(inquiry)), context), context);
  },
  async moves({ inquiry, options, context }) {
    const moves = movesBlocks(valueOf(await askMoves(inquiry)), context);
    return written([...moves, ...(await habitsOf({ inquiry, options, context }))], context);
  },
  async racks({ inquiry, context }) {
    const racks = valueOf(await askRacks(inquiry));
    return written(racksBlocks(racks, inquiry.opened.scenario, context), context);
  },
  async suit({ inquiry, context }) {
    return written(suitBlocks(valueOf(await askSuit(inquiry)), context), context);
  },
  async guide({ inquiry, context, typed }) {
    const guide = valueOf(
      await askGuide({ ...inquiry, ...settingsTyped(guideHead.settings, typed ?? {}) }),
    );
    return written(guideBlocks(guide, context, { alone: false }), context);
  },
  async order(asking) {
    const { context } = asking;
    return written(orderBlocks(await orderOf(asking), context), context);
  },
  async cards({ inquiry, options, context }) {
    const { opened, runner, seed } = inquiry;
    const { answer } = await scenarioStudy(opened, runner, { ...options, watch: DAYS_WATCHED });
    const slower = await slowerClearing(
      opened.scenario,
      runner,
      seed === undefined ? {} : { seed },
    );
    return trainerCards({
      scenario: opened.scenario,
      answer,
      context,
      slower,
      storage: storageOf(opened.scenario, answer),
    })
      .map(({ html }) => html)
      .join('\n');
  },
};

/** How far the answer moves as habits vary; nothing for a stock or for days that were given. */
async function habitsOf({ inquiry, options, context }: Asking): Promise<readonly Block[]> {
  if (options.stock !== undefined || options.listed !== undefined) return [];
  const { answer } = await scenarioStudy(inquiry.opened, inquiry.runner, options);
  const { habits } = await withHabits(inquiry, answer, FEW_HABIT_DAYS);
  return habitsBlocks(habits!, answer, context);
}

/** Days watched for the busiest hour on the machine top. */
const DAYS_WATCHED = 100;

/** The order as the page can work it out: without the solver, which is larger than the whole page. */
export async function orderOf({ inquiry }: Asking): Promise<OrderStudy> {
  return valueOf(
    await askOrder(
      inquiry,
      inquiry.opened.scenario.supply?.date ?? new Date().toISOString().slice(0, 10),
    ),
  );
}

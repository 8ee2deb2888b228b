/**
 * The questions beside the size, one function each: from a scenario that was read to an answer, or to every
 * mistake that stands in the way. Nothing here needs more than a runner, so that a page can ask them too.
 */
import type { Fault } from '../quantities/flaw.js';
import type { SolverLoader } from '../ordering/choose-buy.js';
import type { SuitAnswer } from '../suiting/answer.js';
import { candidatesOf, type Candidate, type Opened } from './compare/alternatives.js';
import type { Comparison, MovesAnswer, TradeOffMap } from './compare/answer.js';
import { mapDays, mapFlaws, tradeOffMap } from './compare/map.js';
import type { QuickOptions } from './compare/quick.js';
import { compareStudy } from './compare/study.js';
import type { Guide } from './guide/answer.js';
import type { guide } from './guide/head.js';
import { checkTakeaway, housesOf } from './guide/houses.js';
import { guideStudy } from './guide/study.js';
import { orderStudy, type OrderStudy } from './order/study.js';
import { problem, type Flaw, type Problem } from '../scenario/problems.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { racksStudy } from './racks/study.js';
import type { RacksAnswer } from './racks/answer.js';
import type { Runner } from '../cafe/runner.js';
import type { Result } from './result.js';
import type { Given } from './settings.js';
import { whatMoves } from './compare/sensitivity.js';
import { suitStudy } from './suit/study.js';

export interface Question {
  readonly opened: Opened;
  /** Names the file of mistakes. */
  readonly fileName: string;
  readonly runner: Runner;
  /** Each absent: as the scenario or the question has it. */
  readonly level?: number | undefined;
  readonly seed?: string | undefined;
  readonly days?: number | undefined;
}

const reading = { piecesPerRack: piecesPerRackOf };
/** Days of one reading of a map or of an input at an end of its range. */
const QUICK_DAYS = 500;

/** The alternatives side by side; with none in the scenario, the house as it is and which level to buy. */
export async function askAlternatives(question: Question): Promise<Result<Comparison>> {
  const candidates = candidatesOf(question.opened, question.fileName, reading);
  if (!candidates.ok) return candidates;
  return {
    ok: true,
    value: await compareStudy(candidates.all, question.runner, {
      ...given(question),
      ...reading,
      usual: true,
    }),
  };
}

/** What houses of other sizes need: half, once, one and a half and twice the seats of this one. */
export async function askGuide({
  opened,
  fileName,
  runner,
  seats,
  takeaway,
  ...given
}: Question & Partial<Pick<Given<typeof guide.settings>, 'seats' | 'takeaway'>>): Promise<
  Result<Guide>
> {
  const houses = housesOf(opened.scenario, seats, takeaway);
  checkTakeaway(opened.scenario, takeaway ?? []);
  return guideStudy(opened, fileName, runner, { ...given, houses });
}

/** What machines, their class and clearing rounds are worth in ware. */
export async function askMap(question: Question): Promise<Result<TradeOffMap>> {
  const base = asItIs(question);
  const flaws = mapFlaws(base);
  if (flaws.length > 0) return { ok: false, problems: flaws.map((flaw) => placed(flaw, question)) };
  return {
    ok: true,
    value: await tradeOffMap(
      base,
      question.runner,
      question.days === undefined ? { ...quick(question), days: mapDays(base) } : quick(question),
      reading,
    ),
  };
}

/** How far each input moves the order over its range. */
export async function askMoves(question: Question): Promise<Result<MovesAnswer>> {
  return {
    ok: true,
    value: await whatMoves(asItIs(question), question.runner, quick(question), reading, null),
  };
}

/** What racks take, the lift of the fullest, washing in the rush, and the same drinks in wider cups. */
export async function askRacks({ opened, runner, seed }: Question): Promise<Result<RacksAnswer>> {
  return {
    ok: true,
    value: await racksStudy(opened.scenario, runner, seed === undefined ? {} : { seed }),
  };
}

/**
 * The order sheet.
 * @param date day of the order, `YYYY-MM-DD`
 * @param loadSolver null: the buy is good, but not proved to cost least
 */
export async function askOrder(
  question: Question,
  date: string,
  loadSolver: SolverLoader = null,
): Promise<Result<OrderStudy>> {
  const found = await orderStudy(question.opened.scenario, question.runner, {
    ...given(question),
    date,
    loadSolver,
    inputs: question.opened.inputs,
  });
  return found.ok
    ? found
    : { ok: false, problems: found.problems.map((one) => placed(flawOf(one), question)) };
}

/** Strength, heat, grip and fit of the vessels. */
export async function askSuit(question: Question): Promise<Result<SuitAnswer>> {
  const { opened, runner, seed } = question;
  const value = await suitStudy(
    opened.scenario,
    opened.inputs,
    runner,
    seed === undefined ? {} : { seed },
  );
  return value.problems.length === 0
    ? { ok: true, value }
    : { ok: false, problems: value.problems.map((one) => placed(flawOf(one), question)) };
}

/** The house as it is, whatever its alternatives say. */
function asItIs({ opened, fileName }: Question): Candidate {
  const { alternatives: _, ...scenario } = opened.scenario;
  const found = candidatesOf({ ...opened, scenario }, fileName, reading);
  // Without alternatives there is nothing that could be wrong with one.
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.all[0]!;
}

function given({ level, seed, days }: Question): {
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
} {
  return {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
  };
}

function quick({ opened: { scenario }, level, seed, days }: Question): QuickOptions {
  return {
    level: level ?? scenario.level,
    seed: seed ?? scenario.seed,
    days: Math.min(days ?? QUICK_DAYS, QUICK_DAYS),
    piecesPerRack: piecesPerRackOf,
  };
}

const flawOf = ({ path, value, rule, remedy }: Fault): Flaw => ({
  path,
  value,
  rule,
  remedy,
});

const placed = (flaw: Flaw, { opened, fileName }: Question): Problem =>
  problem(flaw, fileName, opened.positionOf(flaw.path, flaw.onKey));

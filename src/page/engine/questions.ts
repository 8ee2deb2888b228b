/** Sections that are worked out when the reader asks: one function each, scenario → HTML. */
import type { Problem as OrderProblem } from '../../ordering/problems.js';
import { trainerCards } from '../../report/cards/cards.js';
import { compareCharts } from '../../report/charts/compare-charts.js';
import type { ReportContext } from '../../report/context.js';
import { alternativesSection } from '../../report/sections/alternatives.js';
import { mapCharts, mapSection } from '../../report/sections/map.js';
import { movesCharts, movesSection } from '../../report/sections/moves.js';
import { orderCharts, orderDrawings, orderSection } from '../../report/sections/order.js';
import { rackDrawings, racksCharts, racksSection } from '../../report/sections/racks.js';
import { suitSection } from '../../report/sections/suit.js';
import { suitCharts } from '../../report/suit-charts.js';
import { slowerClearing, storageOf } from '../../study/card-facts.js';
import { candidatesOf, type Candidate } from '../../study/compare-alternatives.js';
import { mapFlaws } from '../../study/compare-map.js';
import { compareStudy, type CompareOptions } from '../../study/compare-study.js';
import { orderStudy, type OrderStudy } from '../../study/order-study.js';
import { piecesPerRackOf } from '../../study/rack-geometry.js';
import { ASSUMED_LIFT, racksStudy } from '../../study/racks-study.js';
import type { ReadResult } from '../../study/read-scenario.js';
import type { Runner } from '../../study/runner.js';
import { scenarioStudy } from '../../study/scenario-study.js';
import { suitStudy } from '../../study/suit-study.js';
import type { Asked, Question } from '../messages.js';
import { drawnCharts } from './drawn.js';

export type Opened = Extract<ReadResult, { ok: true }>;

export interface Inquiry {
  readonly read: Opened;
  readonly asked: Asked;
  readonly context: ReportContext;
  readonly runner: Runner;
}

/** A question that the scenario as it stands cannot answer; the message says why and what to do. */
export class NoAnswer extends Error {}

const reading = { piecesPerRack: piecesPerRackOf } as const;
/** Days that the cheap comparisons of a page are made on. */
const MAP_DAYS = 500;

export const answers: Readonly<Record<Question, (inquiry: Inquiry) => Promise<string>>> = {
  async alternatives(inquiry) {
    const comparison = await compareStudy(candidates(inquiry), inquiry.runner, compareOptions(inquiry));
    return alternativesSection(comparison, inquiry.context, await drawnCharts(compareCharts(comparison, inquiry.context)));
  },

  async map(inquiry) {
    const [base] = candidates(inquiry);
    const flaws = mapFlaws(base!);
    if (flaws.length > 0) throw new NoAnswer(flaws.map(({ rule, remedy }) => `${rule}; ${remedy}`).join('. '));
    const { map } = await compareStudy([base!], inquiry.runner, { ...compareOptions(inquiry), days: MAP_DAYS, map: true, noLevel: true });
    return mapSection(map!, inquiry.context, await drawnCharts(mapCharts(map!, inquiry.context)));
  },

  async moves(inquiry) {
    const { moves } = await compareStudy(candidates(inquiry).slice(0, 1), inquiry.runner, { ...compareOptions(inquiry), days: MAP_DAYS, moves: true, noLevel: true });
    return movesSection(moves!, inquiry.context, await drawnCharts(movesCharts(moves!, inquiry.context)));
  },

  async racks({ read, asked, context, runner }) {
    const answer = await racksStudy(read.scenario, runner, { lift: ASSUMED_LIFT, wider: true, ...seedOf(asked) });
    return racksSection(answer, context, [...rackDrawings(answer, read.scenario, context), ...(await drawnCharts(racksCharts(answer, context)))]);
  },

  async suit({ read, asked, context, runner }) {
    const answer = await suitStudy(read.scenario, read.inputs, runner, seedOf(asked));
    if (answer.problems.length > 0) throw new NoAnswer(answer.problems.map(({ rule, remedy }) => `${rule}; ${remedy}`).join('. '));
    return suitSection(answer, context, await drawnCharts(suitCharts(answer, context.locale, context.units)));
  },

  async order(inquiry) {
    const study = await orderOf(inquiry);
    return orderSection(study, inquiry.context, [...orderDrawings(study, inquiry.context), ...(await drawnCharts(orderCharts(study, inquiry.context)))]);
  },

  async cards({ read, asked, context, runner }) {
    const { scenario } = read;
    const { answer } = await scenarioStudy(read, runner, asked.options);
    const slower = await slowerClearing(scenario, runner, { ...seedOf(asked) });
    return trainerCards({ scenario, answer, context, slower, storage: storageOf(scenario, answer) }).map(({ html }) => html).join('\n');
  },
};

/** The order as the page can work it out: without the solver, which is larger than the whole page. */
export async function orderOf({ read, asked, runner }: Inquiry): Promise<OrderStudy> {
  const { level, days } = asked.options;
  const date = read.scenario.supply?.date ?? new Date().toISOString().slice(0, 10);
  const study = await orderStudy(read.scenario, runner, { ...(level === undefined ? {} : { level }), ...(days === undefined ? {} : { days }), ...seedOf(asked), date, loadSolver: null });
  if (!study.ok) throw new NoAnswer(study.problems.map(({ rule, remedy }: OrderProblem) => `${rule}; ${remedy}`).join('. '));
  return study.value;
}

function candidates({ read, asked }: Inquiry): readonly Candidate[] {
  const found = candidatesOf(read, asked.fileName, reading);
  if (!found.ok) throw new NoAnswer(found.problems.map(({ path, message }) => `${path}: ${message}`).join('. '));
  return found.all;
}

function compareOptions({ asked }: Inquiry): CompareOptions {
  const { level } = asked.options;
  return { ...(level === undefined ? {} : { level }), ...seedOf(asked), ...reading };
}

const seedOf = ({ options: { seed } }: Asked): { readonly seed?: string } => (seed === undefined ? {} : { seed });

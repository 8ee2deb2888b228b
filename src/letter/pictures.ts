/** Pictures and findings of a letter: of the stock, of the vessels where the scenario says how drinks are made, and of habits. */
import type { Runner } from '../cafe/runner.js';
import type { Fault } from '../quantities/flaw.js';
import type { Opened } from '../questions/question.js';
import type { Answer, HabitsAnswer } from '../questions/size/answer.js';
import { letterCharts } from '../questions/size/charts/letter-charts.js';
import type { RiskCurve } from '../questions/size/charts/risk-against-stock.js';
import { habitsFinding } from '../questions/size/tell-habits.js';
import { suitCharts, suitFindings } from '../questions/suit/charts.js';
import { suitStudy } from '../questions/suit/study.js';
import type { Chart } from '../tell/charts/chart-table.js';
import type { ReportContext } from '../tell/context.js';
import type { FindingList } from '../tell/finding-list.js';

export interface Pictures {
  readonly charts: readonly Chart[];
  readonly findings: readonly FindingList[];
  /** What is wrong in the part of the scenario about drinks and vessels. */
  readonly problems: readonly Fault[];
}

/** @param answer with its evidence @param habits absent: they were not varied */
export async function letterPictures(
  { scenario, inputs }: Opened,
  answer: Answer,
  curves: readonly RiskCurve[],
  context: ReportContext,
  runner: Runner,
  habits?: HabitsAnswer,
): Promise<Pictures> {
  const suit = scenario.suit === undefined ? null : await suitStudy(scenario, inputs, runner);
  return {
    charts: [
      ...letterCharts(answer, context, curves),
      ...(suit === null ? [] : suitCharts(suit, context.locale, context.units)),
    ],
    findings: [
      ...(suit === null ? [] : [suitFindings(suit)]),
      ...(habits === undefined ? [] : [habitsFinding(habits, answer, context)]),
    ],
    problems: suit?.problems ?? [],
  };
}

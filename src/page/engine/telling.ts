/** An answer → the parts of the letter and what the page's boxes show of it. Nothing is run but the one tight day. */
import { cautionsFor } from '../../tell/cautions.js';
import { formatsFor } from '../../tell/format.js';
import { picture } from '../../tell/html-picture.js';
import type { ReportContext } from '../../tell/context.js';
import { letterPictures } from '../../letter/pictures.js';
import { letterParts, type LetterPart } from '../../letter/letter.js';
import type { Runner } from '../../cafe/runner.js';
import type { CafeModel } from '../../cafe/model.js';
import type { Answer, HabitsAnswer } from '../../questions/size/answer.js';
import { busiestHour, meanStayMinutes } from '../../questions/size/house-measures.js';
import type { RiskCurve } from '../../questions/size/charts/risk-against-stock.js';
import { tightMorningOf } from '../../questions/walk/letter-picture.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { valueAt } from '../../scenario/tree.js';
import type { Asked, View } from '../messages.js';
import { drawnCharts } from '../../tell/drawn-chart.js';
import type { Opened } from './opened.js';
import { offersFor } from './questions.js';

type Parts = Readonly<Partial<Record<LetterPart, string>>>;

/** All parts but the pictures. */
export function writtenParts(
  answer: Answer,
  context: ReportContext,
  version: string,
  made?: string,
): Parts {
  const {
    pictures: _,
    findings: __,
    tight: ___,
    ...parts
  } = letterParts({
    answer,
    context,
    charts: [],
    inputs: context.inputs,
    cautions: cautionsFor(context),
    version,
    made,
  });
  return parts;
}

/** The tight morning of the answer. */
export async function tightPart(
  read: Opened,
  answer: Answer,
  context: ReportContext,
  { options }: Asked,
): Promise<string> {
  const one = tightMorningOf(read.scenario, answer, context, options.listed ?? null);
  const [drawn] = await drawnCharts([one]);
  return picture(drawn!, formatsFor(context));
}

/** Pictures and findings, from an answer that carries its evidence. */
export async function picturedParts(
  read: Opened,
  answer: Answer,
  curves: readonly RiskCurve[],
  context: ReportContext,
  version: string,
  runner: Runner,
  habits?: HabitsAnswer,
): Promise<Parts> {
  const shown = await letterPictures(read, answer, curves, context, runner, habits);
  const { pictures, findings } = letterParts({
    answer,
    context,
    charts: await drawnCharts(shown.charts),
    findings: shown.findings,
    inputs: [],
    cautions: [],
    version,
  });
  return { pictures, findings };
}

export function viewOf({ scenario, raw }: Opened, answer: Answer, context: ReportContext): View {
  const model: CafeModel = compile(scenario, piecesPerRackOf);
  const { clearing } = model;
  return {
    name: scenario.name,
    currency: context.currency,
    locale: context.locale,
    openingMinute: context.openingMinute,
    ware: answer.stock.map(({ ware, name, pieces }) => ({ id: ware, name, pieces })),
    cost: answer.cost,
    level: answer.level,
    share: answer.rushLevel ?? answer.certified,
    stockGiven: answer.rushLevel !== undefined,
    tightest: { day: answer.tightest.day, ware: answer.tightest.ware },
    ...(answer.tightestKind === undefined ? {} : { tightestKind: answer.tightestKind }),
    machines: Array.isArray(scenario.washing.machines)
      ? (valueAt(raw, ['washing', 'machines']) as unknown[])
      : null,
    days: answer.days,
    busiestHour: busiestHour(model),
    stayMinutes: meanStayMinutes(model),
    clearedAtOnce: clearing.every === null,
    offers: offersFor(scenario),
  };
}

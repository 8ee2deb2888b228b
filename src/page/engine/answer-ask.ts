/** What each ask is answered with. */
import { cautionsFor } from '../../tell/cautions.js';
import { letterCharts } from '../../questions/size/charts/letter-charts.js';
import type { ReportContext } from '../../tell/context.js';
import { contextOf } from '../../tell/context-of.js';
import { letterParts } from '../../letter/letter.js';
import { riskCurves } from '../../questions/size/risk-curves.js';
import { orderWorkbook } from '../../questions/order/workbook.js';
import { suitCharts, suitFindings } from '../../questions/suit/charts.js';
import { nameOf } from '../../quantities/name.js';
import type { Answer } from '../../questions/size/answer.js';
import { compile } from '../../scenario/compile.js';
import { walkDay } from '../../questions/walk/day.js';
import { editScenario, EditRefused, type Edit } from '../../scenario/edit-scenario.js';
import { formsOf } from '../../scenario/input-forms.js';
import { problem, type Problem } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario, type ReadResult } from '../../scenario/read-scenario.js';
import { scenarioStudy } from '../../questions/size/scenario-study.js';
import { suitStudy } from '../../questions/suit/study.js';
import { valueAt } from '../../scenario/tree.js';
import { walkLayouts } from '../../questions/walk/layouts.js';
import type { Asked, Mistake, Reply, Request, View } from '../messages.js';
import { drawnCharts } from './drawn.js';
import { answers, orderOf, swingsOf, type Asking } from './questions.js';
import { sharingRunner } from './shared-days.js';

export interface Engine {
  version: string;
  neighbour: MessagePort | null;
}

type Opened = Extract<ReadResult, { ok: true }>;
type Say = (reply: Reply) => void;

/** Days of a quick answer: enough to see which way a change goes, told as provisional. */
const QUICK = { days: 200, certifyOn: 200 } as const;
const QUICK_AT_STOCK = { days: 400 } as const;
const DAYS_WATCHED = 300;

export async function answerAsk(
  engine: Engine,
  request: Exclude<Request, { kind: 'join' | 'stop' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  switch (request.kind) {
    case 'forms':
      return forms(engine, request, say);
    case 'warm':
      return warm(engine, request);
    case 'quick':
      return quick(engine, request.asked, request.edits, say);
    case 'sure':
      return sure(engine, request, wanted, say);
    case 'walk':
      return walk(request, say);
    case 'question':
      return question(engine, request, wanted, say);
    case 'swings':
      return swings(engine, request.asked, wanted, say);
    case 'workbook':
      return workbook(engine, request.asked, wanted, say);
  }
}

function opened({ text, fileName }: Asked, say: Say): Opened | null {
  const read = readScenario(text, fileName, { piecesPerRack: piecesPerRackOf });
  if (read.ok) return read;
  say({ kind: 'mistakes', mistakes: read.problems.map(mistakeOf) });
  return null;
}

/** A change that was refused stands nowhere in the file yet. */
const nowhere = { line: 0, column: 0 } as const;

function changed(text: string, edits: readonly Edit[], say: Say): string | null {
  if (edits.length === 0) return text;
  try {
    return editScenario(text, edits);
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    say({
      kind: 'mistakes',
      mistakes: error.flaws.map((flaw) => mistakeOf(problem(flaw, '', nowhere))),
    });
    return null;
  }
}

const mistakeOf = ({ path, line, message }: Problem): Mistake => ({ path, line, message });

function forms(
  { version }: Engine,
  { asked, sent }: Extract<Request, { kind: 'forms' }>,
  say: Say,
): void {
  const read = opened(asked, say);
  if (read === null) return;
  const stock = Object.entries(read.scenario.ware).map(([id, ware]) => ({
    id,
    name: nameOf(id, ware),
    pieces: sent.pieces[id] ?? 0,
  }));
  say({
    kind: 'view',
    view: viewOf(
      read,
      contextFor(read, asked, version),
      stock,
      asked.options.stock !== undefined,
      sent.tightest,
      null,
    ),
  });
  say({ kind: 'text', text: asked.text, groups: formsOf(read) });
}

async function question(
  engine: Engine,
  { asked, question: one }: Extract<Request, { kind: 'question' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const asking = askingOf(engine, asked, wanted, say);
  if (asking !== null) say({ kind: 'section', html: await answers[one](asking) });
}

async function workbook(
  engine: Engine,
  asked: Asked,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const asking = askingOf(engine, asked, wanted, say);
  if (asking !== null)
    say({ kind: 'file', bytes: await orderWorkbook((await orderOf(asking)).sheet) });
}

async function swings(
  engine: Engine,
  asked: Asked,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const asking = askingOf(engine, asked, wanted, say);
  if (asking !== null) say({ kind: 'swings', swings: await swingsOf(asking) });
}

function askingOf(
  { version, neighbour }: Engine,
  asked: Asked,
  wanted: () => boolean,
  say: Say,
): Asking | null {
  const read = opened(asked, say);
  if (read === null) return null;
  const { level, seed, days } = asked.options;
  const runner = sharingRunner(neighbour, wanted, toldNowAndThen(say));
  return {
    inquiry: { opened: read, fileName: asked.fileName, runner, level, seed, days },
    options: asked.options,
    context: contextFor(read, asked, version),
  };
}

/** Each telling makes the page draw, on a core that the engines could use. */
const TELL_EVERY_MS = 300;

function toldNowAndThen(say: Say): (days: number) => void {
  let [days, last] = [0, performance.now()];
  return (more) => {
    days += more;
    if (performance.now() - last < TELL_EVERY_MS) return;
    say({ kind: 'progress', days });
    [days, last] = [0, performance.now()];
  };
}

function walk({ asked, day, stock }: Extract<Request, { kind: 'walk' }>, say: Say): void {
  const read = opened(asked, say);
  if (read === null) return;
  const model = compile(read.scenario, piecesPerRackOf);
  const pieces = model.ware.map(({ id }) => stock[id] ?? 0);
  say({
    kind: 'walk',
    walk: walkDay({
      model,
      seed: asked.options.seed ?? read.scenario.seed,
      day,
      stock: pieces,
      listed: asked.options.listed ?? null,
    }),
    layouts: walkLayouts(read.scenario),
  });
}

async function warm(
  engine: Engine,
  { asked, pictures }: Extract<Request, { kind: 'warm' }>,
): Promise<void> {
  const nobody = (): void => {};
  if (pictures)
    await sure(
      engine,
      {
        kind: 'sure',
        asked: { ...asked, options: { ...asked.options, days: 300 } },
        pictures: true,
      },
      () => true,
      nobody,
    );
  else for (let time = 0; time < 3; time += 1) await quick(engine, asked, [], nobody);
}

async function quick(
  { version }: Engine,
  asked: Asked,
  edits: readonly Edit[],
  say: Say,
): Promise<void> {
  const text = changed(asked.text, edits, say);
  if (text === null) return;
  const read = opened({ ...asked, text }, say);
  if (read === null) return;
  const { days: _, ...options } = asked.options;
  const few =
    options.listed !== undefined ? {} : options.stock === undefined ? QUICK : QUICK_AT_STOCK;
  const { answer } = await scenarioStudy(
    read,
    sharingRunner(null, () => true),
    { ...options, ...few },
  );
  const context = contextFor(read, asked, version);
  const parts = letterParts({ answer, context, charts: [], inputs: [], cautions: [], version });
  say({
    kind: 'answer',
    certified: false,
    view: viewOfAnswer(read, answer, context),
    parts: {
      heading: parts.heading,
      lead: parts.lead,
      order: parts.order,
      mind: parts.mind,
      rush: parts.rush,
    },
    json: null,
  });
  say({ kind: 'text', text, groups: formsOf(read) });
}

async function sure(
  { version, neighbour }: Engine,
  { asked, pictures }: Extract<Request, { kind: 'sure' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const read = opened(asked, say);
  if (read === null) return;
  const runner = sharingRunner(neighbour, wanted, toldNowAndThen(say));
  const { answer, risk, watch } = await scenarioStudy(read, runner, asked.options);
  const context = contextFor(read, asked, version);
  const { heading, lead, order, mind, rush, cautions, inputs, method, colophon } = letterParts({
    answer,
    context,
    charts: [],
    inputs: context.inputs,
    cautions: cautionsFor(context),
    version,
  });
  say({
    kind: 'answer',
    certified: true,
    view: viewOfAnswer(read, answer, context),
    parts: { heading, lead, order, mind, rush, cautions, inputs, method, colophon },
    json: null,
  });
  if (!pictures) return;
  const whole: Answer = { ...answer, evidence: watch(DAYS_WATCHED) };
  const suit =
    read.scenario.suit === undefined ? null : await suitStudy(read.scenario, read.inputs, runner);
  const charts = await drawnCharts([
    ...letterCharts(whole, context, riskCurves(whole, risk)),
    ...(suit === null ? [] : suitCharts(suit, context.locale, context.units)),
  ]);
  const findings = suit === null ? [] : [suitFindings(suit, context)];
  const drawn = letterParts({
    answer: whole,
    context,
    charts,
    findings,
    inputs: [],
    cautions: [],
    version,
  });
  say({
    kind: 'pictures',
    parts: { pictures: drawn.pictures, findings: drawn.findings },
    json: `${JSON.stringify(whole, null, 1)}\n`,
  });
}

function contextFor(read: Opened, { look }: Asked, version: string): ReportContext {
  const context = contextOf(read.scenario, read.inputs, version, piecesPerRackOf, look.units);
  return { ...context, ...(look.locale === null ? {} : { locale: look.locale }) };
}

const viewOfAnswer = (read: Opened, answer: Answer, context: ReportContext): View =>
  viewOf(
    read,
    context,
    answer.stock.map(({ ware, name, pieces }) => ({ id: ware, name, pieces })),
    answer.rushLevel !== undefined,
    answer.tightest,
    answer.days,
  );

const viewOf = (
  { scenario, raw }: Opened,
  context: ReportContext,
  ware: View['ware'],
  stockGiven: boolean,
  { day, ware: scarcest }: View['tightest'],
  days: View['days'],
): View => ({
  name: scenario.name,
  currency: context.currency,
  locale: context.locale,
  openingMinute: context.openingMinute,
  ware,
  stockGiven,
  tightest: { day, ware: scarcest },
  machines: Array.isArray(scenario.washing.machines)
    ? (valueAt(raw, ['washing', 'machines']) as unknown[])
    : null,
  days,
  has: {
    suit: scenario.suit !== undefined,
  },
});

/** What each ask is answered with. */
import { riskCurves } from '../../questions/size/risk-curves.js';
import type { Answer } from '../../questions/size/answer.js';
import { compile } from '../../scenario/compile.js';
import { walkDay } from '../../questions/walk/day.js';
import { madeSentence } from '../../questions/made.js';
import type { Edit } from '../../scenario/edit.js';
import { kindOf } from '../../scenario/kinds.js';
import { formsOf } from '../../scenario/input-forms.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { scenarioStudy } from '../../questions/size/scenario-study.js';
import { walkLayouts } from '../../questions/walk/layouts.js';
import type { Asked, Request } from '../messages.js';
import { afterChanges, contextFor, opened, type Say } from './opened.js';
import { section, workbook, type AskingHere } from './questions.js';
import { sharingRunner } from './shared-days.js';
import { picturedParts, tightPart, viewOf, writtenParts } from './telling.js';

export interface Engine {
  version: string;
  /** To those who run days for it. */
  readonly neighbours: MessagePort[];
}

/** Days of a quick answer: enough to see which way a change goes, shown as provisional. */
const QUICK = { days: 200, certifyOn: 200 } as const;
const QUICK_AT_STOCK = { days: 400 } as const;
const DAYS_WATCHED = 300;
/** Days on which it is seen how safe the stock of before would be now. */
const SAFETY_DAYS = 4000;

export async function answerAsk(
  engine: Engine,
  request: Exclude<Request, { kind: 'join' | 'stop' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  switch (request.kind) {
    case 'forms':
      return forms(engine, request, say);
    case 'retell':
      return retell(engine, request, wanted, say);
    case 'warm':
      return warm(engine, request, wanted);
    case 'quick':
      return quick(engine, request.asked, request.edits, wanted, say);
    case 'sure':
      return sure(engine, request.asked, wanted, say);
    case 'safety':
      return safety(engine, request, wanted, say);
    case 'walk':
      return walk(request, say);
    case 'question':
      return question(engine, request, wanted, say);
    case 'workbook':
      return file(engine, request.asked, wanted, say);
  }
}

function forms(
  { version }: Engine,
  { asked, answer }: Extract<Request, { kind: 'forms' }>,
  say: Say,
): void {
  const read = opened(asked, say);
  if (read === null) return;
  say({ kind: 'view', view: viewOf(read, answer, contextFor(read, asked, version, answer)) });
  say({ kind: 'text', text: asked.text, groups: formsOf(read) });
}

/** The same answer in other units or another place's numbers; no day of the answer is run again. */
async function retell(
  { version }: Engine,
  { asked, answer, curves, habits, made }: Extract<Request, { kind: 'retell' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const read = opened(asked, say);
  if (read === null) return;
  const context = contextFor(read, asked, version, answer);
  say({
    kind: 'several',
    replies: [
      {
        kind: 'answer',
        certified: true,
        view: viewOf(read, answer, context),
        parts: writtenParts(answer, context, version, made && madeSentence(made)),
      },
      { kind: 'text', text: asked.text, groups: formsOf(read) },
    ],
  });
  say({ kind: 'parts', parts: { tight: await tightPart(read, answer, context, asked) } });
  const runner = sharingRunner([], wanted);
  const parts = await picturedParts(read, answer, curves, context, version, runner, habits);
  say({ kind: 'whole', parts, answer, curves });
}

async function question(
  engine: Engine,
  { asked, ...offered }: Extract<Request, { kind: 'question' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  // Whoever runs days for others must not ask them for any: both would wait.
  const here = offered.alone === true ? { ...engine, neighbours: [] } : engine;
  const asking = askingOf(here, asked, wanted, say);
  if (asking === null) return;
  const show = (html: string): void => say({ kind: 'interim', html });
  say({ kind: 'section', ...(await section(asking, asked.options, offered, show)) });
}

async function file(engine: Engine, asked: Asked, wanted: () => boolean, say: Say): Promise<void> {
  const asking = askingOf(engine, asked, wanted, say);
  if (asking === null) return;
  const { ending, content } = await workbook(asking, asked.options);
  say({ kind: 'file', ending, bytes: content as Uint8Array });
}

function askingOf(
  { version, neighbours }: Engine,
  asked: Asked,
  wanted: () => boolean,
  say: Say,
): AskingHere | null {
  const read = opened(asked, say);
  if (read === null) return null;
  return {
    opened: read,
    fileName: asked.fileName,
    text: asked.text,
    runner: {
      ...sharingRunner(neighbours, wanted, reportedNowAndThen(say)),
      expect: (most) => say({ kind: 'progress', days: 0, most }),
    },
    context: contextFor(read, asked, version),
    beside: bytesOf(asked.beside ?? {}),
    today: new Date().toISOString().slice(0, 10),
  };
}

const bytesOf = (texts: Readonly<Record<string, string>>): Record<string, Uint8Array> =>
  Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [name, new TextEncoder().encode(text)]),
  );

/** Each telling makes the page draw, on a core that the engines could use. */
const TELL_EVERY_MS = 300;

function reportedNowAndThen(say: Say): (days: number) => void {
  let [days, last] = [0, performance.now()];
  return (more) => {
    days += more;
    if (performance.now() - last < TELL_EVERY_MS) return;
    say({ kind: 'progress', days });
    [days, last] = [0, performance.now()];
  };
}

function walk({ asked, ofDay, day, stock }: Extract<Request, { kind: 'walk' }>, say: Say): void {
  const read = opened(asked, say);
  if (read === null) return;
  const { seed = read.scenario.seed, listed = null } = asked.options;
  const shown = kindOf(read.scenario, ofDay, seed);
  const model = compile(shown.scenario, piecesPerRackOf);
  const pieces = model.ware.map(({ id }) => stock[id] ?? 0);
  say({
    kind: 'walk',
    walk: walkDay({
      model,
      seed: shown.seed,
      day,
      stock: pieces,
      listed,
    }),
    layouts: walkLayouts(shown.scenario),
  });
}

async function warm(
  engine: Engine,
  { asked, pictures }: Extract<Request, { kind: 'warm' }>,
  wanted: () => boolean,
): Promise<void> {
  const nobody = (): void => {};
  if (pictures)
    await sure(engine, { ...asked, options: { ...asked.options, days: 300 } }, wanted, nobody);
  else for (let time = 0; time < 3; time += 1) await quick(engine, asked, [], wanted, nobody);
}

async function quick(
  { version }: Engine,
  asked: Asked,
  edits: readonly (readonly Edit[])[],
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const { read, text, mistakes } = afterChanges(asked, edits);
  const refused = { kind: 'mistakes', mistakes } as const;
  if (read === null) return say(refused);
  const { days: _, ...options } = asked.options;
  const few =
    options.listed !== undefined ? {} : options.stock === undefined ? QUICK : QUICK_AT_STOCK;
  const { answer } = await scenarioStudy(read, sharingRunner([], wanted), { ...options, ...few });
  const context = contextFor(read, asked, version, answer);
  say({
    kind: 'several',
    replies: [
      {
        kind: 'answer',
        certified: false,
        view: viewOf(read, answer, context),
        parts: writtenParts(answer, context, version),
      },
      { kind: 'text', text, groups: formsOf(read) },
      ...(mistakes.length > 0 ? [refused] : []),
    ],
  });
  say({ kind: 'parts', parts: { tight: await tightPart(read, answer, context, asked) } });
}

async function sure(
  { version, neighbours }: Engine,
  asked: Asked,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const read = opened(asked, say);
  if (read === null) return;
  const runner = sharingRunner(neighbours, wanted, reportedNowAndThen(say));
  const { answer, risk, watch } = await scenarioStudy(read, runner, asked.options);
  const context = contextFor(read, asked, version, answer);
  say({
    kind: 'answer',
    certified: true,
    view: viewOf(read, answer, context),
    parts: writtenParts(answer, context, version),
  });
  say({ kind: 'parts', parts: { tight: await tightPart(read, answer, context, asked) } });
  const whole: Answer = { ...answer, evidence: await watch(DAYS_WATCHED) };
  const curves = riskCurves(whole, risk);
  const parts = await picturedParts(read, whole, curves, context, version, runner);
  say({ kind: 'whole', parts, answer: whole, curves });
}

/** How safe a stock would be in the house as it now is. */
async function safety(
  { neighbours }: Engine,
  { asked, stock }: Extract<Request, { kind: 'safety' }>,
  wanted: () => boolean,
  say: Say,
): Promise<void> {
  const read = opened(asked, say);
  if (read === null) return;
  const days = asked.options.listed === undefined ? { days: SAFETY_DAYS } : {};
  const { answer } = await scenarioStudy(read, sharingRunner(neighbours, wanted), {
    ...asked.options,
    ...days,
    stock,
  });
  if (answer.rushLevel !== undefined) say({ kind: 'safety', share: answer.rushLevel.level });
}

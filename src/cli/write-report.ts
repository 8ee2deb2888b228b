/** The files of a report: letter, pictures and answer, written whole or not at all. */
import { existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import type { ReportContext } from '../tell/context.js';
import { contextOf } from '../tell/context-of.js';
import { cautionsFor } from '../tell/cautions.js';
import type { Chart } from '../tell/charts/chart-table.js';
import type { GivenOptions } from '../letter/live.js';
import { reportHtml } from '../letter/letter.js';
import { letterPictures } from '../letter/pictures.js';
import { drawnChart } from '../tell/drawn-chart.js';
import type { ReportChart } from '../tell/html-picture.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { inLetter } from '../questions/letter-list.js';
import { riskCurves } from '../questions/size/risk-curves.js';
import type { Answer } from '../questions/size/answer.js';
import {
  FEW_HABIT_DAYS,
  askSize,
  checkChosen,
  withHabits,
  withInputs,
  type SizeStudy,
} from '../questions/size/ask.js';
import { madeSentence, type Made } from '../questions/made.js';
import { size } from '../questions/size/head.js';
import { sizeBlocks } from '../questions/size/tell.js';
import type { Given } from '../questions/settings.js';
import { writeText } from '../tell/write-text.js';
import { tightMorningOf } from '../questions/walk/letter-picture.js';
import type { Scenario } from '../scenario/scenario.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { problem } from '../scenario/problems.js';
import { inThisThread } from '../cafe/runner.js';
import { keepInputs, tryOutput, writeAll } from './files.js';
import { partsOf, type PartAsked } from './report-parts.js';
import { filesBeside } from './run-question.js';
import { livePage, typefaces } from './live-page.js';
import { madeOf, withMade } from './made.js';
import { openScenario, problemsAsMistake, type OpenScenario } from './open-scenario.js';
import { printAnswer } from './print.js';
import { widthOf } from './terminal.js';
import { version } from './version.js';
import { withRunner } from './with-runner.js';

/** Listed days that a letter carries with it. */
const MOST_LISTED = 20;
/** Days watched for the pictures. */
const DAYS_WATCHED = 300;

export interface ReportArguments {
  readonly file: string;
  readonly folder: string;
  /** Settings of the size, as `givenOf` read them. */
  readonly given: Given<typeof size.settings>;
  /** The same as they were typed. */
  readonly typed: Readonly<Record<string, string>>;
  readonly all: boolean;
  readonly threads: number | undefined;
  /** Questions that have a part in the letter. */
  readonly parts?: readonly PartAsked[];
}

/** A scenario that a letter is written of. */
export interface LetterSource {
  /** Name of its file, without folders: the letter hands it back under it. */
  readonly fileName: string;
  readonly text: string;
  readonly opened: OpenScenario;
  /** What the letter was made from, where it was asked for by a command of its own. */
  readonly made?: Made;
  /** Tables that the scenario names, as text by name. */
  readonly beside?: Readonly<Record<string, string>>;
}

type LetterOptions = Pick<ReportArguments, 'given' | 'threads' | 'parts'>;

/** Writes the files and prints the answer. @throws MistakeError with everything that is wrong */
export async function writeReport(args: ReportArguments): Promise<void> {
  const { file: scenarioFile, folder } = args;
  const opened = await openScenario(scenarioFile);
  await tryOutput(folder, 'folder');
  const fileName = basename(scenarioFile);
  const stem = join(folder, basename(scenarioFile, extname(scenarioFile)));
  keepInputs([`${stem}.html`, `${stem}.json`], [scenarioFile]);
  const made = madeOf({
    question: 'report',
    settings: size.settings,
    typed: args.typed,
    given: args.given,
    file: scenarioFile,
    text: opened.text,
    seed: opened.scenario.seed,
  });
  const beside = await tablesBeside(scenarioFile, opened.scenario);
  const letter = await letterOf({ fileName, text: opened.text, opened, made, beside }, args);
  const files = letter.files.map(({ ending, content }) => ({ path: `${stem}.${ending}`, content }));
  await writeAll(files);
  printAnswer(
    null,
    () => writeText(sizeBlocks(letter.answer, letter.context), { width: widthOf(), all: args.all }),
    files,
  );
}

/** The letter, its pictures and its answer; nothing is written yet. */
export async function letterOf(
  { fileName, text, opened, made, beside = {} }: LetterSource,
  args: LetterOptions,
): Promise<{
  readonly answer: Answer;
  readonly context: ReportContext;
  readonly files: readonly { readonly ending: string; readonly content: string }[];
}> {
  const { given } = args;
  const { answer, full, risk, listed } = await studied(args, opened);
  const { level, seed, days, confidence } = given;
  // What the page must ask for to give the same answer.
  const options: GivenOptions = {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    ...(confidence === undefined ? {} : { confidence }),
    ...(given.stock === undefined ? {} : { stock: piecesOf(answer) }),
    ...(listed === null ? {} : { listed }),
  };
  const context = contextOf(
    opened.scenario,
    opened.inputs,
    version,
    piecesPerRackOf,
    'metric',
    answer.tightestKind,
  );
  const curves = riskCurves(answer, risk);
  const pictures = await letterPictures(
    opened,
    answer,
    curves,
    context,
    inThisThread(),
    full.habits,
  );
  if (pictures.problems.length > 0)
    throw problemsAsMistake(
      pictures.problems.map((one) => problem(one, 'scenario', opened.positionOf(one.path))),
    );
  const charts = await drawn(pictures.charts);
  const tight = await drawn([
    tightMorningOf(opened.scenario, answer, context, options.listed ?? null),
  ]);
  // Many listed days are too much for a letter: it is then text and pictures alone.
  const live =
    (options.listed?.length ?? 0) > MOST_LISTED
      ? null
      : await livePage({
          fileName,
          text,
          options,
          answer,
          curves,
          ...(full.habits === undefined ? {} : { habits: full.habits }),
          ...(made === undefined ? {} : { made }),
          ...(Object.keys(beside).length === 0 ? {} : { beside }),
        });
  const parts = await partsOf({
    opened,
    fileName,
    context,
    text,
    parts: args.parts ?? [],
    given,
    threads: args.threads,
  });
  const html = reportHtml(
    {
      answer,
      context,
      tight: tight[0]!,
      charts,
      findings: pictures.findings,
      inputs: context.inputs,
      cautions: cautionsFor(context),
      version,
      made: made && madeSentence(made),
      recorded: parts.html,
    },
    live,
    await typefaces(),
  );
  return {
    answer: full,
    context,
    files: [
      { ending: 'html', content: html },
      {
        ending: 'json',
        content: `${JSON.stringify(made === undefined ? answer : withMade(answer, made), null, 1)}\n`,
      },
      ...charts.map(({ id, file }) => ({ ending: `${id}.svg`, content: file })),
      ...parts.files,
    ],
  };
}

/** Tables that the letter's questions read, those that are there: the letter asks its reader for the others. */
async function tablesBeside(file: string, scenario: Scenario): Promise<Record<string, string>> {
  const tables: Record<string, string> = {};
  for (const name of new Set(inLetter.flatMap(({ beside }) => beside?.(scenario) ?? []))) {
    if (!existsSync(join(dirname(file), name))) continue;
    const read = await filesBeside(file, [name]);
    tables[name] = new TextDecoder().decode(read[name]);
  }
  return tables;
}

async function studied(
  { given, threads }: LetterOptions,
  opened: OpenScenario,
): Promise<SizeStudy & { readonly full: Answer }> {
  checkChosen(given);
  return withRunner('running days', threads, async (runner) => {
    const study = await askSize({ opened, runner }, given, { watch: DAYS_WATCHED });
    if (!study.ok) throw problemsAsMistake(study.problems);
    const { answer: plain, listed } = study.value;
    const chosen = given.stock === undefined && listed === null;
    const answer =
      given['allow-for-inputs'] === true ? await withInputs({ opened, runner }, plain) : plain;
    const full = chosen ? await withHabits({ opened, runner }, answer, FEW_HABIT_DAYS) : answer;
    return { ...study.value, answer, full };
  });
}

const piecesOf = ({ stock }: Answer): Record<string, number> =>
  Object.fromEntries(stock.map(({ ware, pieces }) => [ware, pieces]));

/** In the letter the title stands beside the picture; the picture's own file carries it. */
const drawn = (charts: readonly Chart[]): Promise<(ReportChart & { file: string })[]> =>
  Promise.all(
    charts.map(async (one) => ({
      ...(await drawnChart(one)),
      file: standaloneSvg(await renderSvg(one.spec)),
    })),
  );

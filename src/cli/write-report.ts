/** The files of a report: letter, pictures and answer, written whole or not at all. */
import { basename, extname, join } from 'node:path';
import type { ReportContext } from '../tell/context.js';
import { contextOf } from '../tell/context-of.js';
import { cautionsFor } from '../tell/cautions.js';
import type { Chart } from '../tell/charts/chart-table.js';
import { letterCharts } from '../questions/size/charts/letter-charts.js';
import type { GivenOptions } from '../letter/live.js';
import { reportHtml } from '../letter/letter.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { riskCurves } from '../questions/size/risk-curves.js';
import { suitCharts, suitFindings } from '../questions/suit/charts.js';
import { answerText } from '../questions/size/text.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { largestScenarioBytes } from '../scenario/parse-yaml.js';
import { problem } from '../scenario/problems.js';
import type { Runner } from '../cafe/runner.js';
import { suitStudy } from '../questions/suit/study.js';
import { readWhole, writeAll } from './files.js';
import { livePage, typefaces } from './live-page.js';
import { problemsAsMistake } from './open-scenario.js';
import type { RunStudy } from './run-study.js';
import { version } from './version.js';

/** Listed days that a letter carries with it. */
const MOST_LISTED = 20;

export async function writeReport(
  scenarioFile: string,
  folder: string,
  options: GivenOptions,
  { answer, risk, opened }: RunStudy,
  runner: Runner,
): Promise<{ files: string[]; text: string }> {
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const charts = await drawn(letterCharts(answer, context, riskCurves(answer, risk)));
  const suited =
    opened.scenario.suit === undefined ? null : await suitParts(opened, context, runner);
  const stem = join(folder, basename(scenarioFile, extname(scenarioFile)));
  const pieces = Object.fromEntries(answer.stock.map(({ ware, pieces: count }) => [ware, count]));
  // Many listed days are too much for a letter: it is then text and pictures alone.
  const live =
    (options.listed?.length ?? 0) > MOST_LISTED
      ? null
      : await livePage({
          fileName: basename(scenarioFile),
          text: await scenarioText(scenarioFile),
          options,
          pieces,
          tightest: { day: answer.tightest.day, ware: answer.tightest.ware },
        });
  const html = reportHtml(
    {
      answer,
      context,
      charts: [...charts, ...(suited?.charts ?? [])],
      findings: suited?.findings ?? [],
      inputs: context.inputs,
      cautions: cautionsFor(context),
      version,
    },
    live,
    await typefaces(),
  );
  const files = [
    { path: `${stem}.html`, content: html },
    { path: `${stem}.json`, content: `${JSON.stringify(answer, null, 1)}\n` },
    ...[...charts, ...(suited?.charts ?? [])].map(({ id, file }) => ({
      path: `${stem}.${id}.svg`,
      content: file,
    })),
  ];
  await writeAll(files);
  return { files: files.map(({ path }) => path), text: answerText(answer, context) };
}

const scenarioText = async (path: string): Promise<string> =>
  new TextDecoder().decode(await readWhole(path, largestScenarioBytes));

/** In the letter the title stands beside the picture; the picture's own file carries it. */
const drawn = (charts: readonly Chart[]): Promise<(Chart & { svg: string; file: string })[]> =>
  Promise.all(
    charts.map(async (one) => ({
      ...one,
      svg: await renderSvg(one.spec, { bare: true, idPrefix: one.id }),
      file: standaloneSvg(await renderSvg(one.spec)),
    })),
  );

/** Which vessel for which drink, where the scenario says how drinks are made. */
async function suitParts(
  { scenario, inputs, positionOf }: RunStudy['opened'],
  context: ReportContext,
  runner: Runner,
): Promise<{
  charts: Awaited<ReturnType<typeof drawn>>;
  findings: { title: string; items: string[] }[];
}> {
  const answer = await suitStudy(scenario, inputs, runner);
  if (answer.problems.length > 0)
    throw problemsAsMistake(
      answer.problems.map((one) => problem(one, 'scenario', positionOf(one.path))),
    );
  return {
    charts: await drawn(suitCharts(answer, context.locale)),
    findings: [suitFindings(answer, context)],
  };
}

/** The files of a report: letter, pictures and answer, written whole or not at all. */
import { basename, extname, join } from 'node:path';
import { contextOf } from '../report/context-of.js';
import { cautionsFor } from '../report/cautions.js';
import { letterCharts } from '../report/charts/letter-charts.js';
import { reportHtml } from '../report/html.js';
import { renderSvg, standaloneSvg } from '../report/render-svg.js';
import { riskCurves } from '../report/risk-curves.js';
import { answerText } from '../report/text-answer.js';
import { piecesPerRackOf } from '../study/rack-geometry.js';
import { writeAll } from './files.js';
import type { RunStudy } from './run-study.js';
import { version } from './version.js';

export async function writeReport(scenarioFile: string, folder: string, { answer, risk, opened }: RunStudy): Promise<{ files: string[]; text: string }> {
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const charts = await Promise.all(
    letterCharts(answer, context, riskCurves(answer, risk)).map(async (chart) => ({
      ...chart,
      // In the letter the title stands beside the picture; the picture's own file carries it.
      svg: await renderSvg(chart.spec, { bare: true, idPrefix: chart.id }),
      file: standaloneSvg(await renderSvg(chart.spec)),
    })),
  );
  const stem = join(folder, basename(scenarioFile, extname(scenarioFile)));
  const html = reportHtml({ answer, context, charts, inputs: context.inputs, cautions: cautionsFor(context), version });
  const files = [
    { path: `${stem}.html`, content: html },
    { path: `${stem}.json`, content: `${JSON.stringify(answer, null, 1)}\n` },
    ...charts.map(({ id, file }) => ({ path: `${stem}.${id}.svg`, content: file })),
  ];
  await writeAll(files);
  return { files: files.map(({ path }) => path), text: answerText(answer, context) };
}

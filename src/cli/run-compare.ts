/** A scenario file with alternatives → the comparison, printed, and written with its pictures where a folder is named. */
import { basename, extname, join } from 'node:path';
import { compareCharts } from '../questions/compare/charts/compare-charts.js';
import { tellComparison } from '../questions/compare/tell.js';
import { writeText } from '../tell/write-text.js';
import type { ReportContext } from '../tell/context.js';
import type { Comparison } from '../questions/compare/answer.js';
import { contextOf } from '../tell/context-of.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { candidatesOf } from '../questions/compare/alternatives.js';
import { mapFlaws } from '../questions/compare/map.js';
import { placed } from '../questions/part-checks.js';
import { compareStudy } from '../questions/compare/study.js';
import { inOrder } from '../scenario/problems.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { tryOutput, writeAll } from './files.js';
import { openScenario, problemsAsMistake } from './open-scenario.js';
import { version } from './version.js';
import { printAnswer } from './print.js';
import { widthOf } from './terminal.js';
import { withRunner } from './with-runner.js';

export interface CompareArguments {
  readonly file: string;
  readonly level?: number | undefined;
  readonly seed?: string | undefined;
  readonly days?: number | undefined;
  readonly map: boolean;
  readonly moves: boolean;
  readonly uncertainty?: number | undefined;
  readonly equalGuests: boolean;
  readonly threads?: number | undefined;
  readonly all: boolean;
  readonly json: boolean;
  readonly out?: string | undefined;
}

export async function runCompare(args: CompareArguments): Promise<void> {
  const opened = await openScenario(args.file);
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const candidates = candidatesOf(opened, args.file, { piecesPerRack: piecesPerRackOf });
  const mapped = args.map ? placed(mapFlaws(opened), opened, args.file) : [];
  if (!candidates.ok || mapped.length > 0)
    throw problemsAsMistake(inOrder([...(candidates.ok ? [] : candidates.problems), ...mapped]));
  const comparison = await withRunner('comparing', args.threads, (runner) =>
    compareStudy(candidates.all, runner, {
      ...(args.level === undefined ? {} : { level: args.level }),
      ...(args.seed === undefined ? {} : { seed: args.seed }),
      ...(args.days === undefined ? {} : { days: args.days }),
      usual: !args.map && !args.moves && args.uncertainty === undefined,
      map: args.map,
      moves: args.moves || args.uncertainty !== undefined,
      draws: args.uncertainty ?? 0,
      equalGuests: args.equalGuests,
      piecesPerRack: piecesPerRackOf,
    }),
  );
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const blocks = tellComparison(comparison, context);
  const text = writeText(blocks, {
    width: widthOf(),
    all: args.all,
  });
  const files =
    args.out === undefined
      ? []
      : await written(args.file, args.out, comparison, context, writeText(blocks, { all: true }));
  printAnswer(args.json ? comparison : null, () => text, files);
}

async function written(
  scenarioFile: string,
  folder: string,
  comparison: Comparison,
  context: ReportContext,
  text: string,
): Promise<{ path: string; content: string }[]> {
  const stem = join(folder, `${basename(scenarioFile, extname(scenarioFile))}.compare`);
  const charts = await Promise.all(
    compareCharts(comparison, context).map(async ({ id, spec }) => ({
      path: `${stem}.${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );
  const files = [
    { path: `${stem}.txt`, content: text },
    { path: `${stem}.json`, content: `${JSON.stringify(comparison, null, 1)}\n` },
    ...charts,
  ];
  await writeAll(files);
  return files;
}

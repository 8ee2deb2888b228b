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
import { sizing } from '../questions/settings.js';
import { tryOutput, writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { parsed } from './parsed.js';
import { wholeOf } from './study-options.js';
import { madeOf, withMade } from './made.js';
import { openScenario, problemsAsMistake, type OpenScenario } from './open-scenario.js';
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

/** What decides the answer: all but how it is run and printed. */
export type ComparedWith = Pick<
  CompareArguments,
  'level' | 'seed' | 'days' | 'map' | 'moves' | 'uncertainty' | 'equalGuests'
>;

/** @throws MistakeError with everything that is wrong */
export async function comparisonOf(
  opened: OpenScenario,
  fileName: string,
  args: ComparedWith,
  threads: number | undefined,
): Promise<Comparison> {
  const candidates = candidatesOf(opened, fileName, { piecesPerRack: piecesPerRackOf });
  const mapped = args.map ? placed(mapFlaws(opened), opened, fileName) : [];
  if (!candidates.ok || mapped.length > 0)
    throw problemsAsMistake(inOrder([...(candidates.ok ? [] : candidates.problems), ...mapped]));
  return withRunner('comparing', threads, (runner) =>
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
}

/** The settings as they would be typed; those that change nothing are left out. */
const typedOf = (args: ComparedWith): Record<string, string> => {
  const { level, seed, days, map, moves, uncertainty, equalGuests } = args;
  const all = { level, seed, days, map, moves, uncertainty, 'equal-guests': equalGuests };
  return Object.fromEntries(
    Object.entries(all).flatMap(([name, value]) =>
      value === undefined || value === false ? [] : [[name, String(value)]],
    ),
  );
};

/** The way back from `typedOf`. @throws MistakeError where a setting is none of this command's */
export function comparedWith(
  typed: Readonly<Record<string, string>>,
  fileName: string,
): ComparedWith {
  const known = ['level', 'seed', 'days', 'map', 'moves', 'uncertainty', 'equal-guests'];
  const unknown = Object.keys(typed).filter((name) => !known.includes(name));
  if (unknown.length > 0)
    throw new MistakeError(
      `${fileName}: made.settings: "${unknown.join('", "')}" is not known to cuptide compare; the file is damaged, or of another version`,
    );
  const { level, seed, days, map, moves, uncertainty } = typed;
  return {
    level: level === undefined ? undefined : (parsed('level', sizing.level, level) as number),
    seed,
    days: wholeOf('days', days, 100, 1_000_000),
    map: map === 'true',
    moves: moves === 'true',
    uncertainty: wholeOf('uncertainty', uncertainty, 10, 10_000),
    equalGuests: typed['equal-guests'] === 'true',
  };
}

export async function runCompare(args: CompareArguments): Promise<void> {
  const opened = await openScenario(args.file);
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const comparison = await comparisonOf(opened, args.file, args, args.threads);
  const made = madeOf({
    question: 'compare',
    settings: {},
    typed: typedOf(args),
    file: args.file,
    text: opened.text,
    seed: opened.scenario.seed,
  });
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const blocks = tellComparison(comparison, context);
  const text = writeText(blocks, {
    width: widthOf(),
    all: args.all,
  });
  const files =
    args.out === undefined
      ? []
      : await written(
          args.file,
          args.out,
          withMade(comparison, made),
          context,
          writeText(blocks, { all: true }),
        );
  printAnswer(args.json ? withMade(comparison, made) : null, () => text, files);
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

/** A table of sites from the command line: all of it here, a part of it, or the parts of others put together. */
import { basename, extname, join } from 'node:path';
import { createHash } from 'node:crypto';
import { sitesFiles } from '../questions/sites/files.js';
import type { SitesAnswer } from '../questions/sites/answer.js';
import { supplyOfBase, sitesAnswer } from '../questions/sites/study.js';
import { DAYS_WATCHED, rowOf, type UnitRow } from '../questions/sites/row.js';
import { baseOf, sitesOf, type Base, type Site } from '../questions/sites/site.js';
import { readTable, type SiteLine, type SiteTable } from '../questions/sites/table.js';
import { sitesBlocks } from '../questions/sites/tell.js';
import type { Result } from '../questions/result.js';
import { largestScenarioBytes } from '../scenario/parse-yaml.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { readScenario } from '../scenario/read-scenario.js';
import { contextOf } from '../tell/context-of.js';
import { writeText } from '../tell/write-text.js';
import { readWhole, tryOutput, writeAll } from './files.js';
import { typefaces } from './live-page.js';
import { problemsAsMistake } from './open-scenario.js';
import { printAnswer } from './print.js';
import { today } from './run-question.js';
import { studyDigest } from './sites/part-file.js';
import { siteLetters, sitesWithLetter } from './sites/letters.js';
import { solverForMany } from './solver.js';
import { widthOf } from './terminal.js';
import { version } from './version.js';
import { withRunner } from './with-runner.js';
import type { ThreadedRunner } from './workers.js';

export interface SitesArguments {
  readonly table: string;
  readonly base: string;
  readonly level: number | undefined;
  readonly days: number | undefined;
  readonly seed: string | undefined;
  readonly date: string | undefined;
  readonly spares: 'sites' | 'drop';
  readonly threads: number | undefined;
  readonly json: boolean;
  readonly all: boolean;
  readonly out: string | undefined;
  /** Ids of the sites whose letters are wanted; `all`. */
  readonly letters: readonly string[];
}

const LARGEST_TABLE = 20_000_000;

/** A study as it was given: read, but its rows not checked yet. */
export interface SitesStudy {
  readonly args: SitesArguments;
  readonly base: Base;
  readonly table: SiteTable;
  /** Digest of everything that the row of a unit depends on. */
  readonly digest: string;
}

/** @throws MistakeError with everything that is wrong with the base, or the form of the table */
export async function openStudy(args: SitesArguments): Promise<SitesStudy> {
  const baseBytes = await readWhole(args.base, largestScenarioBytes);
  const opened = readScenario(baseBytes, args.base, { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) throw problemsAsMistake(opened.problems);
  const base = baseOf(opened, args.seed);
  const tableBytes = await readWhole(args.table, LARGEST_TABLE);
  const { level, days, seed } = args;
  return {
    args,
    base,
    table: must(readTable(tableBytes, args.table, opened)),
    digest: studyDigest([version, JSON.stringify({ level, days, seed }), baseBytes, tableBytes]),
  };
}

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw problemsAsMistake(result.problems);
  return result.value;
}

/** The sites of all rows of the table, or of some. @throws MistakeError with everything that is wrong with them */
export const checkedSites = (
  { table, base }: SitesStudy,
  lines?: readonly SiteLine[],
): readonly Site[] => must(sitesOf(table, base, lines));

/** A row as it would be read from a part: the same bytes whoever ran it. */
export const rowText = async (
  { args }: SitesStudy,
  site: Site,
  runner: ThreadedRunner,
): Promise<string> =>
  JSON.stringify(
    await rowOf(site.line.id, site.opened, runner, {
      level: args.level,
      days: args.days,
      watch: DAYS_WATCHED,
    }),
  );

/** Everything in this process. */
export async function runSites(args: SitesArguments): Promise<void> {
  const study = await openStudy(args);
  must(supplyOfBase(study.base, args.base));
  const sites = checkedSites(study);
  sitesWithLetter(args.letters, sites);
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const rows = await withRunner('running days', args.threads, async (runner) => {
    const done: string[] = [];
    for (const site of sites) done.push(await rowText(study, site, runner));
    return done;
  });
  await tellSites(study, sites, rows);
}

/** The answer from the rows of all sites: printed, and its files written where asked for. */
export async function tellSites(
  study: SitesStudy,
  sites: readonly Site[],
  rows: readonly string[],
): Promise<void> {
  const { args, base } = study;
  const { opened } = base;
  const answer = await sitesAnswer(
    sites,
    rows.map((row) => JSON.parse(row) as UnitRow),
    base,
    must(supplyOfBase(base, args.base)),
    {
      level: args.level,
      date: args.date ?? opened.scenario.supply?.date ?? today(),
      sparesAt: args.spares,
      loadSolver: solverForMany(),
    },
  );
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const files = args.out === undefined ? [] : await filesIn(args.out, study, sites, answer);
  await writeAll(files);
  printAnswer(
    args.json ? answer : null,
    () => writeText(sitesBlocks(answer, context), { width: widthOf(), all: args.all }),
    files,
  );
}

async function filesIn(
  folder: string,
  { args, base: { opened } }: SitesStudy,
  sites: readonly Site[],
  answer: SitesAnswer,
): Promise<{ readonly path: string; readonly content: string | Uint8Array }[]> {
  const stem = basename(args.table, extname(args.table));
  const letters = await siteLetters(args, sites, stem);
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const files = await sitesFiles(answer, context, {
    letters: new Map(letters.map(({ id, name }) => [id, name])),
    hashOf: (text) => `sha256-${createHash('sha256').update(text).digest('base64')}`,
    typefaces: await typefaces(),
  });
  return [
    ...files.map(({ ending, content }) => ({ path: join(folder, `${stem}.${ending}`), content })),
    ...letters.map(({ name, html }) => ({ path: join(folder, name), content: html })),
  ];
}

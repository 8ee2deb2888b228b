/** A table of sites from the command line: all of it here, a part of it, or the parts of others put together. */
import { basename, extname, join } from 'node:path';
import { createHash } from 'node:crypto';
import { candidatesOf } from '../questions/compare/alternatives.js';
import type { Made } from '../questions/made.js';
import type { OutFile } from '../questions/question.js';
import { acrossAnswer } from '../questions/sites/across/answer.js';
import { acrossFiles } from '../questions/sites/across/files.js';
import { acrossBlocks } from '../questions/sites/across/tell.js';
import { sitesFiles } from '../questions/sites/files.js';
import { supplyOfBase, sitesAnswer } from '../questions/sites/study.js';
import { acrossRow, type AcrossRow } from '../questions/sites/across/rows.js';
import { alternativesOf } from '../questions/sites/across/houses.js';
import { DAYS_WATCHED, rowOf, type UnitRow } from '../questions/sites/row.js';
import { asksMore, unitsOf, type Asked, type Unit } from '../questions/sites/units.js';
import { baseOf, sitesOf, type Base, type Site } from '../questions/sites/site.js';
import { openTable, type SiteTable } from '../questions/sites/table.js';
import { sitesBlocks } from '../questions/sites/tell.js';
import type { Result } from '../questions/result.js';
import { largestScenarioBytes } from '../scenario/parse-yaml.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { readScenario } from '../scenario/read-scenario.js';
import type { Block } from '../tell/block.js';
import { contextOf } from '../tell/context-of.js';
import { writeText } from '../tell/write-text.js';
import { readWhole, tryOutput, writeAll } from './files.js';
import { typefaces } from './live-page.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';
import { printAnswer } from './print.js';
import { today } from './run-question.js';
import { studyDigest } from './sites/part-file.js';
import { tillsOf } from './sites/tills.js';
import { siteLetters, sitesWithLetter } from './sites/letters.js';
import { sitesMade, type SitesFiles } from './sites/made.js';
import { withMade } from './made.js';
import { solverForMany } from './solver.js';
import { widthOf } from './terminal.js';
import { version } from './version.js';
import { withSteps } from './with-runner.js';
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
  /** What is asked about each site in place of its size. */
  readonly asked: Asked;
}

/** Of a comparison: the least that its intervals can be found from. */
const LEAST_COMPARED = 100;
const LARGEST_TABLE = 20_000_000;

/** A study as it was given: read, but its rows not checked yet. */
export interface SitesStudy {
  readonly args: SitesArguments;
  readonly base: Base;
  readonly table: SiteTable;
  readonly units: readonly Unit[];
  readonly files: SitesFiles;
  /** Digest of everything that the row of a unit depends on. */
  readonly digest: string;
}

/** @throws MistakeError with everything that is wrong with the base, or the form of the table */
export async function openStudy(args: SitesArguments): Promise<SitesStudy> {
  const baseBytes = await readWhole(args.base, largestScenarioBytes);
  const opened = readScenario(baseBytes, args.base, { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) throw problemsAsMistake(opened.problems);
  const start = baseOf(opened, args.seed);
  const tableBytes = await readWhole(args.table, LARGEST_TABLE);
  const { level, days, seed, asked } = args;
  const table = must(await openTable(tableBytes, args.table, opened));
  if (asked.compare) checkAlternatives(start, args);
  const tills = await tillsOf(table, { name: args.base, bytes: baseBytes }, start.seed);
  const settings = { level, days, seed, ...(asksMore(asked) ? asked : {}) };
  return {
    args,
    base: { ...start, tills: tills.bases },
    table,
    units: unitsOf(table, asked),
    files: {
      base: { name: args.base, bytes: baseBytes },
      table: { name: args.table, bytes: tableBytes },
      tills: tills.files,
    },
    digest: studyDigest([
      version,
      JSON.stringify(settings),
      baseBytes,
      tableBytes,
      ...tills.files.map(({ bytes }) => bytes),
    ]),
  };
}

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw problemsAsMistake(result.problems);
  return result.value;
}

/** Alternatives are those of the base: what is wrong with them is its writer's mistake, at any site. */
function checkAlternatives(base: Base, { base: file, days }: SitesArguments): void {
  if (alternativesOf(base).length === 0)
    throw new MistakeError(
      `--compare: ${file} has no alternatives; write what to compare under alternatives`,
    );
  if (days !== undefined && days < LEAST_COMPARED)
    throw new MistakeError(
      `--days: "${days}" is too few to compare on; write ${LEAST_COMPARED} or more`,
    );
  const candidates = candidatesOf(base.opened, file, { piecesPerRack: piecesPerRackOf });
  if (!candidates.ok) throw problemsAsMistake(candidates.problems);
}

/** The sites of these units, by their place in the table. @throws MistakeError with everything that is wrong with them */
export function sitesOfUnits(
  { table, base }: SitesStudy,
  units: readonly Unit[],
): ReadonlyMap<number, Site> {
  const places = [...new Set(units.map(({ site }) => site))];
  const lines = places.map((place) => table.lines[place]!);
  const sites = must(sitesOf(table, base, lines));
  return new Map(places.map((place, at) => [place, sites[at]!]));
}

/** A row as it would be read from a part: the same bytes whoever ran it. */
export async function rowText(
  { args: { level, days, asked }, base, table }: SitesStudy,
  { id, work }: Unit,
  { opened }: Site,
  runner: ThreadedRunner,
): Promise<string> {
  return JSON.stringify(
    work.what === 'size'
      ? await rowOf(id, opened, runner, { level, days, watch: DAYS_WATCHED })
      : await acrossRow(id, work, opened, base, runner, {
          level,
          days,
          compare: asked.compare,
          sites: table.lines.length,
        }),
  );
}

/** What its units are for people. */
export const wordOf = ({ args }: SitesStudy): string => (asksMore(args.asked) ? 'steps' : 'sites');

/** The rows of some units, in their order. @param sites of all of them */
export const rowsOf = (
  study: SitesStudy,
  units: readonly Unit[],
  sites: ReadonlyMap<number, Site>,
  threads: number | undefined,
): Promise<readonly string[]> =>
  withSteps(
    {
      what: 'running days',
      word: wordOf(study),
      steps: units.length,
    },
    threads,
    async (runner, done) => {
      const rows: string[] = [];
      for (const unit of units) {
        rows.push(await rowText(study, unit, sites.get(unit.site)!, runner));
        done();
      }
      return rows;
    },
  );

/** Everything in this process. */
export async function runSites(args: SitesArguments): Promise<void> {
  const study = await openStudy(args);
  must(supplyOfBase(study.base, args.base));
  const sites = sitesOfUnits(study, study.units);
  sitesWithLetter(args.letters, [...sites.values()]);
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const rows = await rowsOf(study, study.units, sites, args.threads);
  await tellSites(study, [...sites.values()], rows);
}

/** What was asked, of which files, with the day of the order where nobody gave one. */
const madeOfStudy = ({ args, files, base }: SitesStudy): Made =>
  sitesMade(
    args,
    files,
    base.seed,
    base.opened.scenario.supply?.date === undefined ? today() : undefined,
  );

interface SitesReply {
  readonly json: object;
  readonly blocks: readonly Block[];
  readonly files: () => Promise<readonly OutFile[]>;
}

/** The answer from the rows of all units. @param sites all, in their order */
export async function sitesReply(
  study: SitesStudy,
  sites: readonly Site[],
  rows: readonly string[],
): Promise<SitesReply> {
  const { args, base } = study;
  const { opened } = base;
  const context = contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf);
  const page = async () => ({ hashOf, typefaces: await typefaces() });
  if (asksMore(args.asked)) {
    const answer = acrossAnswer(
      sites,
      study.units,
      rows.map((row) => JSON.parse(row) as AcrossRow),
      base,
      args.asked,
      args,
    );
    const { drawn: _, ...json } = answer;
    return {
      json,
      blocks: acrossBlocks(answer, context),
      files: async () => acrossFiles(answer, context, await page()),
    };
  }
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
  return {
    json: answer,
    blocks: sitesBlocks(answer, context),
    files: async () => {
      const letters = await siteLetters(args, sites, stemOf(args), madeOfStudy(study));
      const made = await sitesFiles(answer, context, {
        ...(await page()),
        letters: new Map(letters.map(({ id, name }) => [id, name])),
      });
      return [...made, ...letters.map(({ ending, html }) => ({ ending, content: html }))];
    },
  };
}

/** The same, printed, and its files written where asked for. */
export async function tellSites(
  study: SitesStudy,
  sites: readonly Site[],
  rows: readonly string[],
): Promise<void> {
  const { args } = study;
  const { json, blocks, files } = await sitesReply(study, sites, rows);
  const made = args.out === undefined ? [] : await files();
  return tell(study, withMade(json, madeOfStudy(study)), blocks, made);
}

const hashOf = (text: string): string =>
  `sha256-${createHash('sha256').update(text).digest('base64')}`;

const stemOf = ({ table }: SitesArguments): string => basename(table, extname(table));

async function tell(
  { args }: SitesStudy,
  json: unknown,
  blocks: readonly Block[],
  made: readonly OutFile[],
): Promise<void> {
  const files = made.map(({ ending, content }) => ({
    path: join(args.out!, `${stemOf(args)}.${ending}`),
    // The answer as a file says what it was made from, as it does when printed.
    content: ending.endsWith('.json') ? `${JSON.stringify(json, null, 1)}\n` : content,
  }));
  await writeAll(files);
  printAnswer(
    args.json ? json : null,
    () => writeText(blocks, { width: widthOf(), all: args.all }),
    files,
  );
}

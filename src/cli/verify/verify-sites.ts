/** A saved answer about all sites worked out again, from its base and table. */
import { basename, dirname, join } from 'node:path';
import { orderDay, sizing, type Settings } from '../../questions/settings.js';
import { MistakeError } from '../mistakes.js';
import { parsed } from '../parsed.js';
import {
  openStudy,
  rowsOf,
  sitesOfUnits,
  sitesReply,
  type SitesArguments,
  type SitesStudy,
} from '../run-sites.js';
import type { SavedAnswer } from './answer-file.js';
import { checkDigest, checkThere, type Sources } from './asked-again.js';
import { countValues, valueDifferences } from './differences.js';
import type { Verified } from './verify-letter.js';

const settings = {
  ...sizing,
  date: orderDay,
  spares: { as: 'word', describe: '' },
  compare: { as: 'flag', describe: '' },
  draws: { as: 'whole', from: 1, describe: '' },
  measure: { as: 'flag', describe: '' },
} as const satisfies Settings;

/** @throws MistakeError where base, table or tills are missing or others, or a setting is damaged */
export async function verifySites(
  { made, answer }: SavedAnswer,
  sources: Sources,
): Promise<Verified> {
  const { json } = await sitesAgain(made, sources);
  const found: unknown = JSON.parse(JSON.stringify(json));
  return {
    version: made.version,
    seed: made.seed,
    values: countValues(found),
    parts: 0,
    differences: valueDifferences(answer, found),
  };
}

/** The same answer, and the files that the command writes of it. @throws MistakeError as above */
export async function sitesAgain(
  made: SavedAnswer['made'],
  sources: Sources,
): ReturnType<typeof sitesReply> {
  const { name, scenario: base, files, threads } = sources;
  const [table] = made.files ?? [];
  const unknown = Object.keys(made.settings).filter((one) => !Object.hasOwn(settings, one));
  if (table === undefined || unknown.length > 0)
    throw new MistakeError(
      table === undefined
        ? `${name}: made.files: the table of sites is missing; the file is damaged: take it as the command wrote it`
        : `${name}: made.settings: "${unknown.join('", "')}" is not known to cuptide sites; the file is damaged, or of another version`,
    );
  if (base === undefined)
    throw new MistakeError(
      `${name}: the base is not inside; name it: --scenario ${made.scenario.file} (and --files FOLDER where ${table.name} is not beside it)`,
    );
  const path = join(files ?? dirname(base), basename(table.name));
  checkThere([path], name);
  const study = await openStudy(argumentsOf(made.settings, path, base, threads));
  checkFiles(study, made, name);
  const sites = sitesOfUnits(study, study.units);
  const rows = await rowsOf(study, study.units, sites, threads);
  return sitesReply(study, [...sites.values()], rows);
}

function argumentsOf(
  typed: SavedAnswer['made']['settings'],
  table: string,
  base: string,
  threads: number | undefined,
): SitesArguments {
  const read = <N extends keyof typeof settings>(name: N) =>
    typed[name] === undefined ? undefined : parsed(name, settings[name], typed[name]);
  const { compare, measure } = typed;
  return {
    table,
    base,
    threads,
    level: read('level') as number | undefined,
    days: read('days') as number | undefined,
    seed: read('seed') as string | undefined,
    date: read('date') as string | undefined,
    spares: typed['spares'] === 'drop' ? 'drop' : 'sites',
    json: true,
    all: false,
    out: undefined,
    letters: [],
    asked: {
      compare: compare === 'true',
      draws: (read('draws') as number | undefined) ?? 0,
      measure: measure === 'true',
    },
  };
}

/** Every file must be the one that was read then. */
function checkFiles(
  { files: { base, table, tills } }: SitesStudy,
  { scenario, files = [] }: SavedAnswer['made'],
  name: string,
): void {
  if ('sha256' in scenario) checkDigest(base.bytes, scenario.sha256, base.name, name);
  for (const file of [table, ...tills]) {
    const then = files.find((one) => one.name === basename(file.name));
    if (then !== undefined) checkDigest(file.bytes, then.sha256, file.name, name);
  }
}

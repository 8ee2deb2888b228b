/** Whatever says what it was made from, asked again: its scenario, the files beside that, the command that made it. */
import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Made } from '../../questions/made.js';
import { questions } from '../../questions/list.js';
import type { Reply } from '../../questions/question.js';
import { size } from '../../questions/size/head.js';
import { askSize, withInputs } from '../../questions/size/ask.js';
import { filesAmong, pathsOf, type Given, type Settings } from '../../questions/settings.js';
import { contextOf } from '../../tell/context-of.js';
import { largestScenarioBytes } from '../../scenario/parse-yaml.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import { readWhole } from '../files.js';
import { namesFiles, sha256 } from '../made.js';
import { MistakeError } from '../mistakes.js';
import { problemsAsMistake, type OpenScenario } from '../open-scenario.js';
import { filesBeside, givenOf, today } from '../run-question.js';
import { loadSolver } from '../solver.js';
import { version } from '../version.js';
import { withRunner } from '../with-runner.js';
import { DAYS_WATCHED } from './verify-letter.js';

/** Of a reply, what is held against a file. */
type Again = Pick<Reply, 'json' | 'figures' | 'workbook'>;

export interface Sources {
  /** The saved answer, for messages. */
  readonly name: string;
  /** The scenario, where it is not inside. */
  readonly scenario: string | undefined;
  /** Folder of the other files, where they are not beside the scenario. */
  readonly files?: string | undefined;
  readonly threads: number | undefined;
}

/** @throws MistakeError where it cannot be asked again: the scenario is missing or another, a setting is damaged */
export async function askedAgain(made: Made, date: unknown, sources: Sources): Promise<Again> {
  const { text, path } = await scenarioOf(made, sources);
  const opened = readScenario(text, path, { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) throw problemsAsMistake(opened.problems);
  return replyAgain(made, date, { ...opened, text }, path, sources);
}

async function scenarioOf(
  { scenario }: Made,
  { name, scenario: given }: Sources,
): Promise<{ text: string; path: string }> {
  if ('text' in scenario) return { text: scenario.text, path: `${scenario.file} in ${name}` };
  if (given === undefined)
    throw new MistakeError(
      `${name}: the scenario is not inside; name it: --scenario ${scenario.file}`,
    );
  const text = new TextDecoder().decode(await readWhole(given, largestScenarioBytes));
  checkDigest(text, scenario.sha256, given, name);
  return { text, path: given };
}

/** @throws MistakeError where one is not there */
export function checkThere(paths: readonly string[], name: string): void {
  const missing = paths.filter((path) => !existsSync(path));
  if (missing.length > 0)
    throw new MistakeError(
      missing
        .map(
          (path) =>
            `${path}: is not there, and ${name} was made from ${basename(path)}; say which folder has it: --files FOLDER`,
        )
        .join('\n'),
    );
}

export function checkDigest(
  content: string | Uint8Array,
  wanted: string,
  path: string,
  name: string,
): void {
  const found = sha256(content);
  if (found !== wanted)
    throw new MistakeError(
      `${path}: is not the file that ${name} was made from: its SHA-256 is ${found.slice(0, 16)}…, and that was ${wanted.slice(0, 16)}…; give the file as it was then`,
    );
}

async function replyAgain(
  made: Made,
  date: unknown,
  opened: OpenScenario & { readonly text: string },
  path: string,
  { name, threads, files }: Sources,
): Promise<Again> {
  const { question: asked, settings } = made;
  const question = questions.find((one) => one.name === asked);
  const wanted: Settings | undefined = asked === 'report' ? size.settings : question?.settings;
  const unknown = Object.keys(settings).filter(
    (one) => wanted === undefined || !Object.hasOwn(wanted, one),
  );
  if (wanted === undefined || unknown.length > 0)
    throw new MistakeError(
      wanted === undefined
        ? `${name}: made.question: "${asked}" is not a command whose answer can be verified; the file is damaged, or of another version`
        : `${name}: made.settings: "${unknown.join('", "')}" is not known to cuptide ${asked}; the file is damaged, or of another version`,
    );
  const folder = files ?? dirname(path);
  const inFolder = Object.fromEntries(
    Object.entries(settings).map(([setting, value]) => [
      setting,
      namesFiles(wanted, setting)
        ? pathsOf(value)
            .map((one) => join(folder, basename(one)))
            .join('\n')
        : value,
    ]),
  );
  for (const [setting, value] of Object.entries(inFolder))
    if (namesFiles(wanted, setting)) checkThere(pathsOf(value), name);
  const given = await givenOf(wanted, inFolder);
  const beside = await filesBeside(
    join(folder, basename(path)),
    question?.beside?.(opened.scenario) ?? [],
  );
  checkFiles(made, given, beside, name);
  return withRunner('running days', threads, async (runner) => {
    if (asked === 'report') {
      const study = await askSize({ opened, runner }, given as Given<typeof size.settings>, {
        watch: DAYS_WATCHED,
      });
      if (!study.ok) throw problemsAsMistake(study.problems);
      const { answer: plain } = study.value;
      const json =
        given['allow-for-inputs'] === true ? await withInputs({ opened, runner }, plain) : plain;
      return { json };
    }
    const reply = await question!.ask(
      {
        opened,
        fileName: path,
        text: opened.text,
        runner,
        context: contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf),
        beside,
        today: typeof date === 'string' ? date : today(),
        loadSolver,
      },
      given,
    );
    if (!reply.ok) throw problemsAsMistake(reply.problems);
    return reply.value;
  });
}

/** Every file that was read must be the one that was read then. */
function checkFiles(
  { files = [] }: Made,
  given: Readonly<Record<string, unknown>>,
  beside: Readonly<Record<string, Uint8Array>>,
  name: string,
): void {
  const read = new Map(Object.entries(beside));
  for (const [, file] of filesAmong(given)) read.set(basename(file.name), file.bytes);
  for (const { name: file, sha256: wanted } of files) {
    const bytes = read.get(file);
    if (bytes !== undefined) checkDigest(bytes, wanted, file, name);
  }
}

/** Any question from a scenario file: asked, printed, and its files written where asked for. */
import { existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { madeInFull, type Made } from '../questions/made.js';
import type { OutFile, Question, Reply } from '../questions/question.js';
import {
  filesAmong,
  pathsOf,
  type GivenFile,
  type Settings,
  type Value,
} from '../questions/settings.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { contextOf } from '../tell/context-of.js';
import { drawnCharts } from '../tell/drawn-chart.js';
import type { Draw } from '../tell/write-html.js';
import { writeText } from '../tell/write-text.js';
import { parsed } from './parsed.js';
import { keepInputs, readWhole, tryOutput, writeAll } from './files.js';
import { typefaces } from './live-page.js';
import { madeOf, withFilledIn, withMade } from './made.js';
import { MistakeError } from './mistakes.js';
import { openScenario, problemsAsMistake } from './open-scenario.js';
import { printAnswer } from './print.js';
import { loadSolver } from './solver.js';
import { widthOf } from './terminal.js';
import { version } from './version.js';
import { withRunner } from './with-runner.js';

export interface QuestionArguments {
  readonly file: string;
  /** Settings as typed, by name; of files, their paths. */
  readonly typed: Readonly<Record<string, string>>;
  readonly json: boolean;
  readonly all: boolean;
  readonly out: string | undefined;
  readonly threads: number | undefined;
}

const LARGEST_FILE = 200_000_000;
const LARGEST_TABLE = 1_000_000;

export const today = (): string => new Date().toISOString().slice(0, 10);

/** @throws MistakeError with everything that is wrong */
export async function runQuestion(question: Question, args: QuestionArguments): Promise<void> {
  const given = await givenOf(question.settings, args.typed);
  const opened = await openScenario(args.file);
  const beside = await filesBeside(args.file, question.beside?.(opened.scenario) ?? []);
  const asked = madeOf({
    question: question.name,
    settings: question.settings,
    typed: args.typed,
    given,
    file: args.file,
    text: opened.text,
    seed: opened.scenario.seed,
    beside,
  });
  const context = {
    ...contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf),
    made: madeInFull(asked),
  };
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const reply = await withRunner('running days', args.threads, (runner) =>
    question.ask(
      {
        opened,
        fileName: args.file,
        text: opened.text,
        runner,
        context,
        beside,
        today: today(),
        loadSolver,
      },
      given,
    ),
  );
  if (!reply.ok) throw problemsAsMistake(reply.problems);
  const made = withFilledIn(asked, reply.value.filledIn);
  const json = withMade(reply.value.json, made);
  const files =
    args.out === undefined
      ? []
      : (await outFiles(reply.value, json, made)).map(({ fresh, ending, content }) => ({
          path: join(args.out!, `${basename(args.file, extname(args.file))}.${ending}`),
          content,
          fresh,
        }));
  keepInputs(
    files.map(({ path }) => path),
    [args.file, ...filesAmong(given).map(([, { name }]) => name)],
  );
  refuseThere(files.filter(({ fresh }) => fresh === true).map(({ path }) => path));
  await writeAll(files);
  printAnswer(
    args.json ? json : null,
    () => writeText(reply.value.blocks, { width: widthOf(), all: args.all }),
    files,
  );
}

async function outFiles(reply: Reply, json: unknown, from: Made): Promise<OutFile[]> {
  const { files, figures, jsonFile } = reply;
  const made = [
    ...(figures === undefined ? [] : [figures]),
    ...((await files?.(draw, typefaces, from)) ?? []),
  ];
  return jsonFile === undefined
    ? made
    : [{ ending: jsonFile, content: `${JSON.stringify(json, null, 1)}\n` }, ...made];
}

/** Files that a scenario names, from its own folder. */
export async function filesBeside(
  scenario: string,
  names: readonly string[],
): Promise<Record<string, Uint8Array>> {
  const files: Record<string, Uint8Array> = {};
  for (const name of names)
    files[name] = await readWhole(join(dirname(scenario), name), LARGEST_TABLE);
  return files;
}

/** @throws MistakeError where one of these files is there already */
function refuseThere(paths: readonly string[]): void {
  const there = paths.filter((path) => existsSync(path));
  if (there.length > 0)
    throw new MistakeError(
      there
        .map((path) => `${path}: is there already; move it away, or give --out another folder`)
        .join('\n'),
    );
}

/** What was typed, read as the settings say; files are read whole. @throws MistakeError with all that does not fit */
export async function givenOf(
  settings: Settings,
  typed: Readonly<Record<string, string>>,
): Promise<Record<string, Value>> {
  const given: Record<string, Value> = {};
  const mistakes: string[] = [];
  for (const [name, text] of Object.entries(typed)) {
    const setting = settings[name]!;
    try {
      const file = async (path: string): Promise<GivenFile> => {
        if (path.trim() === '') throw new MistakeError(`--${name}: the name is empty; name a file`);
        const most = setting.most ?? LARGEST_FILE;
        return { name: path, bytes: await readWhole(path, most, `--${name}: `) };
      };
      if (setting.as === 'file') given[name] = await file(text);
      else if (setting.as === 'files') given[name] = await Promise.all(pathsOf(text).map(file));
      else given[name] = parsed(name, setting, text);
    } catch (error) {
      if (!(error instanceof MistakeError)) throw error;
      mistakes.push(error.message);
    }
  }
  if (mistakes.length > 0) throw new MistakeError(mistakes.join('\n'));
  return given;
}

/** Charts as they stand in a document: the title beside the picture, not in it. */
const draw: Draw = drawnCharts;

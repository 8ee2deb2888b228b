/** Parts that questions add to the letter of a report where the files they need are given, and the files of these parts. */
import type { Asking, Question } from '../questions/question.js';
import { questions } from '../questions/list.js';
import { filesAmong, type Settings, type Value } from '../questions/settings.js';
import { paragraphs } from '../tell/block.js';
import { drawnCharts } from '../tell/drawn-chart.js';
import { formatsFor } from '../tell/format.js';
import { writeHtml } from '../tell/write-html.js';
import { madeOf, withMade } from './made.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';
import { today } from './run-question.js';
import { loadSolver } from './solver.js';
import { withRunner } from './with-runner.js';

type GivenValues = Readonly<Record<string, Value | undefined>>;

/** A question that has a part in this report, and the files it asks for. */
export interface PartAsked {
  readonly question: Question;
  readonly given: GivenValues;
}

interface PartsAsking extends Pick<Asking, 'opened' | 'fileName' | 'context'> {
  readonly text: string;
  readonly parts: readonly PartAsked[];
  /** What the report itself was asked with. */
  readonly given: GivenValues;
  readonly threads: number | undefined;
}

interface PartsMade {
  readonly html: string;
  readonly files: readonly { readonly ending: string; readonly content: string }[];
}

/** Files that some question asks of the report for its part. @param readGiven reads what was typed of these settings */
export async function partsAsked(
  readGiven: (settings: Settings) => Promise<GivenValues>,
): Promise<readonly PartAsked[]> {
  const asked: PartAsked[] = [];
  for (const question of questions) {
    const { inReport } = question;
    if (inReport === undefined) continue;
    const given = await readGiven(inReport.settings);
    const there = Object.keys(inReport.settings).filter((name) => given[name] !== undefined);
    const missing = Object.keys(inReport.missing).find((name) => given[name] === undefined);
    if (there.length === 0) continue;
    if (missing !== undefined)
      throw new MistakeError(
        `--${there[0]!} is given without --${missing}; ${inReport.missing[missing]!}`,
      );
    asked.push({ question, given });
  }
  return asked;
}

/** @throws MistakeError with everything that is wrong with the files of a part */
export async function partsOf({ parts, ...asking }: PartsAsking): Promise<PartsMade> {
  const made: PartsMade[] = [];
  for (const part of parts) made.push(await partOf(part, asking));
  return {
    html: made.map(({ html }) => html).join('\n'),
    files: made.flatMap(({ files }) => files),
  };
}

async function partOf(
  { question, given: files }: PartAsked,
  { opened, fileName, context, text, given: ofReport, threads }: Omit<PartsAsking, 'parts'>,
): Promise<PartsMade> {
  const { settings, inReport, name } = question;
  // Level, seed and the like are those of the letter.
  const shared = Object.fromEntries(
    Object.keys(settings).flatMap((setting) => {
      const value = ofReport[setting];
      return value === undefined || setting in files ? [] : [[setting, value] as const];
    }),
  );
  const reply = await withRunner(inReport!.working, threads, (runner) =>
    question.ask(
      { opened, fileName, text, runner, context, today: today(), loadSolver },
      { ...files, ...shared },
    ),
  );
  if (!reply.ok) throw problemsAsMistake(reply.problems);
  const made = madeOf({
    question: name,
    settings,
    typed: {
      ...Object.fromEntries(filesAmong(files).map(([setting, file]) => [setting, file.name])),
      ...Object.fromEntries(
        Object.entries(shared).map(([setting, value]) => [setting, String(value)]),
      ),
    },
    given: files,
    file: fileName,
    text,
    seed: opened.scenario.seed,
  });
  const { json, blocks, files: pictures } = reply.value;
  const html = await writeHtml([...blocks, paragraphs([inReport!.foot(made.command)], 'small')], {
    draw: drawnCharts,
    formats: formatsFor(context),
  });
  const drawn = (await pictures?.(drawnCharts, () => Promise.resolve(''), made)) ?? [];
  return {
    html,
    files: [
      {
        ending: `${name}.json`,
        content: `${JSON.stringify(withMade(json as object, made), null, 1)}\n`,
      },
      ...drawn.map(({ ending, content }) => ({ ending, content: String(content) })),
    ],
  };
}

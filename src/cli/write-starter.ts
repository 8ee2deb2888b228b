/** From options and answers to a starter file. */
import { access } from 'node:fs/promises';
import { readScenario } from '../scenario/read-scenario.js';
import { shapeSentence, starter } from '../scenario/starter.js';
import {
  questionKeys,
  questions,
  type QuestionKey,
  type StarterAnswers,
} from '../scenario/starter-questions.js';
import { readAll, withCurrencyNamed } from '../scenario/starter-reading.js';
import { shapes } from '../scenario/starter-shapes.js';
import { ask, type Asked } from './ask-starter.js';
import { tryOutput, writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';
import { say } from './print.js';

/** Answers given as options; the others are asked, or taken as usual. */
export type Given = { readonly file: string } & Readonly<Partial<Record<QuestionKey, string>>>;

/** @throws MistakeError for wrong options, options left open with no terminal to ask on, or a file that already exists */
export async function writeStarter({ file, ...options }: Given): Promise<void> {
  if (
    await access(file).then(
      () => true,
      () => false,
    )
  )
    throw new MistakeError(`${file}: already exists; name another file`);
  await tryOutput(file, 'file', 'The new scenario');
  const given = answersGiven(options);
  const { texts, served } = await asked(given);
  const { answers, wrong, texts: all } = readAll({ ...given, ...texts }, served);
  if (answers === null)
    throw new MistakeError(
      questionKeys
        .filter((key) => wrong[key] !== undefined)
        .map((key) => `--${questions[key].option}: "${all[key]}" ${wrong[key]}`)
        .join('\n'),
    );
  const text = starter(answers);
  const check = readScenario(text, file);
  if (!check.ok) throw problemsAsMistake(check.problems);
  await writeAll([{ path: file, content: text }]);
  for (const line of [
    ...assumed(answers, { ...given, ...texts }),
    `Written: ${file}`,
    `Correct it to your café, then run: cuptide size ${file}`,
  ])
    say(line);
}

/** What the options say. */
const answersGiven = (
  options: Readonly<Partial<Record<QuestionKey, string>>>,
): Readonly<Partial<Record<QuestionKey, string>>> =>
  withCurrencyNamed(
    Object.fromEntries(
      questionKeys.flatMap((key) => (options[key] === undefined ? [] : [[key, options[key]]])),
    ),
  );

/** Whoever gives some options is asked only for what has no usual answer. */
async function asked(given: Readonly<Partial<Record<QuestionKey, string>>>): Promise<Asked> {
  const some = Object.keys(given).length > 0;
  const open = questionKeys.filter(
    (key) => given[key] === undefined && !(some && questions[key].optional),
  );
  if (open.length === 0) return { texts: {}, served: {} };
  if (process.stdin.isTTY) return ask(open, given, process.stdin, process.stderr);
  const needed = open.filter((key) => !questions[key].optional);
  if (needed.length === 0) return { texts: {}, served: {} };
  throw new MistakeError(
    `Nobody to ask: give ${needed.map((key) => `--${questions[key].option}`).join(', ')}`,
  );
}

/** What was taken as usual, so that nobody takes it for their own. */
function assumed(
  answers: StarterAnswers,
  given: Readonly<Partial<Record<QuestionKey, string>>>,
): string[] {
  const open = (key: QuestionKey): boolean => given[key] === undefined;
  const { machine } = answers;
  return [
    `Guests: ${shapeSentence(answers)}.${open('shape') ? ` Assumed from the hours; --shape takes ${Object.keys(shapes).join(', ')}.` : ''}`,
    ...(open('dwell')
      ? ['Assumed: stays as is common, 22 min alone and 42 min in company (--dwell).']
      : []),
    ...(open('machine') ? [`Assumed: one ${machine.class} dishwasher (--machine).`] : []),
    ...(open('shareRacks')
      ? ['Assumed: cups, saucers and spoons each have racks of their own (--share-racks).']
      : []),
  ];
}

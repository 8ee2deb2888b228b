/** Asks the questions of a starter on a terminal. */
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { harmless } from '../tell/clean-text.js';
import { readMenu, starterDrinks, vesselNames, vesselOf } from '../scenario/starter-drinks.js';
import {
  questionKeys,
  questions,
  type QuestionKey,
  type Served,
  type SoFar,
} from '../scenario/starter-questions.js';
import { readAnswer } from '../scenario/starter-reading.js';
import { EXIT, MistakeError } from './mistakes.js';
import { holdSignals, leave, releaseSignals } from './signals.js';
import { folded, inColumns, widthOf } from './terminal.js';

export interface Asked {
  readonly texts: Partial<Record<QuestionKey, string>>;
  /** What drinks that are not known are served in. */
  readonly served: Served;
}

/**
 * Ask, and ask again until an answer will do; an empty line takes the usual answer. Lines that were typed or pasted
 * ahead answer the questions that follow.
 * @param given answers that need no asking
 * @throws MistakeError where the input ends before the last answer
 */
export async function ask(
  open: readonly QuestionKey[],
  given: Readonly<Partial<Record<QuestionKey, string>>>,
  input: Readable,
  output: Writable & { readonly columns?: number },
): Promise<Asked> {
  // Lines are edited in a mode of the terminal's own, which only our ending takes back.
  holdSignals();
  const terminal = createInterface({ input, output });
  terminal.on('SIGINT', () => leave(EXIT.interrupted));
  const lines = terminal[Symbol.asyncIterator]();
  const say = (text: string): void => void output.write(`${folded(text, widthOf(output))}\n`);
  const list = (words: readonly string[]): void =>
    void output.write(`${inColumns(words, widthOf(output))}\n`);
  const line = async (prompt: string): Promise<string> => {
    terminal.setPrompt(prompt);
    terminal.prompt();
    const { value, done } = await lines.next();
    if (done === true)
      throw new MistakeError('The answers end before the last question; nothing was written.');
    return harmless(value).trim();
  };
  const servedIn = async (drink: string): Promise<Served[string]> => {
    for (;;) {
      say(`What is "${drink}" served in?`);
      list(vesselNames.map((name, i) => `${i + 1} ${name}`));
      const answer = await line('> ');
      const vessel = vesselOf(answer);
      if (vessel !== null) return vessel;
      say(`"${answer}" is none of these.`);
    }
  };

  const [texts, served]: [Partial<Record<QuestionKey, string>>, Record<string, Served[string]>] = [
    {},
    {},
  ];
  const values: Partial<Record<QuestionKey, unknown>> = {};
  const answerTo = async (key: QuestionKey): Promise<string> => {
    const { ask: question, help } = questions[key];
    const usual = questions[key].usual(values as SoFar);
    for (;;) {
      say(`\n${question}`);
      if (help !== '') say(help);
      if (key === 'menu') list(starterDrinks.map(({ name }) => name.toLowerCase()));
      const answer = (await line(usual === null ? '> ' : `[${usual}] > `)) || (usual ?? '');
      if (key === 'menu') {
        const menu = readMenu(answer, served);
        if (!menu.ok && 'unserved' in menu)
          for (const drink of menu.unserved) served[drink] = await servedIn(drink);
      }
      const problem = take(key, answer);
      if (problem === null) return answer;
      say(`"${answer}" ${problem}.`);
    }
  };
  /** Keep the value and show how it was understood, where that differs from what was typed; else why it cannot be. */
  const take = (key: QuestionKey, text: string): string | null => {
    const read = readAnswer(key, text, values as SoFar, served);
    if (!read.ok) return read.why;
    values[key] = read.value.value;
    if (open.includes(key) && read.value.shown !== text) say(`= ${read.value.shown}`);
    return null;
  };

  try {
    for (const key of questionKeys) {
      if (open.includes(key)) texts[key] = await answerTo(key);
      else take(key, given[key] ?? questions[key].usual(values as SoFar) ?? '');
    }
  } finally {
    // Answers typed ahead leave the last prompt without the end of its line.
    output.write('\n');
    terminal.close();
    await releaseSignals();
  }
  return { texts, served };
}

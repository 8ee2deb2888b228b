/** Asks what the options left open, checks the answers, writes the starter. */
import { access } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { readScenario } from '../scenario/read-scenario.js';
import { starter, starterDrinks, type StarterAnswers } from '../scenario/starter.js';
import { writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';

/** Answers given as options; the others are asked. */
export interface Given {
  readonly file: string;
  readonly name?: string;
  readonly seats?: number;
  readonly guests?: number;
  readonly from?: string;
  readonly to?: string;
  readonly stay?: string;
  readonly menu?: string;
  readonly currency?: string;
  readonly staffHour?: string;
}

interface Question {
  readonly option: string;
  readonly ask: string;
  readonly usual: string;
  /** What is wrong with an answer, or null. */
  readonly wrong: (answer: string) => string | null;
}

const wholeFrom = (least: number, what: string) => (answer: string) =>
  /^\d{1,5}$/.test(answer) && Number(answer) >= least ? null : `is no whole number of ${what}`;
const clock = (answer: string): string | null =>
  /^([01]?\d|2[0-3]):[0-5]\d$/.test(answer) ? null : 'is no time of day such as 07:00';

const questions = {
  name: {
    option: 'name',
    ask: 'What is the café called?',
    usual: 'My café',
    wrong: (answer) => (answer.trim() === '' ? 'is empty' : null),
  },
  seats: {
    option: 'seats',
    ask: 'How many seats has it?',
    usual: '40',
    wrong: wholeFrom(1, 'seats'),
  },
  guests: {
    option: 'guests',
    ask: 'How many guests come in the busiest hour, those who take away included?',
    usual: '60',
    wrong: wholeFrom(1, 'guests'),
  },
  from: { option: 'from', ask: 'When does the rush begin?', usual: '07:00', wrong: clock },
  to: { option: 'to', ask: 'When does it end?', usual: '11:00', wrong: clock },
  stay: {
    option: 'stay',
    ask: 'What share of guests stay in?',
    usual: '50 %',
    wrong: (answer) => (shareOf(answer) === null ? 'is no share such as 40 %' : null),
  },
  menu: {
    option: 'menu',
    ask: `What is on the menu? (${starterDrinks.join(', ')})`,
    usual: 'flat-white, cappuccino, tea',
    wrong: (answer) => unknownDrinks(answer),
  },
  currency: {
    option: 'currency',
    ask: 'In which currency (ISO code)?',
    usual: 'EUR',
    wrong: (answer) => (/^[A-Z]{3}$/.test(answer) ? null : 'is no ISO code such as EUR'),
  },
  staffHour: {
    option: 'staff-hour',
    ask: 'What does an hour of staff cost?',
    usual: '22',
    wrong: (answer) =>
      /^\d+(\.\d+)?$/.test(answer) && Number(answer) > 0 ? null : 'is no amount such as 22.50',
  },
} as const satisfies Record<string, Question>;

type Key = keyof typeof questions;

function shareOf(answer: string): number | null {
  const percent = /^(\d+(?:\.\d+)?)\s*%$/.exec(answer.trim());
  const share = percent
    ? Number(percent[1]) / 100
    : /^[01](\.\d+)?$|^\.\d+$/.test(answer.trim())
      ? Number(answer)
      : Number.NaN;
  return share >= 0 && share <= 1 ? share : null;
}

const drinksOf = (answer: string): string[] =>
  answer
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');

function unknownDrinks(answer: string): string | null {
  const drinks = drinksOf(answer);
  const unknown = drinks.filter((drink) => !starterDrinks.includes(drink));
  if (drinks.length === 0) return 'names no drink';
  return unknown.length === 0
    ? null
    : `names ${unknown.join(', ')}; known are ${starterDrinks.join(', ')}`;
}

/** @throws MistakeError for wrong options, options left open with no terminal to ask on, or a file that is there already */
export async function writeStarter(given: Given): Promise<void> {
  if (
    await access(given.file).then(
      () => true,
      () => false,
    )
  )
    throw new MistakeError(`${given.file}: is there already; name another file`);
  const answers = await answersTo(given);
  const wrong = (Object.keys(questions) as Key[]).flatMap((key) => {
    const problem = questions[key].wrong(answers[key]);
    return problem === null ? [] : [`--${questions[key].option}: "${answers[key]}" ${problem}`];
  });
  if (wrong.length > 0) throw new MistakeError(wrong.join('\n'));
  const filled: StarterAnswers = {
    name: answers.name,
    seats: Number(answers.seats),
    guestsPeakHour: Number(answers.guests),
    from: answers.from,
    to: answers.to,
    staysIn: shareOf(answers.stay)!,
    menu: drinksOf(answers.menu),
    currency: answers.currency,
    staffHour: answers.staffHour,
  };
  const text = starter(filled);
  const check = readScenario(text, given.file);
  if (!check.ok) throw problemsAsMistake(check.problems);
  await writeAll([{ path: given.file, content: text }]);
  process.stdout.write(
    `Written: ${given.file}\nCorrect it to your house, then run: cuptide size ${given.file}\n`,
  );
}

async function answersTo(given: Given): Promise<Record<Key, string>> {
  const open = (Object.keys(questions) as Key[]).filter((key) => given[key] === undefined);
  const answers = Object.fromEntries(
    (Object.keys(questions) as Key[]).map((key) => [
      key,
      String(given[key] ?? questions[key].usual),
    ]),
  ) as Record<Key, string>;
  if (open.length === 0) return answers;
  if (!process.stdin.isTTY)
    throw new MistakeError(
      `Nobody to ask: give ${open.map((key) => `--${questions[key].option}`).join(', ')}`,
    );
  return { ...answers, ...(await ask(open, process.stdin, process.stderr)) };
}

/**
 * Ask, and ask again until an answer will do; an empty line takes the usual answer. Lines that were typed or pasted
 * ahead answer the questions that follow.
 * @throws MistakeError where the input ends before the last answer
 */
export async function ask(
  open: readonly Key[],
  input: Readable,
  output: Writable,
): Promise<Partial<Record<Key, string>>> {
  const terminal = createInterface({ input, output });
  terminal.on('SIGINT', () => process.kill(process.pid, 'SIGINT'));
  const lines = terminal[Symbol.asyncIterator]();
  const answers: Partial<Record<Key, string>> = {};
  try {
    for (const key of open) {
      const { ask: question, usual, wrong } = questions[key];
      while (answers[key] === undefined) {
        terminal.setPrompt(`${question} [${usual}] `);
        terminal.prompt();
        const { value, done } = await lines.next();
        if (done === true)
          throw new MistakeError('The answers end before the last question; nothing was written.');
        const answer = value.trim() || usual;
        const problem = wrong(answer);
        if (problem === null) answers[key] = answer;
        else output.write(`"${answer}" ${problem}.\n`);
      }
    }
  } finally {
    terminal.close();
  }
  return answers;
}

/** A saved letter or answer worked out again, and what does not match. */
import { isWorkbook } from '../../quantities/read-workbook.js';
import { readWhole } from '../files.js';
import { MistakeError } from '../mistakes.js';
import { print, printAnswer, say } from '../print.js';
import { version } from '../version.js';
import { withRunner } from '../with-runner.js';
import { readAnswer } from './answer-file.js';
import { isLetter, readLetter } from './letter-file.js';
import { verifyAnswer } from './verify-answer.js';
import { verifyCsv, verifyWorkbook } from './verify-sheet.js';
import { verifyLetter, type Verified } from './verify-letter.js';

export interface VerifyArguments {
  readonly file: string;
  readonly scenario: string | undefined;
  readonly files?: string | undefined;
  readonly json: boolean;
  readonly threads: number | undefined;
}

const LARGEST = 50_000_000;
/** Differences that are listed; the rest are counted. */
const LISTED = 20;

/** @returns whether every number matches @throws MistakeError where the file is none of ours, or damaged */
export async function runVerify(args: VerifyArguments): Promise<boolean> {
  const found = await verified(args);
  const { differences } = found;
  const same = differences.length === 0;
  if (args.json)
    printAnswer(
      { file: args.file, matches: same, madeBy: found.version, verifiedBy: version, ...found },
      () => '',
    );
  else tell(args.file, found);
  return same;
}

async function verified({ file, scenario, files, threads }: VerifyArguments): Promise<Verified> {
  const sources = { name: file, scenario, files, threads };
  const bytes = await readWhole(file, LARGEST);
  if (isWorkbook(bytes)) return verifyWorkbook(bytes, sources);
  const text = textOf(bytes, file);
  if (text.trimStart().startsWith('{')) return verifyAnswer(readAnswer(text, file), sources);
  if (/\.csv$/i.test(file)) return verifyCsv(text, sources);
  if (!isLetter(text))
    throw new MistakeError(
      `${file}: is neither a letter, an answer nor a table of this program; give a saved letter (.html), what a command printed with --json, or a table (.csv, order.xlsx) as a command wrote it with --out; of a page to print, verify the JSON that was written with it`,
    );
  for (const [option, given] of Object.entries({ scenario, files }))
    if (given !== undefined)
      throw new MistakeError(`--${option}: a letter carries all it needs; leave the option out`);
  const letter = readLetter(text, file);
  return withRunner('running days', threads, (runner) => verifyLetter(letter, file, runner));
}

function textOf(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new MistakeError(
      `${file}: is not text; give a saved letter (.html), or what a command printed with --json`,
    );
  }
}

function tell(file: string, { version: by, seed, values, parts, differences }: Verified): void {
  if (by !== version)
    say(`${file} was made by version ${by}; this is version ${version}, whose rules may differ.`);
  const all = `${values.toLocaleString('en')} values${parts === 0 ? '' : ` and the words of ${parts} parts`}`;
  if (differences.length === 0) {
    say(`${file}: every number matches. ${all} were worked out again, with seed ${seed}.`);
    return;
  }
  const count = differences.length;
  say(
    `${file}: ${count.toLocaleString('en')} ${count === 1 ? 'does' : 'do'} not match, of ${all} that were worked out again.`,
  );
  for (const { place, printed, found } of differences.slice(0, LISTED))
    print(`  ${place}\n    printed ${printed}\n    found   ${found}\n`);
  if (count > LISTED) say(`and ${(count - LISTED).toLocaleString('en')} more; --json lists all.`);
}

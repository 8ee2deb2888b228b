/** An answer that was saved as JSON: what it says, and what it says it was made from. */
import * as z from 'zod';
import type { Made } from '../../questions/made.js';
import { formatProblem, problem } from '../../scenario/problems.js';
import { flawsOf } from '../../scenario/zod-flaws.js';
import { MistakeError } from '../mistakes.js';

const DAMAGED = 'the file is damaged: take it as the command wrote it';
const digest = z.string().regex(/^[0-9a-f]{64}$/, 'is no SHA-256');
const group = (what: string): string => `is no ${what}; ${DAMAGED}`;
const madeSchema = z.looseObject(
  {
    version: z.string(),
    command: z.string(),
    seed: z.string(),
    question: z.string(),
    settings: z.record(z.string(), z.string(), group('group of settings')),
    scenario: z.union(
      [
        z.looseObject({ file: z.string(), text: z.string() }),
        z.looseObject({ file: z.string(), sha256: digest }),
      ],
      'neither holds the scenario nor names it with its SHA-256',
    ),
    files: z
      .array(z.looseObject({ name: z.string(), sha256: digest }), group('list of files'))
      .optional(),
  },
  group('group of fields'),
);

export interface SavedAnswer {
  readonly made: Made;
  /** All but `made`. */
  readonly answer: Readonly<Record<string, unknown>>;
}

/** @throws MistakeError where it is no answer of ours, or damaged */
export function readAnswer(text: string, name: string): SavedAnswer {
  let tree: unknown;
  try {
    tree = JSON.parse(text);
  } catch {
    throw new MistakeError(
      `${name}: is not whole JSON; was it cut short? Take the file as the command wrote it`,
    );
  }
  if (typeof tree !== 'object' || tree === null || Array.isArray(tree) || !('made' in tree))
    throw new MistakeError(
      `${name}: does not say what it was made from ("made" is missing), as answers of this program do; give a saved letter (.html), or what a command printed with --json`,
    );
  const { made, ...answer } = tree as Record<string, unknown>;
  return { made: checkedMade(made, name), answer };
}

/** What a workbook says it was made from. @throws MistakeError where that is damaged */
export function madeOfData(data: string, name: string): Made {
  let tree: unknown;
  try {
    tree = JSON.parse(data);
  } catch {
    tree = undefined;
  }
  return checkedMade(tree, name);
}

function checkedMade(made: unknown, name: string): Made {
  const read = madeSchema.safeParse(made);
  if (read.success) return read.data as Made;
  throw new MistakeError(
    flawsOf(read.error.issues, madeSchema, made)
      .map((flaw) =>
        formatProblem(
          problem({ ...flaw, path: ['made', ...flaw.path], remedy: DAMAGED }, name, {
            line: 0,
            column: 0,
          }),
        ),
      )
      .join('\n'),
  );
}

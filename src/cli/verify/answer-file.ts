/** An answer that was saved as JSON: what it says, and what it says it was made from. */
import * as z from 'zod';
import type { Made } from '../../questions/made.js';
import { MistakeError } from '../mistakes.js';

const digest = z.string().regex(/^[0-9a-f]{64}$/, 'is no SHA-256');
const madeSchema = z.looseObject({
  version: z.string(),
  command: z.string(),
  seed: z.string(),
  question: z.string(),
  settings: z.record(z.string(), z.string()),
  scenario: z.union([
    z.looseObject({ file: z.string(), text: z.string() }),
    z.looseObject({ file: z.string(), sha256: digest }),
  ]),
  files: z.array(z.looseObject({ name: z.string(), sha256: digest })).optional(),
});

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
  } catch (error) {
    throw new MistakeError(
      `${name}: is not whole JSON (${(error as SyntaxError).message}); was it cut short? Take the file as the command wrote it`,
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
  const { path, message } = read.error.issues[0]!;
  throw new MistakeError(
    `${name}: ${['made', ...path].join('.')}: ${message}; the file is damaged: take it as the command wrote it`,
  );
}

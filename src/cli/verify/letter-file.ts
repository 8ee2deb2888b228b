/** A saved letter as a file: what it was made from, and the parts that are printed. */
import * as z from 'zod';
import { LETTER_PARTS, type LetterPart } from '../../letter/letter.js';
import type { Given, GivenScenario } from '../../letter/live.js';
import { MistakeError } from '../mistakes.js';

/** What verifying reads; the rest of a letter is compared, or of no matter. */
const givenSchema = z.looseObject({
  version: z.string(),
  scenario: z
    .looseObject({
      fileName: z.string(),
      text: z.string(),
      options: z.looseObject({
        level: z.number().gt(0).lt(1).optional(),
        seed: z.string().optional(),
        days: z.int().min(1).max(1_000_000).optional(),
        confidence: z.number().gt(0.5).lt(1).optional(),
        stock: z.record(z.string(), z.int().min(0)).optional(),
        listed: z.array(z.looseObject({})).optional(),
      }),
      answer: z.looseObject({ stock: z.array(z.looseObject({})) }),
      curves: z.array(z.looseObject({})),
      made: z.looseObject({ scenario: z.looseObject({ sha256: z.string() }) }).optional(),
    })
    .nullable(),
  look: z
    .looseObject({ units: z.enum(['metric', 'us']), locale: z.string().nullable() })
    .optional(),
});

export interface SavedLetter {
  readonly given: Given;
  readonly scenario: GivenScenario;
  /** HTML of each printed part; undefined: it is not there. */
  readonly parts: Readonly<Record<LetterPart, string | undefined>>;
}

const DATA = /<script type="application\/json" id="given">([\s\S]*?)<\/script>/;
const IS_LETTER = /<h1\b[^>]*\bdata-part="heading"/;

/** Whether it is a letter at all, whole or not. */
export const isLetter = (html: string): boolean => IS_LETTER.test(html) || DATA.test(html);

/** @throws MistakeError where it cannot be worked out again */
export function readLetter(html: string, name: string): SavedLetter {
  if (!/<\/html>\s*$/.test(html))
    throw new MistakeError(
      `${name}: the letter is cut short: its end is missing; take the letter as it was sent`,
    );
  const data = DATA.exec(html)?.[1];
  if (data === undefined)
    throw new MistakeError(
      `${name}: this letter is text and pictures alone, as those of more than 20 listed days are, so it cannot be worked out again from itself; verify the JSON answer instead`,
    );
  let tree: unknown;
  try {
    tree = JSON.parse(data);
  } catch {
    tree = undefined;
  }
  const read = givenSchema.safeParse(tree);
  if (!read.success)
    throw new MistakeError(
      `${name}: the letter is damaged: what it was made from cannot be read${read.error.issues[0]!.path.length === 0 ? '' : ` (${read.error.issues[0]!.path.join('.')})`}; take the letter as it was sent`,
    );
  const given = tree as Given;
  if (given.scenario === null)
    throw new MistakeError(`${name}: is the blank letter; there is no answer in it to verify`);
  const parts = Object.fromEntries(
    LETTER_PARTS.map((part) => [part, partOf(html, part)]),
  ) as SavedLetter['parts'];
  return { given, scenario: given.scenario, parts };
}

/** What stands between a part's tags, with further elements of the same name in it. */
function partOf(html: string, part: LetterPart): string | undefined {
  const open = new RegExp(`<(\\w+)\\b[^>]*\\bdata-part="${part}"[^>]*>`).exec(html);
  if (open === null) return undefined;
  const from = open.index + open[0].length;
  const tags = new RegExp(`<(/?)${open[1]!}\\b`, 'g');
  tags.lastIndex = from;
  for (let depth = 1, tag = tags.exec(html); tag !== null; tag = tags.exec(html)) {
    depth += tag[1] === '/' ? -1 : 1;
    if (depth === 0) return html.slice(from, tag.index);
  }
  return undefined;
}

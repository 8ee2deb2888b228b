/** A saved answer worked out again by the command that made it. */
import type { SavedAnswer } from './answer-file.js';
import { askedAgain, type Sources } from './asked-again.js';
import { countValues, valueDifferences } from './differences.js';
import { verifySites } from './verify-sites.js';
import type { Verified } from './verify-letter.js';

/** @throws MistakeError where it cannot be worked out again */
export async function verifyAnswer(saved: SavedAnswer, sources: Sources): Promise<Verified> {
  const { made, answer } = saved;
  if (made.question === 'sites') return verifySites(saved, sources);
  const { json } = await askedAgain(made, answer['date'], sources);
  const found: unknown = JSON.parse(JSON.stringify(json));
  return {
    version: made.version,
    seed: made.seed,
    values: countValues(found),
    parts: 0,
    differences: valueDifferences(answer, found),
  };
}

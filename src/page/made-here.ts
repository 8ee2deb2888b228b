/** What an answer of the page was made from: the scenario itself goes with it, as it may be in no file yet. */
import type { Given, GivenOptions } from '../letter/live.js';
import { commandText, type Made } from '../questions/made.js';
import type { Whole } from './store.js';

export function madeHere(
  { fileName, text, options, answer }: Pick<Whole, 'fileName' | 'text' | 'options' | 'answer'>,
  { version }: Pick<Given, 'version'>,
): { readonly made?: Made } {
  // Listed days have no name here: they stay in the letter alone.
  if (options.listed !== undefined) return {};
  const settings = {
    ...typedOf(options),
    ...(answer.allowingForInputs === undefined ? {} : { 'allow-for-inputs': 'true' }),
  };
  return {
    made: {
      version,
      command: commandText('report', fileName, settings),
      seed: answer.seed,
      question: 'report',
      settings,
      scenario: { file: fileName, text },
    },
  };
}

/** Options as they would be typed. */
const typedOf = ({ level, seed, days, confidence, stock }: GivenOptions): Record<string, string> =>
  Object.fromEntries(
    Object.entries({
      level,
      seed,
      days,
      confidence,
      stock:
        stock &&
        Object.entries(stock)
          .map(([id, pieces]) => `${id}=${pieces}`)
          .join(','),
    }).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])),
  );

/** Sentences of suiting in lists: what could make drinks alike, and which vessel could replace which. */
import type { SuitAnswer } from '../../suiting/answer.js';
import { minorPerUnit } from '../../quantities/money.js';
import type { Remedy } from '../../suiting/remedies.js';
import { changeWords, remedyWords } from '../../suiting/remedy-words.js';
import { list, paragraphs, type Block } from '../../tell/block.js';
import type { Telling } from './tables.js';
import { suitWords as say } from './words.js';

/** Replacements that stand open. */
const OPEN = 3;

/** Keeps a figure and its unit on one line. */
export const wholeFigures = (text: string): string =>
  text.replace(/(?<=\d) (?=(?:%|°C|°F|mm|ml|kg|g|min|s|fl oz)(?![a-z]))/g, '\u00A0');

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** A list for each drink that does not taste alike. */
export function remedyLists(
  { drinks, currency }: SuitAnswer,
  { formats, labels }: Telling,
): Block[] {
  const milk = ({ milkMlADrink: ml, milkCostAWeekMinor: cost }: Remedy): string =>
    Math.abs(ml) < 0.5
      ? ''
      : (ml > 0 ? say.moreMilk : say.lessMilk)(
          formats.volume(Math.abs(ml)),
          cost === null ? null : formats.money(Math.abs(cost) / minorPerUnit(currency)),
        );
  const priced = drinks.every(({ remedies }) =>
    remedies.every(({ milkCostAWeekMinor }) => milkCostAWeekMinor !== null),
  );
  const lists = drinks.flatMap(({ remedies }, at) =>
    remedies.length === 0
      ? []
      : [
          list(
            remedies.map((one) =>
              one.feasible
                ? say.remedy(capital(wholeFigures(remedyWords(one, currency))), milk(one))
                : say.cannot(
                    wholeFigures(changeWords(one)),
                    one.note === '' ? '' : say.because(wholeFigures(one.note)),
                  ),
            ),
            labels[at]!,
          ),
        ],
  );
  return lists.length === 0 ? [] : priced ? lists : [...lists, paragraphs([say.prices], 'small')];
}

/** Replacements that save most pieces first; those that save none, or too many to show, apart. */
export function mergeLines(
  { merges, pooling }: SuitAnswer,
  { formats, nameOf }: Telling,
): { readonly first: readonly string[]; readonly others: readonly string[] } {
  const lines = merges
    .map((merge) => ({
      merge,
      gain: pooling.find(({ keep, drop }) => keep === merge.keep && drop === merge.drop),
    }))
    .toSorted((a, b) => (b.gain?.saved ?? 0) - (a.gain?.saved ?? 0))
    .map(({ merge, gain }) => ({
      saves: (gain?.saved ?? 0) > 0,
      line: say.merge(
        nameOf(merge.keep),
        nameOf(merge.drop),
        gain === undefined ? '' : say.merged(formats.count(gain.pooled), formats.count(gain.apart)),
        merge.mind.join('; '),
      ),
    }));
  const shown = (at: number): boolean => at < OPEN && lines[at]!.saves;
  return {
    first: lines.filter((_, at) => shown(at)).map(({ line }) => line),
    others: lines.filter((_, at) => !shown(at)).map(({ line }) => line),
  };
}

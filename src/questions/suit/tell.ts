/** Vessel, drink and guest, reported once: what does not suit, gravest first; then strength, heat and the vessels. */
import { CONSEQUENCES, type DrinkAnswer, type SuitAnswer } from '../../suiting/answer.js';
import { fold, heading, list, paragraphs, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { suitCharts } from './charts.js';
import { drinkLabels } from './strength.js';
import {
  assumedTable,
  heatTable,
  holdTable,
  madeTable,
  strengthTable,
  wareTable,
  type Telling,
} from './tables.js';
import { mergeLines, remedyLists, wholeFigures } from './lines.js';
import { suitWords as say } from './words.js';

/** Findings that stand open; whatever can hurt always does. */
const OPEN = 5;

export function suitBlocks(answer: SuitAnswer, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const telling: Telling = {
    formats,
    labels: drinkLabels(answer.drinks),
    nameOf: (id) => shortName(answer.ware.find(({ ware }) => ware === id)?.name ?? id),
  };
  const { findings } = answer;
  const open = Math.max(
    OPEN,
    findings.findLastIndex(({ consequence }) => consequence === 'harm') + 1,
  );
  const others = findings.slice(open);
  const merges = mergeLines(answer, telling);
  const made = answer.drinks.some(({ house, takeaway }) => house !== null || takeaway !== null);
  return [
    heading(say.head),
    paragraphs([tasteSentence(answer, formats)], 'lead'),
    paragraphs(
      answer.kindOfDay === undefined ? [] : [say.kindOfDay(shortName(answer.kindOfDay))],
      'small',
    ),
    list(
      findings.slice(0, open).map(({ message }) => wholeFigures(message)),
      say.first,
    ),
    {
      kind: 'picture',
      // The letter may hold these pictures already: ids are used once.
      pictures: suitCharts(answer, context.locale, context.units).map((one) => ({
        ...one,
        id: `suit-${one.id}`,
      })),
    },
    strengthTable(answer.drinks, telling),
    paragraphs(made ? [say.caffeine] : [], 'small'),
    heatTable(answer, telling),
    wareTable(answer, telling),
    list(merges.first, say.merges),
    fold(
      say.others(formats.count(others.length)),
      CONSEQUENCES.map((consequence) =>
        list(
          others
            .filter((one) => one.consequence === consequence)
            .map(({ message }) => wholeFigures(message)),
          say.consequences[consequence],
        ),
      ),
    ),
    fold(say.madeHead, [madeTable(answer.drinks, telling)]),
    fold(say.remedies, remedyLists(answer, telling)),
    fold(say.holdHead, [holdTable(answer, telling)]),
    fold(say.otherMerges, [list(merges.others)]),
    fold(say.assumed, [assumedTable(answer)]),
    list(answer.cautions, say.cautions),
  ];
}

function tasteSentence({ drinks, parity }: SuitAnswer, { count, percent }: Formats): string {
  const compared: DrinkAnswer[] = drinks.filter(({ level }) => level !== null);
  const apart = compared.filter(({ level }) => level === false).length;
  if (compared.length === 0) return say.notCompared;
  if (apart === 0) return say.alike(count(compared.length));
  return apart === compared.length && apart > 1
    ? say.allApart(count(apart), percent(parity, 0))
    : say.apart(count(apart), count(compared.length), percent(parity, 0));
}

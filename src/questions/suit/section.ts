/** The section of vessel, drink and guest: what does not suit, gravest first; strength, heat and the vessels. */
import {
  CONSEQUENCES,
  type DrinkAnswer,
  type Served,
  type SuitAnswer,
} from '../../suiting/answer.js';
import { remedyWords } from '../../suiting/findings.js';
import { cleanText } from '../../tell/clean-text.js';
import { drinkLabels } from './strength.js';
import { minutesText } from '../../tell/format.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { english, type Words } from '../../tell/words.js';
import type { ReportContext } from '../../tell/context.js';
import {
  folded,
  heading,
  joined,
  listUnder,
  paragraph,
  pictureList,
  shortName,
  table,
} from '../../tell/section-parts.js';

/** @param pictures the charts of `suitCharts`, drawn */
export function suitSection(
  answer: SuitAnswer,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const words = context.words ?? english;
  const say = words.sections.suit;
  const formats = formatsFor(context);
  const labels = drinkLabels(answer.drinks);
  const nameOf = (id: string): string =>
    shortName(answer.ware.find(({ ware }) => ware === id)?.name ?? id);
  const remedied = answer.drinks.filter(({ remedies }) => remedies.length > 0);
  return joined([
    heading(say.head),
    paragraph(tasteSentence(answer, formats, words)),
    ...CONSEQUENCES.map((consequence) =>
      listUnder(
        say.consequences[consequence],
        answer.findings
          .filter((one) => one.consequence === consequence)
          .map(({ message }) => message),
      ),
    ),
    pictureList(pictures, formats, words),
    strengthTable(answer.drinks, labels, nameOf, formats, words),
    answer.drinks.some(({ house, takeaway }) => house !== null || takeaway !== null)
      ? paragraph(say.caffeine, 'small')
      : '',
    heatTable(answer, labels, formats, words),
    wareTable(answer, nameOf, formats, words),
    folded(
      say.remedies,
      joined(
        remedied.map((drink) =>
          listUnder(
            labels[answer.drinks.indexOf(drink)]!,
            drink.remedies.map((one) =>
              (one.feasible ? say.mindful : say.cannot)(
                remedyWords(one, answer.currency),
                one.note,
              ),
            ),
          ),
        ),
      ),
    ),
    listUnder(
      say.merges,
      answer.merges.map((merge) => {
        const gain = answer.pooling.find(
          ({ keep, drop }) => keep === merge.keep && drop === merge.drop,
        );
        return say.merge(
          nameOf(merge.keep),
          nameOf(merge.drop),
          gain === undefined
            ? ''
            : say.merged(formats.count(gain.pooled), formats.count(gain.apart)),
          merge.mind.join('; '),
        );
      }),
    ),
    folded(
      say.assumed,
      table({
        caption: say.assumed,
        wordy: true,
        head: say.assumedHead,
        rows: answer.assumptions.map(({ path, value, unit, range, source }) => [
          path,
          `${value} ${unit}`,
          words.answer.to(String(range[0]), String(range[1])),
          source,
        ]),
      }),
    ),
    listUnder(say.cautions, answer.cautions),
  ]);
}

function tasteSentence(
  { drinks, parity }: SuitAnswer,
  { count, percent }: Formats,
  words: Words,
): string {
  const say = words.sections.suit;
  const compared = drinks.filter(({ level }) => level !== null);
  const apart = compared.filter(({ level }) => level === false).length;
  if (compared.length === 0) return say.notCompared;
  return apart === 0
    ? say.alike(count(compared.length))
    : say.apart(count(apart), count(compared.length), percent(parity, 0));
}

function strengthTable(
  drinks: readonly DrinkAnswer[],
  labels: readonly string[],
  nameOf: (id: string) => string,
  formats: Formats,
  words: Words,
): string {
  const say = words.sections.suit;
  const { decimal, percent } = formats;
  const row = (
    label: string,
    where: string,
    served: Served,
    more: readonly [string, string],
  ): string[] => [
    label,
    where,
    nameOf(served.vessel),
    formats.volume(served.brimMl),
    formats.volume(served.servedMl),
    `${decimal(served.doseG)}\u00A0g`,
    percent(served.shotShare, 0),
    decimal(served.solidsPer100Ml, 2),
    ...more,
  ];
  return table({
    caption: say.strengthCaption,
    words: [1, 2, 9],
    head: say.strengthHead,
    rows: drinks.flatMap(({ house, takeaway, ratio, level }, at) => [
      ...(house === null ? [] : [row(labels[at]!, say.house, house, ['', ''])]),
      ...(takeaway === null
        ? []
        : [
            row(labels[at]!, say.away, takeaway, [
              ratio === null ? words.answer.none : decimal(ratio, 2),
              level === null ? words.answer.none : level ? say.level : say.notLevel,
            ]),
          ]),
    ]),
  });
}

function heatTable(
  { drinks, firstSipMin, roomC }: SuitAnswer,
  labels: readonly string[],
  formats: Formats,
  words: Words,
): string {
  const say = words.sections.suit;
  const warm = drinks.flatMap(({ warmth, paperFirstC }, at) =>
    warmth === null ? [] : [{ label: labels[at]!, warmth, paperFirstC }],
  );
  const low = warm[0]?.warmth.preferred.lowC;
  if (low === undefined) return '';
  return table({
    caption: say.heatCaption(minutesText(firstSipMin, formats), formats.temperature(roomC)),
    head: say.heatHead(formats.temperature(low)),
    rows: warm.map(({ label, warmth, paperFirstC }) => [
      label,
      formats.temperature(warmth.pouredC),
      formats.temperature(warmth.firstSipColdC),
      formats.temperature(warmth.firstSipWarmedC),
      paperFirstC === null ? words.answer.none : formats.temperature(paperFirstC),
      warmth.belowMin === null ? words.answer.none : minutesText(warmth.belowMin, formats),
    ]),
  });
}

function wareTable(
  { ware }: SuitAnswer,
  nameOf: (id: string) => string,
  formats: Formats,
  words: Words,
): string {
  const say = words.sections.suit;
  const or = <V>(value: V | null | undefined, told: (value: V) => string): string =>
    value === null || value === undefined ? words.answer.none : told(value);
  return table({
    caption: say.wareCaption,
    words: [4, 5],
    head: say.wareHead,
    rows: ware.map((piece) => [
      nameOf(piece.ware),
      or(piece.brimMl, formats.volume),
      or(piece.massG, formats.mass),
      or(piece.grip?.filledG, formats.mass),
      or(piece.grip, ({ easy }) => (easy === null ? say.unsure : easy ? say.yes : say.no)),
      piece.saucers.length === 0
        ? words.answer.none
        : piece.saucers
            .map(({ saucer, verdict }) => cleanText(`${nameOf(saucer)}: ${verdict}`))
            .join(', '),
      or(piece.rack, ({ pieces }) => formats.count(pieces)),
      or(piece.outerWallC, formats.temperature),
    ]),
  });
}

/** What the order says, in words and cells, for every form it is told in. */
import { formatMoney } from '../../ordering/money.js';
import { nextStepSentence } from '../../ordering/landed.js';
import { repeatWords } from '../../ordering/order-sheet-csv.js';
import { poolingSentence } from '../../ordering/saucers.js';
import type { OrderStudy } from './study.js';
import { cleanText } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import { english, listed } from '../../tell/words.js';

type Cells = readonly string[];

export interface OrderParts {
  readonly heading: string;
  readonly sentence: string;
  /** A row a ware under `words.order.head`, and the totals. */
  readonly rows: readonly Cells[];
  readonly totals: Cells;
  readonly consignments: readonly string[];
  readonly nextSteps: readonly string[];
  readonly suppliers: readonly string[];
  readonly takeaway: readonly Cells[];
  readonly saucers: readonly string[];
  readonly stored: readonly Cells[];
  /** What is to be said of the places: trips, what finds no room, what would help. */
  readonly storing: readonly string[];
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
}

export function orderParts(
  { answer, sheet, saucers, pools, storage, fetching, unquoted }: OrderStudy,
  context: ReportContext,
): OrderParts {
  const words = context.words ?? english;
  const say = words.order;
  const formats = formatsFor(context);
  const { count, decimal, percent } = formats;
  const countOr = (value: number | null): string => (value === null ? say.none : count(value));
  const money = (minor: number | null): string =>
    minor === null ? say.none : formatMoney(minor, sheet.currency, sheet.locale ?? undefined);
  const nameOf = (id: string): string =>
    cleanText(context.ware.find((ware) => ware.id === id)?.name ?? id);
  const { totals } = sheet;
  const tooFew = (fetching?.onePlace ?? []).filter((id) =>
    storage!.lines.some(({ ware, onTop }) => ware === id && onTop > 0),
  );
  const pieces = unquoted
    ? sheet.lines.reduce((sum, { needed }) => sum + needed, 0)
    : totals.pieces;
  return {
    heading: say.heading(cleanText(sheet.title), sheet.date),
    sentence: unquoted
      ? say.sentenceUnquoted(count(pieces))
      : `${say.sentence(count(pieces), money(totals.totalMinor), percent(sheet.confidence, 0), count(sheet.reviewDays))} ${say.beyondStock(formats.money(answer.cost))}`,
    rows: sheet.lines.map((line) => [
      cleanText(line.name),
      count(line.par),
      count(line.hold),
      count(unquoted ? line.needed : line.pieces),
      line.cartons === null ? say.none : `${line.cartons} × ${line.cartonPieces}`,
      line.supplierName === null ? say.none : cleanText(line.supplierName),
      repeatWords(line.repeat) || say.none,
      money(line.goodsMinor),
      money(line.freightMinor),
      money(line.taxMinor),
      money(line.landedPerPieceMinor),
      countOr(line.reorderPoint),
      line.nextOrder?.expected ?? say.none,
    ]),
    totals: [
      say.total,
      '',
      '',
      count(pieces),
      ...(unquoted
        ? [say.none, '', '', say.none, say.none, say.none]
        : [
            count(totals.cartons),
            '',
            '',
            money(totals.goodsMinor),
            money(totals.freightMinor),
            money(totals.taxMinor),
          ]),
      '',
      '',
      '',
    ],
    consignments: unquoted
      ? []
      : sheet.consignments.map((one) =>
          say.consignment(
            cleanText(one.name),
            one.cartons,
            one.massG === null ? '' : `, ${decimal(one.massG / 1000)} kg in all`,
            money(one.freightMinor),
            cleanText(one.freightStep),
            money(one.totalMinor),
            one.delivery,
          ),
        ),
    nextSteps: sheet.consignments.flatMap((one) =>
      one.nextSteps.map((step) => cleanText(nextStepSentence(step, money))),
    ),
    suppliers: [
      ...sheet.suppliers.map((one) =>
        one.alone === null
          ? say.missing(cleanText(one.name), one.missing.map(nameOf).join(', '))
          : say.alone(
              cleanText(one.name),
              money(one.alone.openingMinor),
              money(one.alone.totalMinor),
            ),
      ),
      ...(sheet.plan === null || sheet.suppliers.length < 2
        ? []
        : [
            say.asOrdered(
              money(sheet.plan.chosen.openingMinor),
              money(sheet.plan.chosen.totalMinor),
            ),
          ]),
    ],
    takeaway: sheet.takeaway.map((line) => [
      cleanText(line.name),
      decimal(line.aWeek),
      decimal(line.asFallBackAWeek),
      count(line.sleevesAWeek),
      money(line.minorAWeek),
    ]),
    saucers: [
      ...saucers.pairs.map(({ cup, saucer, reason, clearanceMm }) =>
        say.fit(
          nameOf(cup),
          nameOf(saucer),
          reason,
          clearanceMm === null
            ? ''
            : clearanceMm < 0
              ? say.tooWide(decimal(-clearanceMm))
              : say.play(decimal(clearanceMm)),
        ),
      ),
      ...pools.map(({ saucer, gain }) => say.pool(nameOf(saucer), poolingSentence(gain))),
      ...saucers.orphanCups.map((cup) => say.orphanCup(nameOf(cup))),
      ...saucers.orphanSaucers.map((saucer) => say.orphanSaucer(nameOf(saucer))),
    ],
    stored: (storage?.lines ?? []).map((line) => [
      cleanText(line.name),
      count(line.onTop),
      count(line.inReserve),
      countOr(line.trigger),
    ]),
    storing:
      storage === null
        ? []
        : [
            ...(fetching === null
              ? []
              : [
                  say.fetching(
                    decimal(fetching.trips),
                    decimal(fetching.waits),
                    percent(fetching.safe),
                  ),
                ]),
            ...(storage.lines.some(({ onTop }) => onTop === 0) ? [say.withinReach] : []),
            ...(tooFew.length === 0 ? [] : [say.tooFewOnTop(listed(tooFew.map(nameOf), words))]),
            ...storage.homeless.map(({ ware, pieces: left }) => say.homeless(nameOf(ware), left)),
            ...storage.remedies.map(cleanText),
          ],
    warnings: [...sheet.warnings, ...(storage?.warnings ?? [])].map(({ message }) =>
      cleanText(message),
    ),
    cautions: sheet.cautions.map(
      ({ text, defersTo }) => `${text} (${words.cautions.defers} ${defersTo}.)`,
    ),
  };
}

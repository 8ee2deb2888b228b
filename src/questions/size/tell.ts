/** The answer, reported once: what to have, what stands in the way, what the rush looks like, how it was worked out. */
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import type { Answer } from './answer.js';
import { answerFacts, type AnswerFacts, type Row } from './facts.js';
import { formatsFor } from '../../tell/format.js';
import { habitsBlocks } from './tell-habits.js';
import { inputsBlocks } from './tell-inputs.js';
import { kindsBlocks, tightestKind } from './tell-kinds.js';
import { listed } from '../../tell/words.js';
import { NAME_LENGTH } from './lead.js';
import { sizeWords as say } from './words.js';

/** The parts of the answer, in their order; the letter gives each a place of its own. */
export interface SizeParts {
  readonly lead: readonly Block[];
  readonly measured: readonly Block[];
  readonly order: readonly Block[];
  readonly warnings: readonly Block[];
  /** How a given stock does; empty where it was chosen. */
  readonly stock: readonly Block[];
  readonly rush: readonly Block[];
  readonly method: readonly Block[];
}

export function sizeParts(answer: Answer, context: ReportContext): SizeParts {
  const facts = answerFacts(answer, context);
  const given = answer.rushLevel !== undefined;
  const tightest = tightestKind(answer);
  return {
    lead: [paragraphs([facts.sentence], 'lead')],
    measured: [paragraphs([facts.measured], 'small')],
    order: [
      orderTable(
        facts,
        given,
        answer.stock.some(({ have }) => have > 0),
      ),
      ...pricesBlocks(answer, context),
      ...kindsBlocks(answer, formatsFor(context)),
    ],
    warnings:
      facts.overloads.length + facts.warnings.length === 0
        ? []
        : [
            heading(say.warningsHead, 2),
            paragraphs(facts.overloads, 'alarm'),
            list(facts.warnings),
          ],
    stock: [rowsTable(say.stockCaption, say.onAverage, facts.stock)],
    rush: [
      ...(tightest === null ? [] : [paragraphs([say.kinds.rush(tightest)], 'small')]),
      rowsTable(say.busyCaption, say.busyShare, facts.busy),
      rowsTable(say.dayCaption, say.onAverage, facts.day),
      ...(facts.loop.length === 0 ? [] : [rowsTable(say.loopCaption, say.onAverage, facts.loop)]),
      paragraphs([facts.tightest.text]),
      ...(facts.tightest.rows.length === 0 ? [] : [tightestTable(facts)]),
    ],
    method: [paragraphs([...say.notes, facts.days, say.informs], 'small')],
  };
}

/** All of it, the details folded away. */
export function sizeBlocks(answer: Answer, context: ReportContext): Block[] {
  const { lead, measured, order, warnings, stock, rush, method } = sizeParts(answer, context);
  return [
    ...lead,
    ...measured,
    ...order,
    ...stock,
    ...(answer.habits === undefined ? [] : habitsBlocks(answer.habits, answer, context)),
    ...(answer.allowingForInputs === undefined
      ? []
      : inputsBlocks(answer.allowingForInputs, answer, context)),
    ...warnings,
    fold(say.rushHead, rush),
    fold(say.methodHead, method),
  ];
}

/** @param owned whether some of it is there already */
function orderTable({ order }: AnswerFacts, given: boolean, owned: boolean): Block {
  const cells = (row: (typeof order)[number]): string[] => [
    row.name,
    row.pieces,
    ...(owned ? [row.have, row.add] : []),
    row.perSeat,
    row.rule,
    row.unitCost,
    row.cost,
    row.alone,
    row.interval,
  ];
  const total = order.find(({ kind }) => kind === 'total');
  return table({
    caption: given ? say.givenCaption : say.orderCaption,
    columns: [
      { title: say.item, as: 'words' },
      { title: say.pieces, as: 'figures' },
      ...(owned ? [say.owned, say.toBuy].map((title) => ({ title, as: 'figures' as const })) : []),
      { title: say.perSeat, as: 'figures', spare: true },
      { title: say.rule, as: 'figures', spare: true },
      { title: say.unitCost, as: 'figures', spare: true },
      { title: say.cost, as: 'figures' },
      { title: say.alone, as: 'figures', spare: true },
      { title: say.interval, as: 'figures', spare: true },
    ],
    rows: order.filter(({ kind }) => kind !== 'total').map(cells),
    ...(total === undefined ? {} : { totals: cells(total) }),
  });
}

/** What the prices in the table are where the file gives none: they are not the owner's, though they look so. */
function pricesBlocks({ stock }: Answer, { inputs }: ReportContext): Block[] {
  const filled = new Set(
    inputs.filter(({ origin }) => origin === 'default').map(({ path }) => path),
  );
  const needed = stock.filter(({ pieces }) => pieces > 0);
  const unpriced = needed.filter(({ ware }) => filled.has(`ware.${ware}.price`));
  if (unpriced.length === 0) return [];
  const names = listed(unpriced.map(({ name }) => shorten(cleanText(name), NAME_LENGTH)));
  const quoted = inputs.some(({ path }) => /^supply\.suppliers\..+\.quotes\./.test(path));
  const sentence = unpriced.length === needed.length ? say.noPrices : say.usualPrices(names);
  return [paragraphs([quoted ? `${sentence} ${say.quotedPrices}` : sentence], 'small')];
}

const rowsTable = (caption: string, amounts: string, rows: readonly Row[]): Block =>
  table({
    caption,
    columns: [
      { title: say.what, as: 'words' },
      { title: amounts, as: 'figures' },
    ],
    rows: rows.map(({ label, value }) => [label, value]),
  });

const tightestTable = ({ tightest: { places, rows } }: AnswerFacts): Block =>
  table({
    caption: say.tightestCaption,
    columns: [
      { title: say.item, as: 'words' },
      ...places.map((title) => ({ title, as: 'figures' as const })),
      { title: say.off, as: 'figures' },
    ],
    rows: rows.map(({ name, counts, off }) => [name, ...counts, off]),
  });

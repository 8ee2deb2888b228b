/** The answer for a terminal: one sentence, then tables that line up within 100 columns. */
import type { Answer } from './answer.js';
import { answerFacts, type Row, type Tightest } from './facts.js';
import { columnsOf } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { textTable, wrapText, type TextColumn } from '../../tell/format.js';
import { english, type Words } from '../../tell/words.js';

const WIDTH = 100;
const GAP = 5;

/**
 * What `cuptide size` prints for people. Every line is at most 100 columns wide, the last ends in a newline.
 * @param context names, clock and money of the scenario the answer is of
 */
export function answerText(answer: Answer, context: ReportContext): string {
  const words = context.words ?? english;
  const say = words.answer;
  const facts = answerFacts(answer, context);
  const given = answer.rushLevel !== undefined;
  const columns: TextColumn[] = [
    { title: say.ware },
    { title: say.piecesHead, right: true },
    { title: `${say.piecesHead}\n${say.perSeat}`, right: true },
    { title: say.rule, right: true },
    { title: say.alone, right: true },
    { title: say.interval, right: true },
    { title: say.unitCost, right: true },
    { title: say.cost, right: true },
  ];
  const ware = facts.order.filter(({ kind }) => kind === 'ware');
  const groups = facts.order.filter(({ kind }) => kind === 'group');
  const total = facts.order.filter(({ kind }) => kind === 'total');
  const cells = (row: (typeof ware)[number]): string[] => [
    row.name,
    row.pieces,
    row.perSeat,
    row.rule,
    row.alone,
    row.interval,
    row.unitCost,
    row.cost,
  ];
  const order = textTable(
    columns,
    [...ware.map(cells), null, ...groups.map(cells), ...total.map(cells)],
    WIDTH,
  );
  const parts: string[][] = [
    wrapText(facts.sentence, WIDTH),
    order,
    say.notes.flatMap((note) => wrapText(note, WIDTH)),
    given ? lists([[say.stockHead, facts.stock]]) : [],
    lists([
      [say.busyHead, facts.busy],
      [say.dayHead, facts.day],
    ]),
    tightestLines(facts.tightest, words),
    facts.overloads.flatMap((overload) => wrapText(`! ${overload}`, WIDTH, '  ')),
    facts.warnings.length === 0
      ? []
      : [
          say.warningsHead,
          ...facts.warnings.flatMap((warning) => wrapText(`- ${warning}`, WIDTH, '  ')),
        ],
    [...wrapText(facts.days, WIDTH), say.informs],
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .replaceAll('\u00A0', ' ')}\n`;
}

/** Lists of labelled figures side by side where they fit, else one under the other. */
function lists(heads: readonly (readonly [string, readonly Row[]])[]): string[] {
  const tables = heads
    .filter(([, rows]) => rows.length > 0)
    .map(([head, rows]) =>
      textTable(
        [{ title: head }, { title: '', right: true }],
        rows.map(({ label, value, part }) => [part === true ? `  ${label}` : label, value]),
        WIDTH,
      ),
    );
  const widths = tables.map((lines) => columnsOf(lines[0]!));
  if (widths.reduce((sum, one) => sum + one, GAP * (tables.length - 1)) > WIDTH)
    return tables.flatMap((lines, i) => (i === 0 ? lines : ['', ...lines]));
  const height = Math.max(...tables.map((lines) => lines.length));
  return Array.from({ length: height }, (_, n) =>
    tables.map((lines, i) => lines[n] ?? ' '.repeat(widths[i]!)).join(' '.repeat(GAP)),
  );
}

function tightestLines({ text, places, rows }: Tightest, words: Words): string[] {
  const columns: TextColumn[] = [
    { title: words.answer.ware },
    ...places.map((place) => ({ title: place.replace(/,? (?=\S+$)/, '\n'), right: true })),
    { title: words.answer.off, right: true },
  ];
  return [
    ...wrapText(text, WIDTH),
    ...textTable(
      columns,
      rows.map(({ name, counts, off }) => [name, ...counts, off]),
      WIDTH,
    ),
  ];
}

/** Breakage sheets: a quarter of a year of strokes by ware and week, what to expect, and when to tell the buyer. */
import { english } from '../../tell/words.js';
import { lossesOver } from './facts.js';
import type { StockLine } from '../size/answer.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { cardOf, list, para, type Card, type CardDesk } from './card.js';

const WEEKS = 13;
const DAYS_A_WEEK = 7;
const ROWS_A_SHEET = 10;
/** So few rows may be tall. */
const FEW_ROWS = 7;
/** From so many a week on they are shown per week, below as one in so many weeks. */
const OFTEN = 2 / 3;
/** Fewer than one in so many weeks is shown as rarely. */
const RARELY_WEEKS = 520;

export function breakageCards(desk: CardDesk): readonly Card[] {
  const { answer, formats } = desk;
  const say = english.cards.breakage;
  const sheets = Math.max(1, Math.ceil(answer.stock.length / ROWS_A_SHEET));
  return Array.from({ length: sheets }, (_, index) => {
    const lines = answer.stock.slice(index * ROWS_A_SHEET, (index + 1) * ROWS_A_SHEET);
    const title =
      sheets === 1
        ? say.title
        : `${say.title}, ${say.part(formats.count(index + 1), formats.count(sheets))}`;
    const body = `${para(say.how, 'card-strong')}
${tally(desk, lines)}
${list([...whenToTell(desk, lines), say.more, say.chipped, say.broken])}
${para(say.assumed)}`;
    return cardOf(desk, sheets === 1 ? 'breakage' : `breakage-${index + 1}`, title, body);
  });
}

function tally(desk: CardDesk, lines: readonly StockLine[]): string {
  const { formats, name, scenario, answer } = desk;
  const say = english.cards.breakage;
  const weeks = Array.from(
    { length: WEEKS },
    (_, index) =>
      `<th scope="col"><span class="card-week">${escapeHtml(say.headings.weeks)} </span>${escapeHtml(formats.count(index + 1))}</th>`,
  );
  const rows = lines.map(({ ware, pieces }) => {
    const { broken, gone } = lossesOver(scenario, answer, ware, DAYS_A_WEEK);
    return `<tr><th scope="row"><bdi>${escapeHtml(name(ware))}</bdi></th><td>${escapeHtml(expected(desk, broken + gone))}</td><td>${escapeHtml(mark(desk, ware, pieces))}</td>${'<td></td>'.repeat(WEEKS)}</tr>`;
  });
  return `<table class="card-table card-tally${lines.length > FEW_ROWS ? '' : ' card-few'}"><thead><tr>${[say.headings.ware, say.headings.expect, say.headings.tell].map((heading) => `<th scope="col">${escapeHtml(heading)}</th>`).join('')}${weeks.join('')}</tr></thead><tbody>${rows.join('\n')}</tbody></table>`;
}

/** Pieces lost a week on the mean, as people count them. */
function expected({ formats }: CardDesk, aWeek: number): string {
  const say = english.cards.breakage;
  if (aWeek >= OFTEN) return say.expectWeek(formats.decimal(aWeek));
  return aWeek * RARELY_WEEKS < 1
    ? say.expectNone
    : say.expectWeeks(formats.count(Math.round(1 / aWeek)));
}

/** The count below which the buyer must know: the reorder point, else the stock itself. */
function mark({ order, formats }: CardDesk, ware: string, pieces: number): string {
  const say = english.cards.breakage;
  const line = order?.lines.find((one) => one.ware === ware);
  if (line?.reorderPoint === null) return say.last;
  return say.below(formats.count(line?.reorderPoint ?? pieces));
}

function whenToTell({ order, formats }: CardDesk, lines: readonly StockLine[]): string[] {
  const say = english.cards.breakage;
  if (order == null) return [say.tellPar];
  const last = lines.some(({ ware }) =>
    order.lines.some((line) => line.ware === ware && line.reorderPoint === null),
  );
  return [say.tellReorder(formats.count(order.reviewDays)), ...(last ? [say.cannot] : [])];
}

/** The order as a printable page: the sheet, the pictures and a reorder card for each ware. */
import { reorderCard } from '../../ordering/reorder-card.js';
import type { OrderStudy } from './study.js';
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { letterStyle } from '../../tell/html-style.js';
import { orderParts } from './parts.js';
import { english } from '../../tell/words.js';

/** @param pictures SVG elements with the words that stand over them, as `renderSvg` and the drawings give them */
export function orderPage(
  study: OrderStudy,
  context: ReportContext,
  pictures: readonly { readonly title: string; readonly svg: string }[],
): string {
  const { sheet } = study;
  const words = context.words ?? english;
  const say = words.order;
  const parts = orderParts(study, context);
  const { heading } = parts;
  const cards = sheet.lines.map((line) => reorderCard(line, sheet));
  return `<!doctype html>
<html lang="${escapeHtml(words.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(heading)}</title>
<style>${letterStyle(sheet.title, words)}
.wide{overflow-x:auto}.card{break-inside:avoid;border:1px solid currentColor;border-radius:6px;padding:.6rem 1rem;margin:1rem 0}.card dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem}.card dd{margin:0}svg{max-width:100%;height:auto}
@page{size:landscape}@media print{.wide{overflow:visible}.wide table{font-size:8pt}}</style>
</head>
<body>
<main>
<h1>${escapeHtml(heading)}</h1>
<p>${escapeHtml(parts.sentence)}</p>
${table(say.head, parts.rows, parts.totals)}
${paragraphs([say.notes, ...parts.consignments])}
${listUnder(say.warnings, parts.warnings)}
${listUnder(say.next, parts.nextSteps)}
${listUnder(say.suppliers, parts.suppliers)}
${tableUnder(say.takeaway, say.takeawayHead, parts.takeaway)}
${listUnder(say.saucers, parts.saucers)}
${tableUnder(say.storage, say.storageHead, parts.stored)}
${paragraphs(parts.storing)}
${pictures.map(({ title, svg }) => `<h2>${escapeHtml(title)}</h2>\n${svg}`).join('\n')}
<h2>${escapeHtml(say.cards)}</h2>
${cards.map((card) => `<section class="card"><h3>${escapeHtml(card.title)}</h3><p>${escapeHtml(card.rule)}</p><dl>${card.rows.map(({ label, text }) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(text)}</dd>`).join('')}</dl></section>`).join('\n')}
${list(parts.cautions)}
</main>
</body>
</html>
`;
}

type Rows = readonly (readonly string[])[];

const paragraphs = (lines: readonly string[]): string =>
  lines.map((line) => `<p>${escapeHtml(line)}</p>`).join('\n');

const list = (lines: readonly string[]): string =>
  `<ul>${lines.map((line) => `<li>${escapeHtml(line)}</li>`).join('\n')}</ul>`;

const listUnder = (title: string, lines: readonly string[]): string =>
  lines.length === 0 ? '' : `<h2>${escapeHtml(title)}</h2>\n${list(lines)}`;

const row = ([first, ...rest]: readonly string[]): string =>
  `<tr><th scope="row">${escapeHtml(first!)}</th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`;

const table = (
  head: readonly string[],
  rows: Rows,
  totals?: readonly string[],
): string => `<div class="wide"><table>
<thead><tr>${head.map((title) => `<th scope="col">${escapeHtml(title.replace('\n', ' '))}</th>`).join('')}</tr></thead>
<tbody>${rows.map(row).join('\n')}</tbody>
${totals === undefined ? '' : `<tfoot>${row(totals)}</tfoot>`}
</table></div>`;

const tableUnder = (title: string, head: readonly string[], rows: Rows): string =>
  rows.length === 0 ? '' : `<h2>${escapeHtml(title)}</h2>\n${table(head, rows)}`;

/** The order as a printable page: the sheet, the pictures and a reorder card for each ware. */
import { formatMoney } from '../ordering/money.js';
import { repeatWords } from '../ordering/order-sheet-csv.js';
import { nextStepSentence } from '../ordering/landed.js';
import { reorderCard } from '../ordering/reorder-card.js';
import type { OrderStudy } from '../study/order-study.js';
import type { ReportContext } from './context.js';
import { escapeHtml } from './escape-html.js';
import { formatsFor } from './format.js';
import { letterStyle } from './html-style.js';
import { english } from './words.js';

/** @param pictures SVG elements with the words that stand over them, as `renderSvg` and the drawings give them */
export function orderPage(study: OrderStudy, context: ReportContext, pictures: readonly { readonly title: string; readonly svg: string }[]): string {
  const { sheet, unquoted, storage } = study;
  const words = context.words ?? english;
  const say = words.order;
  const formats = formatsFor(context);
  const money = (minor: number | null): string => (minor === null ? say.none : formatMoney(minor, sheet.currency, sheet.locale ?? undefined));
  const heading = say.heading(sheet.title, sheet.date);
  const cells = sheet.lines.map((line) => [
    line.name,
    formats.count(line.par),
    formats.count(line.hold),
    formats.count(unquoted ? line.needed : line.pieces),
    line.cartons === null ? say.none : `${line.cartons} × ${line.cartonPieces}`,
    line.supplierName ?? say.none,
    repeatWords(line.repeat) || say.none,
    money(line.goodsMinor),
    money(line.freightMinor),
    money(line.taxMinor),
    money(line.landedPerPieceMinor),
    line.reorderPoint === null ? say.none : formats.count(line.reorderPoint),
    line.nextOrder?.expected ?? say.none,
  ]);
  const nameOf = (id: string): string => context.ware.find((ware) => ware.id === id)?.name ?? id;
  const consignments = sheet.consignments.map((one) =>
    say.consignment(one.name, one.cartons, one.massG === null ? '' : ` of ${formats.decimal(one.massG / 1000)} kg`, money(one.freightMinor), one.freightStep, money(one.totalMinor), one.delivery),
  );
  const nextSteps = sheet.consignments.flatMap((one) => one.nextSteps.map((step) => nextStepSentence(step, money)));
  const suppliers = sheet.suppliers.map((one) =>
    one.alone === null ? say.missing(one.name, one.missing.map(nameOf).join(', ')) : say.alone(one.name, money(one.alone.openingMinor), money(one.alone.totalMinor)),
  );
  const takeaway = sheet.takeaway.map((line) => [line.name, formats.decimal(line.aWeek), formats.decimal(line.asFallBackAWeek), formats.count(line.sleevesAWeek), money(line.minorAWeek)]);
  const stored = (storage?.lines ?? []).map((line) => [line.name, formats.count(line.onTop), formats.count(line.inReserve), line.trigger === null ? say.none : formats.count(line.trigger)]);
  const room = storage === null ? [] : [...storage.homeless.map(({ ware, pieces }) => say.homeless(nameOf(ware), pieces)), ...storage.remedies];
  const warnings = [...sheet.warnings, ...(storage?.warnings ?? [])].map(({ message }) => message);
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
<div class="wide"><table>
<thead><tr>${say.head.map((title) => `<th scope="col">${escapeHtml(title.replace('\n', ' '))}</th>`).join('')}</tr></thead>
<tbody>
${cells.map(([first, ...rest]) => `<tr><th scope="row">${escapeHtml(first!)}</th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`).join('\n')}
</tbody>
<tfoot><tr><th scope="row">${escapeHtml(say.total)}</th><td></td><td></td><td>${formats.count(unquoted ? sheet.lines.reduce((sum, { needed }) => sum + needed, 0) : sheet.totals.pieces)}</td><td>${formats.count(sheet.totals.cartons)}</td><td></td><td></td><td>${escapeHtml(money(sheet.totals.goodsMinor))}</td><td>${escapeHtml(money(sheet.totals.freightMinor))}</td><td>${escapeHtml(money(sheet.totals.taxMinor))}</td><td></td><td></td><td></td></tr></tfoot>
</table></div>
<p>${escapeHtml(say.notes)}</p>
${unquoted ? '' : consignments.map((line) => `<p>${escapeHtml(line)}</p>`).join('\n')}
${listUnder(say.warnings, warnings)}
${listUnder(say.next, nextSteps)}
${listUnder(say.suppliers, suppliers)}
${tableUnder(say.takeaway, say.takeawayHead, takeaway)}
${tableUnder(say.storage, say.storageHead, stored)}
${room.map((line) => `<p>${escapeHtml(line)}</p>`).join('\n')}
${pictures.map(({ title, svg }) => `<h2>${escapeHtml(title)}</h2>\n${svg}`).join('\n')}
<h2>${escapeHtml(say.cards)}</h2>
${cards.map((card) => `<section class="card"><h3>${escapeHtml(card.title)}</h3><p>${escapeHtml(card.rule)}</p><dl>${card.rows.map(({ label, text }) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(text)}</dd>`).join('')}</dl></section>`).join('\n')}
<ul>
${sheet.cautions.map(({ text, defersTo }) => `<li>${escapeHtml(text)} ${escapeHtml(`${words.cautions.defers} ${defersTo}.`)}</li>`).join('\n')}
</ul>
</main>
</body>
</html>
`;
}

const listUnder = (title: string, lines: readonly string[]): string =>
  lines.length === 0 ? '' : `<h2>${escapeHtml(title)}</h2>\n<ul>${lines.map((line) => `<li>${escapeHtml(line)}</li>`).join('')}</ul>`;

const tableUnder = (title: string, head: readonly string[], rows: readonly (readonly string[])[]): string =>
  rows.length === 0
    ? ''
    : `<h2>${escapeHtml(title)}</h2>
<div class="wide"><table>
<thead><tr>${head.map((name) => `<th scope="col">${escapeHtml(name)}</th>`).join('')}</tr></thead>
<tbody>${rows.map(([first, ...rest]) => `<tr><th scope="row">${escapeHtml(first!)}</th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`).join('\n')}</tbody>
</table></div>`;

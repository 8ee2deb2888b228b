/**
 * The report as one HTML file: a letter. The sentence first, then the order, then what supports it,
 * each picture beside its words; inputs, cautions and method after that. Nothing is fetched and nothing
 * runs: the content security policy forbids both.
 */
import type { Answer } from '../study/answer.js';
import { answerFacts, type AnswerFacts, type Row } from './answer-facts.js';
import type { Caution } from './cautions.js';
import { tableText, type ChartTable } from './charts/chart-table.js';
import { cleanText, shorten } from './clean-text.js';
import type { ReportContext, ReportInput } from './context.js';
import { escapeHtml } from './escape-html.js';
import { formatsFor, type Formats } from './format.js';
import { inputsSection } from './html-inputs.js';
import { cell, CELL_LENGTH, column, rowHead, scrolled } from './html-parts.js';
import { letterStyle } from './html-style.js';
import { english, type Words } from './words.js';

export interface ReportChart {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** As `renderSvg` gives it. */
  readonly svg: string;
  readonly table: ChartTable;
  /** Shown on a screen, left out of print. */
  readonly screenOnly?: boolean;
}

export interface ReportParts {
  /** Further findings, each list under its heading. */
  readonly findings?: readonly { readonly title: string; readonly items: readonly string[] }[];
  readonly answer: Answer;
  readonly context: ReportContext;
  readonly charts: readonly ReportChart[];
  readonly inputs: readonly ReportInput[];
  readonly cautions: readonly Caution[];
  readonly version: string;
}

/**
 * @returns a whole HTML document, the same bytes for the same parts
 * @throws Error if a picture holds anything but shapes and text
 */
export function reportHtml({ answer, context, charts, inputs, cautions, version, findings = [] }: ReportParts): string {
  const words = context.words ?? english;
  const formats = formatsFor(context);
  const say = words.letter;
  const facts = answerFacts(answer, context);
  const name = shorten(cleanText(answer.scenario), 120);
  return `<!doctype html>
<html lang="${escapeHtml(words.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(say.heading(name))}</title>
<style>${letterStyle(name, words)}</style>
</head>
<body>
<main>
<h1>${say.heading('\0').split('\0').map(escapeHtml).join(`<bdi>${escapeHtml(name)}</bdi>`)}</h1>
<p class="lead">${escapeHtml(facts.sentence)}</p>
${orderTable(facts, answer.rushLevel !== undefined, words)}
${words.answer.notes.map((note) => `<p class="small">${escapeHtml(note)}</p>`).join('\n')}
${beforeYouBuy(facts, words)}
<h2>${escapeHtml(say.rushHead)}</h2>
<div class="pair">
${facts.stock.length === 0 ? '' : rowsTable(words.answer.stockHead, facts.stock)}
${rowsTable(say.busyCaption, facts.busy)}
${rowsTable(say.dayCaption, facts.day)}
${loopTable(answer, formats, words)}
</div>
${tightestTable(facts, words)}
${charts.length === 0 ? '' : `<h2>${escapeHtml(say.picturesHead)}</h2>`}
<div class="pictures">
${charts.map((chart) => picture(chart, formats, words)).join('\n')}
</div>
${findings.filter(({ items }) => items.length > 0).map(({ title, items }) => `<h2>${escapeHtml(title)}</h2>\n<ul>${items.map((item) => `<li>${escapeHtml(cleanText(item))}</li>`).join('')}</ul>`).join('\n')}
${cautions.length === 0 ? '' : `<h2>${escapeHtml(say.cautionsHead)}</h2>\n<dl>\n${cautions.map((caution) => cautionEntry(caution, words)).join('\n')}\n</dl>`}
${inputs.length === 0 ? '' : inputsSection(inputs, formats, words)}
<h2>${escapeHtml(say.methodHead)}</h2>
${(answer.certified === null && answer.rushLevel === undefined ? [say.method[0]!, say.methodListed] : say.method).map((text) => `<p>${escapeHtml(text)}</p>`).join('\n')}
<p>${escapeHtml(facts.days)}</p>
</main>
<footer>
<p>${escapeHtml(say.informs)}</p>
<p class="small">${escapeHtml(say.colophon(version, shorten(cleanText(answer.seed), 80)))}</p>
</footer>
</body>
</html>
`;
}

function orderTable({ order }: AnswerFacts, given: boolean, words: Words): string {
  const say = words.answer;
  const heads = [say.ware, say.piecesHead, say.unitCost, say.cost, `${say.piecesHead} ${say.perSeat}`, say.rule, say.alone, say.interval];
  const body = order.map(
    (row) =>
      `<tr class="${row.kind}">${rowHead(row.name)}<td class="pieces">${escapeHtml(row.pieces)}</td>${[row.unitCost, row.cost, row.perSeat, row.rule, row.alone, row.interval].map(cell).join('')}</tr>`,
  );
  const caption = given ? words.letter.givenCaption : words.letter.orderCaption;
  return scrolled(caption, `<table><caption>${escapeHtml(caption)}</caption><thead><tr>${heads.map(column).join('')}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`);
}

function beforeYouBuy({ overloads, warnings }: AnswerFacts, words: Words): string {
  if (overloads.length + warnings.length === 0) return '';
  return `<h2>${escapeHtml(words.letter.beforeYouBuy)}</h2>
${overloads.map((text) => `<p class="alarm">${escapeHtml(text)}</p>`).join('\n')}
${warnings.length === 0 ? '' : `<ul>${warnings.map((text) => `<li>${escapeHtml(text)}</li>`).join('')}</ul>`}`;
}

function picture({ id, title, words: text, svg, table, screenOnly }: ReportChart, formats: Formats, words: Words): string {
  const head = table.columns.map(({ title: name }) => column(shorten(cleanText(name), 60))).join('');
  const rows = tableText(table, formats).map(([first, ...rest]) => `<tr>${rowHead(first ?? '')}${rest.map(cell).join('')}</tr>`);
  return `<section class="beside${screenOnly === true ? ' screen' : ''}" id="${escapeHtml(id)}">
<div>
<h3>${escapeHtml(shorten(cleanText(title), CELL_LENGTH))}</h3>
<p>${escapeHtml(shorten(cleanText(text), 700))}</p>
<details><summary>${escapeHtml(words.letter.tableBehind)}</summary>
${scrolled(table.caption, `<table><caption>${escapeHtml(shorten(cleanText(table.caption), CELL_LENGTH))}</caption><thead><tr>${head}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table>`)}
</details>
</div>
<figure>${onlyShapes(svg)}</figure>
</section>`;
}

/** Pictures are text we made; this holds the line if one ever carries more than shapes and text. */
function onlyShapes(svg: string): string {
  const tags = svg.match(/<[^>]*>/g) ?? [];
  const isPlain = (tag: string): boolean => /^<\/?(?:svg|g|path|line|rect|circle|text|tspan|defs|clipPath|linearGradient|stop)[\s>/]/.test(tag) && !/\s(?:on[a-z]+|[a-z:]*href|style)\s*=/i.test(tag.replace(/"[^"]*"/g, '""'));
  if (!svg.startsWith('<svg ') || !tags.every(isPlain)) {
    throw new Error('a picture holds more than shapes and text');
  }
  return svg;
}

function rowsTable(caption: string, rows: readonly Row[]): string {
  const body = rows.map(({ label, value, part }) => `<tr${part === true ? ' class="part"' : ''}>${rowHead(label)}${cell(value)}</tr>`);
  return `<table><caption>${escapeHtml(caption)}</caption><tbody>\n${body.join('\n')}\n</tbody></table>`;
}

function loopTable(answer: Answer, formats: Formats, words: Words): string {
  const names = new Map(answer.stock.map(({ ware, name }) => [ware, name]));
  const rows = answer.minutes.loop.map(({ ware, minutes }) => ({ label: names.get(ware) ?? ware, value: formats.minutes(minutes) }));
  return rows.length === 0 ? '' : rowsTable(words.letter.loopCaption, rows);
}

function tightestTable({ tightest }: AnswerFacts, words: Words): string {
  const say = words.answer;
  const head = [say.ware, ...tightest.places, say.off].map(column).join('');
  const body = tightest.rows.map(({ name, counts, off }) => `<tr>${rowHead(name)}${[...counts, off].map(cell).join('')}</tr>`);
  const caption = words.letter.tightestCaption;
  return `<p class="keep">${escapeHtml(tightest.text)}</p>
${scrolled(caption, `<table><caption>${escapeHtml(caption)}</caption><thead><tr>${head}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`)}`;
}

const cautionEntry = ({ title, text, defersTo }: Caution, words: Words): string =>
  `<div><dt>${escapeHtml(title)}</dt><dd>${escapeHtml(text)} <span class="small">${escapeHtml(words.cautions.defers)}: ${escapeHtml(defersTo)}.</span></dd></div>`;

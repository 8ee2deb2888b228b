/**
 * The report as one HTML file: a letter. The sentence first, then the order, then what supports it,
 * each picture beside its words; inputs, cautions and method after that. Nothing is fetched; nothing
 * runs but, in a live page, the page's own script: the content security policy holds it to that.
 */
import type { Answer } from '../questions/size/answer.js';
import { answerFacts, type AnswerFacts, type Row } from '../questions/size/facts.js';
import { inputsTexts } from '../questions/size/tell-inputs.js';
import { sizeWords } from '../questions/size/words.js';
import type { Caution } from '../tell/cautions.js';
import { cleanText, shorten } from '../tell/clean-text.js';
import type { ReportContext, ReportInput } from '../tell/context.js';
import { escapeHtml } from '../tell/escape-html.js';
import type { FindingList } from '../tell/finding-list.js';
import { formatsFor, type Formats } from '../tell/format.js';
import { allowingTable } from './allowing.js';
import { cautionsSection, findingList } from './folded.js';
import { basisLine, inputsSection } from './inputs.js';
import { island, liveScripts, policyOf, type LivePage } from './live.js';
import { NAME_LENGTH } from '../tell/section-parts.js';
import { cell, column, rowHead, scrolled } from '../tell/html-parts.js';
import { pageStyle } from './page-style.js';
import { cardStyle } from '../questions/cards/card-style.js';
import { sectionStyle } from '../tell/section-style.js';
import { picture, type ReportChart } from '../tell/html-picture.js';
import { letterStyle } from '../tell/html-style.js';
import { english } from '../tell/words.js';

export interface ReportParts {
  /** Further findings, each list under its heading. */
  readonly findings?: readonly FindingList[];
  readonly answer: Answer;
  readonly context: ReportContext;
  readonly charts: readonly ReportChart[];
  /** The morning that makes the case, for the first view. */
  readonly tight?: ReportChart;
  readonly inputs: readonly ReportInput[];
  readonly cautions: readonly Caution[];
  readonly version: string;
  /** What it was made from, where it is as it was made. */
  readonly made?: string | undefined;
  /** How the stock would have done on recorded days, as HTML; stands as it is when the answer changes. */
  readonly recorded?: string;
}

/** The pieces that a letter is put together from; the page fills each anew when the answer changes. */
export const LETTER_PARTS = [
  'heading',
  'figures',
  'lead',
  'measured',
  'tight',
  'order',
  'mind',
  'rush',
  'pictures',
  'findings',
  'cautions',
  'inputs',
  'method',
  'colophon',
] as const;
export type LetterPart = (typeof LETTER_PARTS)[number];

/**
 * @returns the letter's parts as HTML, the same bytes for the same input
 * @throws Error if a picture holds anything but shapes and text
 */
export function letterParts({
  answer,
  context,
  charts,
  tight,
  inputs,
  cautions,
  version,
  made,
  findings = [],
}: ReportParts): Record<LetterPart, string> {
  const formats = formatsFor(context);
  const say = english.letter;
  const facts = answerFacts(answer, context);
  const name = shorten(cleanText(answer.scenario), 120);
  const { allowingForInputs: found } = answer;
  const allowing = found && inputsTexts(found, answer, context);
  return {
    heading: say
      .heading('\0')
      .split('\0')
      .map(escapeHtml)
      .join(`<bdi>${escapeHtml(name)}</bdi>`),
    figures: figures(answer, formats),
    lead: escapeHtml(facts.sentence),
    measured: `<p class="small">${[escapeHtml(facts.measured), basisLine(inputs, formats)].filter((text) => text !== '').join(' ')}</p>${allowing === undefined ? '' : `<p>${escapeHtml(allowing.sentence)}</p>`}`,
    tight: tight === undefined ? '' : picture(tight, formats),
    order: `<h2>${escapeHtml(answer.rushLevel === undefined ? sizeWords.orderCaption : sizeWords.givenCaption)}</h2>
${orderTable(facts, answer.rushLevel !== undefined)}
${sizeWords.notes.map((note) => `<p class="small">${escapeHtml(note)}</p>`).join('\n')}${allowing === undefined ? '' : `\n${allowingTable(allowing)}`}`,
    mind: beforeYouBuy(facts),
    rush: `<h2>${escapeHtml(sizeWords.rushHead)}</h2>
<div class="pair">
${facts.stock.length === 0 ? '' : rowsTable(sizeWords.stockCaption, facts.stock)}
${rowsTable(sizeWords.busyCaption, facts.busy)}
${rowsTable(sizeWords.dayCaption, facts.day)}
${facts.loop.length === 0 ? '' : rowsTable(sizeWords.loopCaption, facts.loop)}
</div>
${tightestTable(facts)}`,
    pictures: `${charts.length === 0 ? '' : `<h2>${escapeHtml(say.picturesHead)}</h2>`}
<div class="pictures">
${charts.map((chart) => picture(chart, formats)).join('\n')}
</div>`,
    findings: findings.map((list) => findingList(list, formats)).join('\n'),
    cautions: cautions.length === 0 ? '' : cautionsSection(cautions),
    inputs: inputs.length === 0 ? '' : inputsSection(inputs, formats),
    method: `<h2>${escapeHtml(say.methodHead)}</h2>
${(answer.certified === null && answer.rushLevel === undefined ? [say.method[0]!, say.methodListed] : say.method).map((text) => `<p>${escapeHtml(text)}</p>`).join('\n')}
<p>${escapeHtml(facts.days)}</p>`,
    colophon: `<p>${escapeHtml(say.informs)}</p>
<p class="small">${escapeHtml(say.colophon(version, shorten(cleanText(answer.seed), 80)))}${made === undefined ? '' : ` ${escapeHtml(cleanText(made))}`}</p>`,
  };
}

/**
 * @param live makes the letter run the study again in the reader's hands; null: text and pictures alone
 * @param typefaces style sheet that carries the letter's typefaces; without it the reader's machine gives them
 * @returns a whole HTML document, the same bytes for the same parts
 * @throws Error if a picture holds anything but shapes and text
 */
export function reportHtml(
  parts: ReportParts,
  live: LivePage | null = null,
  typefaces = '',
): string {
  return letterDocument(
    shorten(cleanText(parts.answer.scenario), 120),
    letterParts(parts),
    live,
    typefaces,
    parts.recorded,
  );
}

/** The letter before there is a scenario: for people who begin in the page. */
export function blankHtml(live: LivePage, typefaces: string): string {
  const empty = Object.fromEntries(LETTER_PARTS.map((part) => [part, ''])) as Record<
    LetterPart,
    string
  >;
  return letterDocument(
    english.page.blankName,
    {
      ...empty,
      heading: escapeHtml(english.page.blankHeading),
      lead: escapeHtml(english.page.blankLead),
    },
    live,
    typefaces,
  );
}

function letterDocument(
  name: string,
  parts: Readonly<Record<LetterPart, string>>,
  live: LivePage | null,
  typefaces: string,
  recorded = '',
): string {
  const say = english.letter;
  const part = (id: LetterPart): string => `<section data-part="${id}">${parts[id]}</section>`;
  const later = (id: string): string =>
    live === null ? '' : `<section data-part="${id}"></section>`;
  return `<!doctype html>
<html lang="${escapeHtml(english.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyOf(live)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(say.heading(name))}</title>
<style>${typefaces}${letterStyle(name)}${live === null ? '' : pageStyle()}${live === null && recorded === '' ? '' : sectionStyle()}${live === null ? '' : cardStyle}</style>
</head>
<body>
${island(live, 'head')}
<main>
${island(live, 'sender')}
<h1 data-part="heading">${parts.heading}</h1>
${part('figures')}
<p class="lead" data-part="lead">${parts.lead}</p>
${part('measured')}
${live === null ? '' : asleep()}
${island(live, 'start')}
${island(live, 'status')}
${island(live, 'changed')}
<div class="view" data-group="view">
${island(live, 'boxes')}
${part('tight')}
</div>
${island(live, 'questions')}
${part('order')}
${part('mind')}
${part('rush')}
${part('pictures')}
${part('findings')}
${recorded === '' ? '' : `<section data-part="recorded">${recorded}</section>`}
${island(live, 'walk')}
${part('cautions')}
${part('inputs')}
${island(live, 'forms')}
${part('method')}
${island(live, 'cards')}
${later('cards')}
${island(live, 'files')}
</main>
<footer data-part="colophon">
${parts.colophon}
</footer>
${live === null ? '' : liveScripts(live)}
</body>
</html>
`;
}

/** The answer in large figures: pieces of each ware, and what they cost. */
function figures({ stock, cost }: Answer, formats: Formats): string {
  const items = stock.map(({ pieces, name }) => {
    const count = formats.count(pieces);
    const label = english.answer
      .pieces(count, shorten(cleanText(name), NAME_LENGTH), pieces === 1)
      .slice(count.length + 1)
      .replace(/^× /, '');
    return `<li><b>${escapeHtml(count)}</b> <bdi>${escapeHtml(label)}</bdi></li>`;
  });
  return `<ul class="figures">${items.join('')}<li class="total"><b>${escapeHtml(formats.money(cost))}</b> ${escapeHtml(english.letter.inAll)}</li></ul>`;
}

function orderTable({ order }: AnswerFacts, given: boolean): string {
  const say = sizeWords;
  const heads = [
    say.item,
    say.pieces,
    say.unitCost,
    say.cost,
    say.perSeat,
    say.rule,
    say.alone,
    say.interval,
  ];
  const body = order.map(
    (row) =>
      `<tr class="${row.kind}">${rowHead(row.name)}<td class="pieces">${escapeHtml(row.pieces)}</td>${[row.unitCost, row.cost, row.perSeat, row.rule, row.alone, row.interval].map(cell).join('')}</tr>`,
  );
  const caption = given ? say.givenCaption : say.orderCaption;
  return scrolled(
    caption,
    `<table><caption class="unseen">${escapeHtml(caption)}</caption><thead><tr>${heads.map(column).join('')}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`,
  );
}

/** Said where the letter cannot wake: without scripts, or in a browser that lacks what it takes. */
const asleep = (): string =>
  `<noscript><p class="alarm">${escapeHtml(english.page.noScript)}</p></noscript>
<p class="alarm" id="asleep" hidden>${escapeHtml(english.page.asleep)}</p>`;

function beforeYouBuy({ overloads, warnings }: AnswerFacts): string {
  if (overloads.length + warnings.length === 0) return '';
  return `<h2>${escapeHtml(sizeWords.warningsHead)}</h2>
${overloads.map((text) => `<p class="alarm">${escapeHtml(text)}</p>`).join('\n')}
${warnings.length === 0 ? '' : `<ul>${warnings.map((text) => `<li>${escapeHtml(text)}</li>`).join('')}</ul>`}`;
}

function rowsTable(caption: string, rows: readonly Row[]): string {
  const body = rows.map(
    ({ label, value, part }) =>
      `<tr${part === true ? ' class="part"' : ''}>${rowHead(label)}${cell(value)}</tr>`,
  );
  return `<table><caption>${escapeHtml(caption)}</caption><tbody>\n${body.join('\n')}\n</tbody></table>`;
}

function tightestTable({ tightest }: AnswerFacts): string {
  const say = sizeWords;
  const head = [say.item, ...tightest.places, say.off].map(column).join('');
  const body = tightest.rows.map(
    ({ name, counts, off }) => `<tr>${rowHead(name)}${[...counts, off].map(cell).join('')}</tr>`,
  );
  const caption = say.tightestCaption;
  return `<p class="keep">${escapeHtml(tightest.text)}</p>
${body.length === 0 ? '' : scrolled(caption, `<table><caption>${escapeHtml(caption)}</caption><thead><tr>${head}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`)}`;
}

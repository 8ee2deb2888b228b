/** A page of one table that sorts and filters, with what is said before and after it. Offline, one file; it needs no script to be read. */
import type { Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { letterStyle } from '../../tell/html-style.js';
import { sectionStyle } from '../../tell/section-style.js';
import { english } from '../../tell/words.js';
import { writeHtml } from '../../tell/write-html.js';
import { PAGE_SCRIPT } from './page-script.js';
import { sitesFormats } from './tell.js';
import { say } from './words.js';

export interface PageParts {
  /** `sha256-…` of a text, for the content security policy. */
  readonly hashOf: (text: string) => string;
  readonly typefaces: string;
}

export interface SortedCell {
  readonly text: string;
  /** What the column is sorted by; absent: the text. */
  readonly value?: number | null;
}

export interface SortedRow {
  readonly name: string;
  /** What is looked for by the filter, in any case. */
  readonly text: string;
  /** Whether it stays when only such rows are asked for. */
  readonly stands: boolean;
  readonly link?: { readonly to: string; readonly text: string };
  /** HTML. */
  readonly picture?: string;
  readonly cells: readonly SortedCell[];
  /** A count that opens to what it counts. */
  readonly last?: { readonly value: number; readonly details: readonly string[] };
}

export interface SortedTable {
  readonly caption: string;
  /** Label of the box that leaves rows that stand alone. */
  readonly only: string;
  /** What rows are: `sites shown`. */
  readonly shown: string;
  readonly first: string;
  /** Head of the pictures; null: there are none. */
  readonly picture: string | null;
  readonly heads: readonly string[];
  readonly rows: readonly SortedRow[];
}

const button = (text: string): string =>
  `<th scope="col"><button type="button">${escapeHtml(text)}</button></th>`;

export const sortedTable = ({
  caption,
  only,
  shown,
  first,
  picture,
  heads,
  rows,
}: SortedTable): string =>
  `<p id="controls" hidden><label>${escapeHtml(say.page.filter)} <input id="filter" type="search"></label> <label><input id="only" type="checkbox"> ${escapeHtml(only)}</label> <span class="small" role="status"><b id="shown">${rows.length}</b> ${escapeHtml(shown)}. ${escapeHtml(say.page.sort)}</span></p>
<div class="scroll" tabindex="0" role="group" aria-label="${escapeHtml(caption)}"><table id="sites"><caption>${escapeHtml(caption)}</caption><thead><tr>${button(first)}${picture === null ? '' : `<th scope="col">${escapeHtml(picture)}</th>`}${heads.map(button).join('')}</tr></thead><tbody>
${rows.map(rowHtml).join('\n')}
</tbody></table></div>`;

function rowHtml({ name, text, stands, link, picture, cells, last }: SortedRow): string {
  const details =
    last === undefined
      ? ''
      : `<td data-v="${last.value}">${last.details.length === 0 ? '0' : `<details><summary>${last.details.length}</summary><ul>${last.details.map((one) => `<li>${escapeHtml(one)}</li>`).join('')}</ul></details>`}</td>`;
  return `<tr data-text="${escapeHtml(text.toLowerCase())}" data-mind="${stands ? 1 : 0}"><th scope="row"><bdi>${escapeHtml(name)}</bdi>${link === undefined ? '' : ` <a href="${escapeHtml(encodeURIComponent(link.to))}">${escapeHtml(link.text)}</a>`}</th>${picture === undefined ? '' : `<td>${picture}</td>`}${cells.map(({ text: cell, value }) => `<td${value === undefined ? '' : ` data-v="${value ?? ''}"`}>${escapeHtml(cell)}</td>`).join('')}${details}</tr>`;
}

export interface SortedPage {
  readonly title: string;
  readonly base: string;
  readonly seed: string;
  readonly before: readonly Block[];
  /** HTML; '' where there is none. */
  readonly table: string;
  readonly after: readonly Block[];
}

export async function sortedPage(
  { title, base, seed, before, table, after }: SortedPage,
  context: ReportContext,
  { hashOf, typefaces }: PageParts,
): Promise<string> {
  const html = (blocks: readonly Block[]): Promise<string> =>
    writeHtml(blocks, {
      draw: () => Promise.resolve([]),
      formats: sitesFormats(context),
    });
  const script = table === '' ? '' : `<script>${PAGE_SCRIPT}</script>\n`;
  return `<!doctype html>
<html lang="${english.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '${hashOf(PAGE_SCRIPT)}'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<style>${typefaces}${letterStyle(base)}${sectionStyle()}${style}</style>
</head>
<body>
<main>
${await html(before)}
${table}
${await html(after)}
</main>
<footer><p>${escapeHtml(say.informs)}</p><p class="small">${escapeHtml(say.made(context.version, seed))}</p></footer>
${script}</body>
</html>
`;
}

const style = `
body{max-width:none}
#controls{max-width:none}
#controls label{margin-right:1rem}
#controls input[type=search]{font:inherit;padding:.2rem .4rem}
#sites thead button{font:inherit;color:inherit;background:none;border:0;padding:0;cursor:pointer;text-align:inherit}
#sites thead button:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
#sites th[aria-sort=ascending] button::after{content:" ↑";content:" ↑" / ""}
#sites th[aria-sort=descending] button::after{content:" ↓";content:" ↓" / ""}
#sites tbody tr:nth-child(even){background:color-mix(in srgb,var(--line) 14%,transparent)}
#sites td,#sites th{padding:.2rem .6rem}
#sites tbody th{min-width:9rem}
.scroll td.word{white-space:normal;min-width:9rem;max-width:30rem}
#sites details ul{white-space:normal;text-align:left;min-width:18rem}
.band{fill:var(--accent);opacity:.25}
.mid{fill:none;stroke:var(--accent);stroke-width:1.5}
.stock{stroke:var(--ink);stroke-width:1;fill:none}
@media print{#controls{display:none}#sites{font-size:.65rem}}
`;

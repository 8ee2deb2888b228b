/** All sites as one page: a table that sorts and filters, a small picture a site, and all that is said of them together. Offline, one file. */
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import type { Formats } from '../../tell/format.js';
import { letterStyle } from '../../tell/html-style.js';
import { sectionStyle } from '../../tell/section-style.js';
import { shortName } from '../../tell/section-parts.js';
import { english } from '../../tell/words.js';
import { writeHtml } from '../../tell/write-html.js';
import type { SitesAnswer } from './answer.js';
import type { SiteAnswer } from './site-answer.js';
import { PAGE_SCRIPT } from './page-script.js';
import { smallPicture } from './picture.js';
import {
  busiestText,
  furtherBlocks,
  intervalText,
  leadBlocks,
  levelText,
  mindOf,
  sitesFormats,
} from './tell.js';
import { say } from './words.js';

/** With more sites pictures would make the page too large to open at once. */
const MOST_PICTURES = 2000;

export interface PageParts {
  /** Names of the letters that were written beside it, by id of the site. */
  readonly letters: ReadonlyMap<string, string>;
  /** `sha256-…` of a text, for the content security policy. */
  readonly hashOf: (text: string) => string;
  readonly typefaces: string;
}

export async function sitesPage(
  answer: SitesAnswer,
  context: ReportContext,
  { letters, hashOf, typefaces }: PageParts,
): Promise<string> {
  const formats = sitesFormats(context);
  const html = (blocks: Parameters<typeof writeHtml>[0]): Promise<string> =>
    writeHtml(blocks, { draw: () => Promise.resolve([]), formats, words: english });
  const title = say.heading(
    shortName(answer.base),
    say.siteCount(answer.sites.length, formats.count(answer.sites.length)),
  );
  return `<!doctype html>
<html lang="${english.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '${hashOf(PAGE_SCRIPT)}'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<style>${typefaces}${letterStyle(answer.base, english)}${sectionStyle()}${style}</style>
</head>
<body>
<main>
${await html(leadBlocks(answer, formats))}
${sitesTable(answer, formats, letters)}
${await html(furtherBlocks(answer, formats))}
</main>
<footer><p>${escapeHtml(say.informs)}</p><p class="small">${escapeHtml(say.made(context.version, answer.seed))}</p></footer>
<script>${PAGE_SCRIPT}</script>
</body>
</html>
`;
}

interface Cell {
  readonly text: string;
  /** What the column is sorted by; absent: the text. */
  readonly value?: number | null;
}

const sum = (values: Readonly<Record<string, number>>): number =>
  Object.values(values).reduce((total, one) => total + one, 0);

function sitesTable(
  { sites, ware }: SitesAnswer,
  formats: Formats,
  letters: ReadonlyMap<string, string>,
): string {
  if (sites.length === 0) return '';
  const pictures = sites.length <= MOST_PICTURES;
  const heads = [
    say.drop,
    say.opening,
    say.seats,
    say.guests,
    ...ware.map(({ name }) => shortName(name)),
    say.pieces,
    say.add,
    say.level,
    say.interval,
    say.cost,
    say.toPay,
    say.busiest,
    say.warnings,
  ];
  const button = (text: string): string =>
    `<th scope="col"><button type="button">${escapeHtml(text)}</button></th>`;
  return `<p id="controls" hidden><label>${escapeHtml(say.page.filter)} <input id="filter" type="search"></label> <label><input id="only" type="checkbox"> ${escapeHtml(say.page.only)}</label> <span class="small" role="status"><b id="shown">${sites.length}</b> ${escapeHtml(say.page.shown)}. ${escapeHtml(say.page.sort)}</span></p>
<div class="scroll" tabindex="0" role="region" aria-label="${escapeHtml(say.caption)}"><table id="sites"><caption>${escapeHtml(say.caption)}</caption><thead><tr>${button(say.site)}${pictures ? `<th scope="col">${escapeHtml(say.page.picture)}</th>` : ''}${heads.map(button).join('')}</tr></thead><tbody>
${sites.map((site) => siteRow(site, cellsOf(site, ware, formats), mindOf(site, formats), ware, pictures, letters.get(site.id))).join('\n')}
</tbody></table></div>`;
}

const cellsOf = (site: SiteAnswer, ware: SitesAnswer['ware'], formats: Formats): Cell[] => [
  { text: site.drop },
  { text: site.opening ?? '' },
  {
    text: site.seats === null ? say.unlimited : formats.count(site.seats),
    value: site.seats,
  },
  { text: formats.count(site.guestsAnHour), value: site.guestsAnHour },
  ...ware.map(({ id }) => ({
    text: formats.count(site.pieces[id] ?? 0),
    value: site.pieces[id] ?? 0,
  })),
  { text: formats.count(sum(site.pieces)), value: sum(site.pieces) },
  { text: formats.count(sum(site.add)), value: sum(site.add) },
  { text: levelText(site, formats), value: site.certified?.level ?? null },
  { text: intervalText(site, formats), value: site.certified?.low ?? null },
  { text: formats.money(site.cost), value: site.cost },
  { text: formats.money(site.spend), value: site.spend },
  { text: busiestText(site, formats), value: site.busiest?.share ?? null },
];

function siteRow(
  site: SiteAnswer,
  cells: readonly Cell[],
  mind: readonly string[],
  ware: SitesAnswer['ware'],
  pictures: boolean,
  letter: string | undefined,
): string {
  const name = escapeHtml(shortName(site.name));
  const course = ware.find(({ id }) => id === site.course?.ware)?.name ?? '';
  const minds =
    mind.length === 0
      ? '0'
      : `<details><summary>${mind.length}</summary><ul>${mind.map((text) => `<li>${escapeHtml(text)}</li>`).join('')}</ul></details>`;
  return `<tr data-text="${escapeHtml(`${site.id} ${site.name} ${site.drop}`.toLowerCase())}" data-mind="${mind.length}"><th scope="row"><bdi>${name}</bdi>${letter === undefined ? '' : ` <a href="${escapeHtml(encodeURIComponent(letter))}">${escapeHtml(say.page.letter)}</a>`}</th>${pictures ? `<td>${smallPicture(site, escapeHtml(say.page.course(shortName(course))))}</td>` : ''}${cells.map(({ text, value }) => `<td${value === undefined ? '' : ` data-v="${value ?? ''}"`}>${escapeHtml(text)}</td>`).join('')}<td data-v="${mind.length}">${minds}</td></tr>`;
}

const style = `
body{max-width:none}
#controls{max-width:none}
#controls label{margin-right:1rem}
#controls input[type=search]{font:inherit;padding:.2rem .4rem}
#sites thead button{font:inherit;color:inherit;background:none;border:0;padding:0;cursor:pointer;text-align:inherit}
#sites thead button:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
#sites th[aria-sort=ascending] button::after{content:" ↑"}
#sites th[aria-sort=descending] button::after{content:" ↓"}
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

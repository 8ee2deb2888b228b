/** A picture of the letter beside its sentence, with the table of its data folded under it. */
import { tableText, type ChartTable } from './charts/chart-table.js';
import { cleanText, shorten } from './clean-text.js';
import { escapeHtml } from './escape-html.js';
import type { Formats } from './format.js';
import { cell, CELL_LENGTH, column, rowHead, scrolled } from './html-parts.js';
import { english } from './words.js';

export interface ReportChart {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** As `renderSvg` gives it. */
  readonly svg: string;
  readonly table: ChartTable;
  /** The whole range, shown in place of `svg` while its box is ticked. */
  readonly whole?: { readonly svg: string; readonly label: string };
  /** Shown in place of `svg` on a narrow screen. */
  readonly narrow?: string;
}

/** @throws Error if the picture holds anything but shapes and text */
export function picture(
  { id, title, words: text, svg, table, whole, narrow }: ReportChart,
  formats: Formats,
): string {
  const head = table.columns
    .map(({ title: name }) => column(shorten(cleanText(name), 60)))
    .join('');
  const rows = tableText(table, formats).map(
    ([first, ...rest]) => `<tr>${rowHead(first ?? '')}${rest.map(cell).join('')}</tr>`,
  );
  return `<section class="beside" id="${escapeHtml(id)}">
<div>
<h3>${escapeHtml(shorten(cleanText(title), CELL_LENGTH))}</h3>
<p>${escapeHtml(shorten(cleanText(text), 700))}</p>
<details><summary>${escapeHtml(english.letter.tableBehind)}</summary>
${scrolled(table.caption, `<table><caption>${escapeHtml(shorten(cleanText(table.caption), CELL_LENGTH))}</caption><thead><tr>${head}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table>`)}
</details>${
    whole === undefined
      ? ''
      : `
<label class="range"><input type="checkbox" /> ${escapeHtml(whole.label)}</label>`
  }
</div>
<figure>${onlyShapes(svg)}${whole === undefined ? '' : `<div class="whole">${onlyShapes(whole.svg)}</div>`}${narrow === undefined ? '' : `<div class="narrow">${onlyShapes(narrow)}</div>`}</figure>
</section>`;
}

/** Pictures are text we made; this holds the line if one ever carries more than shapes and text. */
export function onlyShapes(svg: string): string {
  const tags = svg.match(/<[^>]*>/g) ?? [];
  const isPlain = (tag: string): boolean =>
    /^<\/?(?:svg|g|path|line|rect|circle|text|tspan|title|desc|defs|clipPath|linearGradient|stop)[\s>/]/.test(
      tag,
    ) && !/\s(?:on[a-z]+|[a-z:]*href|style)\s*=/i.test(tag.replace(/"[^"]*"/g, '""'));
  if (!svg.startsWith('<svg ') || !tags.every(isPlain)) {
    throw new Error('a picture holds more than shapes and text');
  }
  return svg;
}

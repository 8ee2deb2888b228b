/** The stock that allows for inputs that are not known exactly, beside the plain one: a table of the letter, with its method. */
import type { InputsTexts } from '../questions/size/tell-inputs.js';
import { escapeHtml } from '../tell/escape-html.js';
import { cell, column, rowHead, scrolled } from '../tell/html-parts.js';

export function allowingTable({ caption, columns, rows, method }: InputsTexts): string {
  const body = rows.map(
    ([name, ...cells]) => `<tr>${rowHead(name!)}${cells.map(cell).join('')}</tr>`,
  );
  return `${scrolled(
    caption,
    `<table><caption>${escapeHtml(caption)}</caption><thead><tr>${columns.map(column).join('')}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`,
  )}
<p class="small">${escapeHtml(method)}</p>`;
}

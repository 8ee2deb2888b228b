/** Small pieces of HTML that sections of the letter share. All text that goes in comes out escaped. */
import { cleanText, shorten } from './clean-text.js';
import { escapeHtml } from './escape-html.js';

/** Longest text of a cell; names may be of any length. */
export const CELL_LENGTH = 200;

/** A table that scrolls by itself on a narrow screen; reached by keyboard, so that it can be scrolled. */
export const scrolled = (label: string, table: string): string =>
  `<div class="scroll" role="group" tabindex="0" aria-label="${escapeHtml(label)}">${table}</div>`;

export const column = (title: string): string =>
  `<th scope="col">${escapeHtml(title.replaceAll('\n', ' '))}</th>`;

export const cell = (text: string): string =>
  `<td>${escapeHtml(shorten(cleanText(text), CELL_LENGTH))}</td>`;

export const rowHead = (text: string): string =>
  `<th scope="row"><bdi>${escapeHtml(shorten(cleanText(text), CELL_LENGTH))}</bdi></th>`;

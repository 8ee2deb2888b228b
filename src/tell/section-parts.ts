/** What sections of the letter are put together from. All text that goes in comes out escaped, in one line and short. */
import { cleanText, shorten } from './clean-text.js';
import { escapeHtml } from './escape-html.js';
import type { Formats } from './format.js';
import { cell, CELL_LENGTH, column, rowHead, scrolled } from './html-parts.js';
import { picture, type ReportChart } from './html-picture.js';

/** Longest paragraph: names within it may be of any length. */
const PARAGRAPH_LENGTH = 1200;
/** Longest name within a sentence or at the head of a row. */
export const NAME_LENGTH = 40;

/** A sum keeps its sign on the same line: between “−” and “€” a line may break. */
const line = (text: string, most: number): string =>
  escapeHtml(shorten(cleanText(text), most)).replace(
    /[+−]\p{Sc}[\d.,]*\d/gu,
    '<span class="sum">$&</span>',
  );

/** A name from the scenario, short enough to stand within a sentence. */
export const shortName = (text: string): string => shorten(cleanText(text), NAME_LENGTH);

export const heading = (text: string): string => `<h2>${line(text, CELL_LENGTH)}</h2>`;

export const subheading = (text: string): string =>
  `<h3 class="part">${line(text, CELL_LENGTH)}</h3>`;

/** @param kind `lead` is the answer itself, `alarm` stands out, `small` steps back */
export const paragraph = (text: string, kind?: 'lead' | 'alarm' | 'small'): string =>
  text === ''
    ? ''
    : `<p${kind === undefined ? '' : ` class="${kind}"`}>${line(text, PARAGRAPH_LENGTH)}</p>`;

export const list = (items: readonly string[]): string =>
  items.length === 0
    ? ''
    : `<ul>${items.map((item) => `<li>${line(item, PARAGRAPH_LENGTH)}</li>`).join('\n')}</ul>`;

export const listUnder = (title: string, items: readonly string[]): string =>
  items.length === 0 ? '' : joined([subheading(title), list(items)]);

export interface SectionTable {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row is its head. */
  readonly rows: readonly (readonly string[])[];
  readonly totals?: readonly string[];
  /** Columns of words rather than figures, from 0; the first is one anyway. */
  readonly words?: readonly number[];
  /** Sentences rather than figures: cells wrap. */
  readonly wordy?: boolean;
}

/** Nothing where there are no rows. */
export function table({ caption, head, rows, totals, wordy, words = [] }: SectionTable): string {
  if (rows.length === 0) return '';
  const toTheLeft = (html: string, at: number): string =>
    words.includes(at) ? html.replace(/^<t[dh]/, '$& class="word"') : html;
  const row = ([first, ...rest]: readonly string[], kind = ''): string =>
    `<tr${kind}>${rowHead(first ?? '')}${rest.map((text, at) => toTheLeft(cell(text), at + 1)).join('')}</tr>`;
  const body = [
    ...rows.map((cells) => row(cells)),
    ...(totals === undefined ? [] : [row(totals, ' class="total"')]),
  ];
  const short = shorten(cleanText(caption), CELL_LENGTH);
  return scrolled(
    short,
    `<table class="${wordy === true ? 'words' : 'section'}"><caption>${escapeHtml(short)}</caption><thead><tr>${head.map((title, at) => toTheLeft(column(shorten(cleanText(title), CELL_LENGTH)), at)).join('')}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table>`,
  );
}

/** Folded away on a screen; left out of print. Nothing where there is nothing to fold. */
export const folded = (title: string, content: string): string =>
  content === ''
    ? ''
    : `<details class="part"><summary>${line(title, CELL_LENGTH)}</summary>\n${content}\n</details>`;

/** Pictures beside their sentences. @throws Error if one holds anything but shapes and text */
export const pictureList = (pictures: readonly ReportChart[], formats: Formats): string =>
  pictures.length === 0
    ? ''
    : `<div class="pictures">\n${pictures.map((one) => picture(one, formats)).join('\n')}\n</div>`;

/** Drawings next to one another, each under its sentence. @throws Error as `pictureList` does */
export const drawingList = (pictures: readonly ReportChart[], formats: Formats): string =>
  pictures.length === 0
    ? ''
    : `<div class="drawings">\n${pictures.map((one) => picture(one, formats)).join('\n')}\n</div>`;

export const joined = (parts: readonly string[]): string =>
  parts.filter((part) => part !== '').join('\n');

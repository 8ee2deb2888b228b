/** What a card is, what it is made from, and the pieces of HTML that cards share. All text that goes in comes out escaped. */
import type { OrderLine, OrderSheet } from '../../ordering/order-sheet.js';
import type { StorageLayout } from '../../ordering/storage.js';
import type { Answer } from '../size/answer.js';
import type { SlowerClearing } from './facts.js';
import type { Scenario } from '../../scenario/scenario.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { english } from '../../tell/words.js';

export interface Card {
  /** Also the id of its element; unlike for every card of a list. */
  readonly id: string;
  /** Plain text, not escaped. */
  readonly title: string;
  /** One `article` element, escaped. */
  readonly html: string;
}

/** Reorder points; an order sheet has them. */
export type ReorderFacts = Pick<OrderSheet, 'reviewDays'> & {
  readonly lines: readonly Pick<OrderLine, 'ware' | 'reorderPoint'>[];
};

export interface CardInput {
  readonly scenario: Scenario;
  /** The answer of that scenario. */
  readonly answer: Answer;
  /** Its `units` are those of the cards. */
  readonly context: ReportContext;
  /** From `slowerClearing`; absent or null: the card does not say what slipping costs. */
  readonly slower?: SlowerClearing | null;
  /** From `storageOf`, or the order; absent or null: the card leaves lines to be filled in. */
  readonly storage?: StorageLayout | null;
  /** From the order, where the scenario has suppliers; absent or null: the stock itself is the mark. */
  readonly order?: ReorderFacts | null;
}

/** A card's input with what every card needs of it at hand. */
export interface CardDesk extends CardInput {
  readonly formats: Formats;
  /** Name of a ware, clean and short. */
  name(ware: string): string;
}

const HOUSE_LENGTH = 52;
const NAME_LENGTH = 30;

export function deskOf(input: CardInput): CardDesk {
  const { context, answer } = input;
  const formats = formatsFor(context);
  const names = new Map(answer.stock.map(({ ware, name }) => [ware, short(name)]));
  return { ...input, formats, name: (ware) => names.get(ware) ?? short(ware) };
}

/** Any text of a file, fit for a card: clean, and cut. */
export const short = (text: string, most = NAME_LENGTH): string => shorten(cleanText(text), most);

/** The frame of every card: house and date above, where the figures come from below. */
export function cardOf(desk: CardDesk, id: string, title: string, body: string, kind = ''): Card {
  const { context, answer } = desk;
  const say = english.cards;
  const html = `<article class="card${kind === '' ? '' : ` ${kind}`}" id="card-${id}" aria-labelledby="card-${id}-title">
<header><p><bdi>${escapeHtml(short(answer.scenario, HOUSE_LENGTH))}</bdi></p>${blank(say.date, 'card-date')}</header>
<h3 id="card-${id}-title">${escapeHtml(title)}</h3>
${body}
<footer><p>${escapeHtml(say.foot(short(context.version)))}</p></footer>
</article>`;
  return { id: `card-${id}`, title, html };
}

/** A paragraph; no text, no paragraph. */
export const para = (text: string, kind = ''): string =>
  text === '' ? '' : `<p${kind === '' ? '' : ` class="${kind}"`}>${escapeHtml(text)}</p>`;

export const head = (text: string): string => `<h4>${escapeHtml(text)}</h4>`;

/** A list, in order or not; texts that are empty are left out. */
export function list(items: readonly string[], ordered = false): string {
  const tag = ordered ? 'ol' : 'ul';
  const kept = items.filter((item) => item !== '');
  return kept.length === 0
    ? ''
    : `<${tag}>${kept.map((item) => `<li>${escapeHtml(item)}</li>`).join('')}</${tag}>`;
}

/** A label and a line to write on. */
export const blank = (label: string, kind = ''): string =>
  `<p class="card-blank${kind === '' ? '' : ` ${kind}`}"><span>${escapeHtml(label)}</span><span class="card-line"></span></p>`;

/** Names as one list, the first few of them. */
export function fewNames(
  names: readonly string[],
  desk: Pick<CardDesk, 'formats'>,
  most = 5,
): string {
  const shown =
    names.length <= most
      ? names
      : [
          ...names.slice(0, most - 1),
          english.cards.listMore(desk.formats.count(names.length - most + 1)),
        ];
  return shown.join(', ');
}

/** ms as minutes and seconds. */
export function spell(ms: number): string {
  const seconds = Math.round(ms / 1000);
  return english.cards.spell(Math.floor(seconds / 60), seconds % 60).replaceAll(' ', '\u00A0');
}

/** Two cards of ten mistakes at the rack, each drawn wrong and right. */
import { english } from '../../../tell/words.js';
import { drawView, tickOrCross } from '../../../tell/drawings/rack-view.js';
import { escapeHtml } from '../../../tell/escape-html.js';
import { cardOf, para, type Card, type CardDesk } from '../card.js';
import type { Mistake, MistakeDesk } from './mistake.js';
import { halfEmpty, handles, mixed, overTheEdge, tooMany } from './placing.js';
import { flat, narrow, saucers, spoons } from './rack-choice.js';
import { nested, tall, upright } from './standing.js';

/** What goes first is told in every house; the last ones take the place of what does not hold there. */
const MAKERS: readonly ((desk: MistakeDesk) => Mistake | null)[] = [
  upright,
  nested,
  tooMany,
  handles,
  halfEmpty,
  saucers,
  mixed,
  flat,
  tall,
  narrow,
  overTheEdge,
  spoons,
];
const TEN = 10;
const A_PAGE = 5;

/** The ten mistakes of a house. */
export const mistakesOf = (desk: MistakeDesk): readonly Mistake[] =>
  MAKERS.flatMap((make) => make(desk) ?? []).slice(0, TEN);

export function mistakeCards(desk: CardDesk): readonly Card[] {
  const { formats } = desk;
  const say = english.mistakes;
  const all = mistakesOf(desk);
  const pages = Math.ceil(all.length / A_PAGE);
  return Array.from({ length: pages }, (_, page) =>
    cardOf(
      desk,
      `mistakes-${page + 1}`,
      say.title(formats.count(page + 1), formats.count(pages)),
      `<div class="card-pairs">${all
        .slice(page * A_PAGE, (page + 1) * A_PAGE)
        .map((mistake) => pair(desk, mistake))
        .join('')}</div>
${para(say.caution, 'card-caution')}`,
      'card-mistakes',
    ),
  );
}

function pair({ name }: CardDesk, { title, text, wrong, right, ware }: Mistake): string {
  const say = english.mistakes;
  const one = (fine: boolean): string =>
    `<div><p>${tickOrCross(fine)} ${escapeHtml(fine ? say.right : say.wrong)}</p>${drawView(fine ? right : wrong, say.label(fine, title))}</div>`;
  return `<div class="card-pair">${one(false)}${one(true)}<div><h4>${escapeHtml(title)}</h4>${para(text)}${para(ware === null ? say.typical : say.drawn(name(ware)), 'card-drawn')}</div></div>`;
}

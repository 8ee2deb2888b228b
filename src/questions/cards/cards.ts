/** The trainer's cards: to be printed, a page each, and hung beside the machine. */
import { breakageCards } from './breakage-card.js';
import { deskOf, type Card, type CardDesk, type CardInput } from './card.js';
import { clearingCard } from './clearing-card.js';
import { machineTopCard } from './machine-top-card.js';
import { rackCards } from './rack-card.js';
import { mistakeCards } from './mistakes/mistakes-card.js';
import { safetyCard } from './safety-card.js';

export type { Card, CardInput } from './card.js';

/** In the order in which they are printed. */
const makers: readonly ((desk: CardDesk) => readonly Card[])[] = [
  rackCards,
  mistakeCards,
  clearingCard,
  machineTopCard,
  safetyCard,
  breakageCards,
];

/**
 * All cards of a house; their style is `cardStyle`. A card a family of racks, so that each can hang beside
 * the machine it is for; a long list of ware goes on several breakage sheets.
 *
 * @param input the scenario, its answer, and what was worked out beside it; no figure stands on a card that is not in there
 * @returns cards whose `html` is escaped, the same bytes for the same input
 */
export function trainerCards(input: CardInput): readonly Card[] {
  const desk = deskOf(input);
  return makers.flatMap((make) => make(desk));
}

/** Houses for the cards: every scenario of the repository with a quick answer, and a document to print. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { cardStyle } from '../../../src/report/cards/card-style.js';
import { trainerCards, type Card, type CardInput } from '../../../src/report/cards/cards.js';
import { contextOf } from '../../../src/report/context-of.js';
import { letterStyle } from '../../../src/report/html-style.js';
import { english } from '../../../src/report/words.js';
import { storageOf } from '../../../src/study/card-facts.js';
import { piecesPerRackOf } from '../../../src/study/rack-geometry.js';
import { readScenario } from '../../../src/study/read-scenario.js';
import { inThisThread } from '../../../src/study/runner.js';
import { study } from '../../../src/study/size-study.js';

const folder = fileURLToPath(new URL('../../../scenarios/', import.meta.url));

export const houses: readonly { readonly file: string; readonly text: string }[] = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => ({ file, text: readFileSync(folder + file, 'utf8') }));

/** A scenario's cards' input from few days: enough for wording and arithmetic. */
export async function inputOf(text: string, units: 'metric' | 'us' = 'metric'): Promise<CardInput> {
  const read = readScenario(text, 'house.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const { answer } = await study(read.scenario, inThisThread(), { days: 60, certifyOn: 1, watch: 20, piecesPerRack: piecesPerRackOf });
  return { scenario: read.scenario, answer, context: contextOf(read.scenario, read.inputs, '0.0.0', piecesPerRackOf, units), storage: storageOf(read.scenario, answer) };
}

/** The cards in a document such as the letter is. */
export function documentOf(cards: readonly Card[], paper: 'a4' | 'letter'): string {
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Cards</title><style>${letterStyle('House', english)}${cardStyle}</style><body data-paper="${paper}" data-print="cards"><main><p>the letter</p><section data-part="cards">${cards.map(({ html }) => html).join('\n')}</section></main></body></html>`;
}

export const cardsOf = async (text: string): Promise<readonly Card[]> => trainerCards(await inputOf(text));

/** Houses for the cards: every scenario of the repository with a quick answer, and a document to print. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CardInput } from '../../../src/questions/cards/cards.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { storageOf } from '../../../src/questions/cards/facts.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import { study } from '../../../src/questions/size/study.js';

const folder = fileURLToPath(new URL('../../../scenarios/', import.meta.url));

/** The great hall has the cards of the others, and takes as long as all of them. */
export const houses: readonly { readonly file: string; readonly text: string }[] = readdirSync(
  folder,
)
  .filter((file) => file.endsWith('.yaml') && !file.includes('great-hall'))
  .map((file) => ({ file, text: readFileSync(folder + file, 'utf8') }));

/** A scenario's cards' input from few days: enough for wording and arithmetic. */
export async function inputOf(text: string, units: 'metric' | 'us' = 'metric'): Promise<CardInput> {
  const read = readScenario(text, 'house.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const { answer } = await study(read.scenario, inThisThread(), {
    days: 60,
    certifyOn: 1,
    watch: 20,
    piecesPerRack: piecesPerRackOf,
  });
  return {
    scenario: read.scenario,
    answer,
    context: contextOf(read.scenario, read.inputs, '0.0.0', piecesPerRackOf, units),
    storage: storageOf(read.scenario, answer),
  };
}

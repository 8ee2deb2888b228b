/** "What to change if …": the house of the file with one thing otherwise, against as it is, on the same days. */
import { minorPerUnit } from '../../quantities/money.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { checkTree } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { candidatesOf } from '../compare/alternatives.js';
import { usualQuestions } from '../compare/usual.js';
import type { Opened } from '../question.js';
import type { GuideChange } from './answer.js';
import { halfWidth, type Sized } from './sized.js';

/** Of the questions that owners usually ask, those a planner cannot settle in advance; few enough for one page. */
const ASKED = [
  'more-guests',
  'longer-stay',
  'less-takeaway',
  'clearer-fewer',
  'clear-often',
  'machine-out',
  'one-cup',
];
export const MOST_WHAT_IFS = ASKED.length;

export async function whatIfs(
  base: Opened,
  fileName: string,
  asItIs: Sized,
  size: (scenario: Scenario) => Promise<Sized>,
): Promise<GuideChange[]> {
  const candidates = candidatesOf(base, fileName, { piecesPerRack: piecesPerRackOf });
  if (!candidates.ok) return [];
  const changes: GuideChange[] = [];
  for (const id of ASKED) {
    const question = usualQuestions.find((one) => one.id === id);
    const raw = question?.edit(candidates.all[0]!) ?? null;
    if (question === undefined || raw === null) continue;
    const read = checkTree(raw, base.positionOf, fileName, { piecesPerRack: piecesPerRackOf });
    if (!read.ok) continue;
    changes.push(changeOf(id, question.name, asItIs, await size(read.scenario)));
  }
  return changes;
}

const piecesOf = (stock: readonly number[]): number => stock.reduce((sum, one) => sum + one, 0);

function changeOf(id: string, name: string, asItIs: Sized, other: Sized): GuideChange {
  const pieces = ({ answer }: Sized): number => piecesOf(answer.stock.map((line) => line.pieces));
  const perUnit = minorPerUnit(asItIs.answer.currency);
  const samples =
    asItIs.samples === null || other.samples === null
      ? null
      : other.samples.map((stock, at) => piecesOf(stock) - piecesOf(asItIs.samples![at]!));
  return {
    id,
    name,
    pieces: pieces(other) - pieces(asItIs),
    piecesError: halfWidth(samples),
    // Both are whole minor units; the difference of two floats is not.
    cost: Math.round((other.answer.cost - asItIs.answer.cost) * perUnit) / perUnit,
    turnedAway: other.answer.guests.turnedAway - asItIs.answer.guests.turnedAway,
  };
}

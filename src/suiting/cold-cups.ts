/** Drinks whose cups stand partly in the reserve, where they are cold. */
import type { DrinkAnswer, Finding } from './answer.js';
import { FACTS } from './facts.js';
import { type FindingsInput, make, shareOf } from './finding.js';
import { celsius, percent } from './words.js';

/** Some of its cups stand on the machine, and those fetched from the reserve are cold. */
function comesCold({ warmth, standing }: DrinkAnswer): boolean {
  if (warmth === null || standing === null || !standing.warmed || standing.inReserve === 0)
    return false;
  return warmth.firstSipC - warmth.firstSipColdC >= 1;
}

/** Said once for all drinks of a vessel, with the first of them. */
export function fromReserve(answer: DrinkAnswer, all: FindingsInput): Finding[] {
  const alike = all.drinks.filter(
    (one) => comesCold(one) && one.house?.vessel === answer.house?.vessel,
  );
  if (alike[0] !== answer) return [];
  const standing = answer.standing!;
  const { onTop, inReserve, coldShare } = standing;
  const lowest = (of: 'firstSipC' | 'firstSipColdC'): number =>
    Math.min(...alike.map(({ warmth }) => warmth![of]));
  const [low] = FACTS.preferredC.range;
  const several = alike.length > 1;
  const more = several ? ' or more' : '';
  const cold =
    coldShare === null
      ? ''
      : coldShare === 0
        ? ` In the rush none of ${several ? 'these' : 'its'} drinks gets a cold cup.`
        : ` In the rush ${percent(coldShare)} of ${several ? 'these' : 'its'} drinks get a cold cup.`;
  return [
    make(
      lowest('firstSipColdC') < low ? 'taste' : 'note',
      'cold-from-reserve',
      answer.drink,
      `suit.drinks.${answer.drink}.cup`,
      alike.reduce((sum, one) => sum + shareOf(one, all), 0) *
        (coldShare ?? inReserve / (onTop + inReserve) / 2),
      'assumed',
      `${alike.map(({ name }) => name).join(', ')}: ${onTop} of ${several ? 'their' : 'its'} cups stand on the machine, ${inReserve} in the reserve. From the machine the first sip is at ${celsius(lowest('firstSipC'))}${more}, from the reserve at ${celsius(lowest('firstSipColdC'))}${more}.${cold} Bring cups up early, so that they are warm when the rush begins.`,
    ),
  ];
}

/** A mean day of the year from an answer: kinds of day weighted by how many of them a year has. */
import { meanOverKinds, sharesOf } from '../../scenario/kinds.js';
import type { Answer } from './answer.js';

export type MeanDay = Pick<Answer, 'uses' | 'drinks'>;

/** Of the answer itself where it has one kind of day. Times the days of a year it is a year's use. */
export function meanDayOf({ kinds, uses, drinks }: Answer): MeanDay {
  if (kinds === undefined) return { uses, drinks };
  const weights = sharesOf(kinds).map((share) => ({ share }));
  const mean = (of: (day: MeanDay) => number): number =>
    meanOverKinds(weights, (at) => of(kinds[at]!));
  return {
    uses: uses.map(({ ware }, at) => ({ ware, aDay: mean((day) => day.uses[at]!.aDay) })),
    drinks: {
      houseDrinks: mean((day) => day.drinks.houseDrinks),
      takeawayDrinks: mean((day) => day.drinks.takeawayDrinks),
    },
  };
}

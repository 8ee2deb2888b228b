/** What a comparison comes to, in words and marks that do not depend on where it is told. */
import type { ComparedAlternative, Comparison } from './answer.js';
import type { Formats } from '../../tell/format.js';
import { listed, type Words } from '../../tell/words.js';

type Whole = (amount: number) => string;

/** What is recommended, how sure that is, and what it cannot be told apart from. */
export function recommendation(
  { ranking, alternatives, horizonYears }: Comparison,
  formats: Formats,
  whole: Whole,
  words: Words,
  name: (id: string) => string,
): string {
  const say = words.compare;
  const best = alternatives.find(({ id }) => id === ranking.best)!;
  const against = best.totalAgainstBase;
  const first =
    against === null
      ? `${say.bestIsBase}.`
      : `${say.best(name(best.id), whole(-against.difference), yearsText(horizonYears, formats))}${say.sure(whole(-against.high), whole(-against.low))}`;
  const small =
    against !== null && -against.difference < ranking.indifference
      ? say.withinIndifference(whole(ranking.indifference))
      : '';
  // A bound too small for its arithmetic is not nought.
  const sure = ranking.separated
    ? say.error(
        formats.percent(Math.max(ranking.errorProbability, 1e-6)),
        whole(ranking.indifference),
      )
    : '';
  const alike =
    ranking.notToldApart.length === 0
      ? ''
      : say.unsure(listed(ranking.notToldApart.map(name), words));
  const { chanceCheaper } = best;
  const chance =
    chanceCheaper === null
      ? ''
      : say.underRanges(
          formats.percent(chanceCheaper.level, 0),
          formats.percent(chanceCheaper.low, 0),
          formats.percent(chanceCheaper.high, 0),
        ) + (chanceCheaper.level < 0.5 ? ` ${say.butRanges}` : '');
  const left =
    ranking.notRanked.length === 0 ? '' : say.notRanked(listed(ranking.notRanked.map(name), words));
  return [first, small, sure, alike, chance, left].filter((part) => part !== '').join(' ');
}

/** A lead that shrinks below half of itself with a clock a minute off is flagged; any other is told to stay. Null: nothing to tell. */
export function beatNote(
  { beats }: Comparison,
  whole: Whole,
  words: Words,
): { readonly text: string; readonly flagged: boolean } | null {
  const say = words.compare;
  const [asWritten, ...off] = beats;
  if (asWritten === undefined || off.length === 0) return null;
  const amount = (difference: number): string =>
    difference < 0 ? say.beatLess(whole(-difference)) : say.beatMore(whole(difference));
  const worst = off.reduce((dearest, one) => (one.difference > dearest.difference ? one : dearest));
  if (asWritten.difference < 0 && worst.difference > asWritten.difference / 2) {
    return {
      text: say.beats(
        amount(worst.difference),
        say.beat(worst.what === 'rounds' ? 'rounds' : 'waits', worst.minutes),
        amount(asWritten.difference),
      ),
      flagged: true,
    };
  }
  const least = off.reduce((cheapest, one) =>
    one.difference < cheapest.difference ? one : cheapest,
  );
  return worst.difference < 0
    ? { text: say.steady(whole(-worst.difference), whole(-least.difference)), flagged: false }
    : null;
}

export const yearsText = (years: number, { decimal }: Formats): string =>
  decimal(years, Number.isInteger(years) ? 0 : 1);

export interface OtherGuests {
  readonly id: string;
  /** Guests seated a day, more than as it is; negative: fewer. */
  readonly seated: number;
  /** Pieces more than as it is. */
  readonly pieces: number;
}

/** Ranked alternatives that seat other guests than the house as it is, so that part of their money is not like for like. */
export function otherGuests({ alternatives, equalGuests, ranking }: Comparison): OtherGuests[] {
  const base = alternatives[0]!;
  if (equalGuests) return [];
  return alternatives
    .slice(1)
    .filter(({ id }) => !ranking.notRanked.includes(id))
    .flatMap((one) => {
      const seated = one.guests.seated - base.guests.seated;
      const pieces = one.pieces - base.pieces;
      return Math.abs(seated) < Math.max(0.5, 0.01 * base.guests.seated) ||
        (seated > 0 && pieces <= 0)
        ? []
        : [{ id: one.id, seated, pieces }];
    });
}

/** Those that missed the level on fresh days. */
export const missedLevel = ({ alternatives, level }: Comparison): ComparedAlternative[] =>
  alternatives.filter(({ certified }) => certified !== null && certified.high < level);

/** Prices at which an alternative and the house as it is change places; a price ten times off is no question for a buyer. */
export const nearFlips = ({
  breakEven,
}: ComparedAlternative): {
  readonly what: string;
  readonly price: number;
  readonly flipsAt: number;
}[] =>
  breakEven.flatMap(({ what, price, flipsAt }) =>
    flipsAt !== null && flipsAt > price / 10 && flipsAt < price * 10
      ? [{ what, price, flipsAt }]
      : [],
  );

/** `{lognormal:{mean:15 min,sd:8 min}}` → "lognormal: mean 15 min, sd 8 min"; other text as it stands. */
export const plainData = (text: string): string =>
  /[{[]/.test(text)
    ? text
        .replace(/:\{/g, ': ')
        .replace(/([A-Za-z][\w-]*):(?=[^\s:])/g, '$1 ')
        .replace(/[{}]/g, '')
        .replace(/,(?=\S)/g, ', ')
    : text;

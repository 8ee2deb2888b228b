/** Party sizes, who stays in, and drinks, from the tally. */
import { square } from '../../elementary/powers.js';
import type { Sheet } from '../../measuring/sheet.js';
import { meanSize, tilted } from '../../measuring/tilted-sizes.js';
import type { Input } from '../../scenario/inputs.js';
import type { Scenario } from '../../scenario/scenario.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import { FEWEST } from './fewest.js';
import { tooFew, type Found } from './found.js';
import { shareWritten, sizesWritten } from './written.js';

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

export function measuredGuests(
  sheets: readonly Sheet[],
  scenario: Scenario,
  inputs: readonly Input[],
): Found[] {
  const counted: Counted = {
    tally: sheets.flatMap(({ tally }) => tally),
    sizes: sheets[0]!.sizes,
  };
  if (counted.tally.length === 0) return [];
  return [
    sizesFound(counted, scenario),
    ...staysInFound(counted, scenario, inputs),
    ...drinksFound(counted, scenario),
  ];
}

/** Quarter hours of all mornings. */
type Counted = Pick<Sheet, 'tally' | 'sizes'>;

function sizesFound({ tally, sizes }: Counted, { guests }: Scenario): Found {
  const path = 'guests.partySize';
  const counts = Array.from({ length: sizes }, (_, size) =>
    sum(tally.map(({ came, away }) => came[size]! + away[size]!)),
  );
  const n = sum(counts);
  if (n < FEWEST.parties) return tooFew(path, n, FEWEST.parties, 'parties counted');
  // The last column is for all larger ones: these share it as they did before.
  const larger = guests.partySize.slice(sizes - 1);
  const all = sum(larger);
  const shares = [
    ...counts.slice(0, -1).map((count) => count / n),
    ...(all === 0 ? [1] : larger.map((share) => share / all)).map(
      (share) => (share * counts.at(-1)!) / n,
    ),
  ];
  const mean = meanSize(shares);
  const sd = Math.sqrt(sum(shares.map((share, at) => share * square(at + 1 - mean))));
  const half = (1.96 * sd) / Math.sqrt(n);
  const ends = [Math.max(1, mean - half), mean + half] as const;
  return {
    path,
    value: sizesWritten(shares),
    range: [sizesWritten(tilted(shares, ends[0])), sizesWritten(tilted(shares, ends[1]))],
    written: (to) => sizesWritten(tilted(shares, to)),
    how: `${n} parties counted`,
    n,
    mean,
    low: ends[0],
    high: ends[1],
    sd,
    shares: counts.map((count, at) => {
      const last = at === sizes - 1;
      const { share, low, high } = exactBinomialInterval(count, n);
      return {
        size: `${at + 1}${last ? '+' : ''}`,
        share,
        low,
        high,
        before: last ? all : (guests.partySize[at] ?? 0),
      };
    }),
    unit: 'guests',
    law: null,
  };
}

/** The share that stays in, of the whole morning or of each part of the day that has its own. */
function staysInFound(
  { tally }: Counted,
  { guests, hours }: Scenario,
  inputs: readonly Input[],
): Found[] {
  const opening = 'from' in hours ? hours.from / 60_000 : 0;
  const spans = Array.isArray(guests.staysIn)
    ? guests.staysIn.reduce<{ from: number; to: number }[]>((all, step, at) => {
        const from = all.at(-1)?.to ?? opening;
        const last = at === (guests.staysIn as readonly unknown[]).length - 1;
        return [...all, { from, to: last ? Infinity : from + step.for / 60_000 }];
      }, [])
    : [{ from: -Infinity, to: Infinity }];
  const before = Array.isArray(guests.staysIn)
    ? guests.staysIn.map((step) => step.staysIn)
    : [guests.staysIn as number];
  return spans.map(({ from, to }, at): Found => {
    const path =
      spans.length === 1 && !Array.isArray(guests.staysIn)
        ? 'guests.staysIn'
        : (inputs.find((one) => one.path === `guests.staysIn[${at}].staysIn`)?.path ??
          'guests.staysIn');
    const rows = tally.filter(({ minute }) => minute >= from && minute < to);
    const stayed = sum(rows.map(({ came }) => sum(came)));
    const n = stayed + sum(rows.map(({ away }) => sum(away)));
    return n < FEWEST.share
      ? tooFew(path, n, FEWEST.share, 'parties counted')
      : shareFound(path, stayed, n, 'parties counted', before[at]!);
  });
}

/** @param before the share as the scenario has it */
function shareFound(path: string, count: number, n: number, what: string, before: number): Found {
  const { share, low, high } = exactBinomialInterval(count, n);
  return {
    path,
    value: shareWritten(share),
    range: [shareWritten(low), shareWritten(high)],
    written: shareWritten,
    how: `${n} ${what}`,
    n,
    mean: share,
    low,
    high,
    sd: null,
    shares: [{ size: '', share, low, high, before }],
    unit: 'share',
    law: null,
  };
}

/** Drinks each of the first round, and the share of guests with a second, of those who came in. */
function drinksFound(
  { tally, sizes }: Counted,
  { guests: { partySize, secondDrink } }: Scenario,
): Found[] {
  // The last column is for all larger parties too: as many guests as these have on average, as far as is known.
  const larger = partySize.slice(sizes - 1);
  const most = sum(larger) === 0 ? sizes : sizes - 1 + meanSize(larger) / sum(larger);
  const guestsOf = (rows: Sheet['tally']): number =>
    Math.round(
      sum(
        rows.map(({ came }) =>
          sum(came.map((count, size) => count * (size + 1 === sizes ? most : size + 1))),
        ),
      ),
    );
  const first = tally.filter(({ drinks }) => drinks !== null);
  const second = tally.filter(({ seconds }) => seconds !== null);
  const found: Found[] = [];
  const guests = guestsOf(first);
  if (first.length > 0) {
    const path = 'guests.drinksEach';
    const each = sum(first.map(({ drinks }) => drinks!)) / Math.max(1, guests);
    const whole = Math.floor(each);
    if (guests < FEWEST.guests) found.push(tooFew(path, guests, FEWEST.guests, 'guests counted'));
    else {
      // Each guest has the whole number, and some have one more.
      const { low, high } = exactBinomialInterval(Math.round((each - whole) * guests), guests);
      const text = (value: number): number => Number(value.toFixed(3));
      found.push({
        path,
        value: text(each),
        range: [text(Math.max(0.01, whole + low)), text(whole + high)],
        written: (to) => text(Math.max(0.01, to)),
        how: `${guests} guests counted`,
        n: guests,
        mean: each,
        low: whole + low,
        high: whole + high,
        sd: null,
        unit: 'pieces',
        law: null,
      });
    }
  }
  if (second.length > 0) {
    const path = 'guests.secondDrink';
    const of = guestsOf(second);
    const drinks = sum(second.map(({ seconds }) => seconds!));
    found.push(
      of < FEWEST.guests
        ? tooFew(path, of, FEWEST.guests, 'guests counted')
        : shareFound(path, Math.min(of, drinks), of, 'guests counted', secondDrink),
    );
  }
  return found;
}

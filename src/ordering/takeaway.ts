/** Takeaway cups and lids by size, a week: those ordered to go and those that stood in for a house cup. */
import { nameOf } from '../quantities/name.js';
import { inMinor } from '../quantities/money.js';
import { didYouMean } from '../quantities/nearest.js';
import { problem, type Outcome, type Problem } from './problems.js';
import type { SupplySlice } from './schema.js';

/** Takeaway cups of one drink in a day of the rush, on average. */
export interface TakeawayDrink {
  readonly drink: string;
  readonly ordered: number;
  readonly asFallBack: number;
}

export interface TakeawayLine {
  readonly id: string;
  readonly name: string;
  readonly kind: 'cup' | 'lid';
  /** Pieces a week, mean. */
  readonly aWeek: number;
  /** Of these, cups (or their lids) that stood in for a house cup. */
  readonly asFallBackAWeek: number;
  readonly sleeve: number;
  /** Whole sleeves a week. */
  readonly sleevesAWeek: number;
  /** Price of the sleeves of a week, before tax; null: no price given. */
  readonly minorAWeek: number | null;
}

export interface TakeawayInput {
  readonly takeaway: NonNullable<SupplySlice['takeaway']>;
  readonly perDay: readonly TakeawayDrink[];
  readonly openDaysAWeek: number;
  /** Share of a day's uses that the rush covers. */
  readonly rushShare: number;
  readonly staffHourMinor: number;
}

/** Sizes that name drinks which are not on the menu or in another size already, and lids that are not listed. */
export function takeawayProblems(
  takeaway: TakeawayInput['takeaway'],
  menu: readonly string[],
): Problem[] {
  return readSizes(takeaway, menu).problems;
}

function readSizes(
  { cups, lids = {} }: TakeawayInput['takeaway'],
  known: readonly string[],
): { readonly problems: Problem[]; readonly sizeOf: ReadonlyMap<string, string> } {
  const problems: Problem[] = [];
  const sizeOf = new Map<string, string>();
  for (const [id, cup] of Object.entries(cups)) {
    cup.drinks.forEach((drink, index) => {
      const path = ['supply', 'takeaway', 'cups', id, 'drinks', index];
      if (!known.includes(drink))
        problems.push(problem(path, drink, 'is not on the menu', didYouMean(drink, known)));
      else if (sizeOf.has(drink))
        problems.push(
          problem(
            path,
            drink,
            `is in the size ${sizeOf.get(drink)} already`,
            'name each drink in one size',
          ),
        );
      else sizeOf.set(drink, id);
    });
    if (cup.lid !== undefined && !Object.hasOwn(lids, cup.lid))
      problems.push(
        problem(
          ['supply', 'takeaway', 'cups', id, 'lid'],
          cup.lid,
          'is not a lid that is listed',
          didYouMean(cup.lid, Object.keys(lids)),
        ),
      );
  }
  return { problems, sizeOf };
}

/** One line a size of cup and a kind of lid; drinks without a size and lids that are not listed are problems. */
export function takeawayLines(input: TakeawayInput): Outcome<readonly TakeawayLine[]> {
  const { cups, lids = {} } = input.takeaway;
  const { problems, sizeOf } = readSizes(
    input.takeaway,
    input.perDay.map(({ drink }) => drink),
  );
  for (const { drink, ordered, asFallBack } of input.perDay) {
    if (ordered + asFallBack > 0 && !sizeOf.has(drink))
      problems.push(
        problem(
          ['supply', 'takeaway', 'cups'],
          drink,
          'is taken away in no size',
          'name the drink in one of the sizes',
        ),
      );
  }
  if (problems.length > 0) return { ok: false, problems };

  const week = input.openDaysAWeek / input.rushShare;
  const used = (id: string): { all: number; asFallBack: number } =>
    input.perDay
      .filter(({ drink }) => sizeOf.get(drink) === id)
      .reduce(
        (sum, day) => ({
          all: sum.all + (day.ordered + day.asFallBack) * week,
          asFallBack: sum.asFallBack + day.asFallBack * week,
        }),
        { all: 0, asFallBack: 0 },
      );
  const line = (
    id: string,
    kind: 'cup' | 'lid',
    item: {
      name?: string | undefined;
      sleeve: number;
      price?: Parameters<typeof inMinor>[0] | undefined;
    },
    uses: { all: number; asFallBack: number },
  ): TakeawayLine => {
    // A mean within a millionth of a whole sleeve is that sleeve.
    const sleevesAWeek = Math.ceil(uses.all / item.sleeve - 1e-6);
    const minorAWeek =
      item.price === undefined
        ? null
        : sleevesAWeek * item.sleeve * inMinor(item.price, input.staffHourMinor);
    return {
      id,
      name: nameOf(id, item),
      kind,
      aWeek: uses.all,
      asFallBackAWeek: uses.asFallBack,
      sleeve: item.sleeve,
      sleevesAWeek,
      minorAWeek,
    };
  };
  const cupLines = Object.entries(cups).map(([id, cup]) => line(id, 'cup', cup, used(id)));
  const lidLines = Object.entries(lids).map(([id, lid]) => {
    const uses = Object.entries(cups)
      .filter(([, cup]) => cup.lid === id)
      .map(([cupId, cup]) => ({ ...used(cupId), share: cup.lidded ?? 1 }));
    return line(id, 'lid', lid, {
      all: uses.reduce((sum, one) => sum + one.all * one.share, 0),
      asFallBack: uses.reduce((sum, one) => sum + one.asFallBack * one.share, 0),
    });
  });
  return { ok: true, value: [...cupLines, ...lidLines] };
}

/**
 * Takeaway cups and lids by size, a week: those ordered to go and those used when a house cup ran out. Sleeves are
 * for a week that is busier than most: the days of a week are drawn from the days of the study, independently.
 */
import { mixtureOf, quantileOf, sumOf, type PieceCounts } from './counts-of-pieces.js';
import { nameOf } from '../quantities/name.js';
import { priceMinor, type Price } from '../quantities/price.js';
import { didYouMean } from '../quantities/nearest.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';
import type { SupplySlice } from './schema.js';

/** Takeaway cups of one drink in the rush, one number a day. */
export interface TakeawayDrink {
  readonly drink: string;
  readonly ordered: readonly number[];
  readonly asFallBack: readonly number[];
}

export interface TakeawayLine {
  readonly id: string;
  readonly name: string;
  readonly kind: 'cup' | 'lid';
  /** Pieces a week, mean. */
  readonly aWeek: number;
  /** Of these, cups (or their lids) used when a house cup ran out. */
  readonly asFallBackAWeek: number;
  /** Share of weeks for which `forAWeek` is enough. */
  readonly confidence: number;
  readonly forAWeek: number;
  readonly sleeve: number;
  /** Whole sleeves that hold `forAWeek`. */
  readonly sleevesAWeek: number;
  /** Price of the sleeves of a week, before tax; null: no price given. */
  readonly minorAWeek: number | null;
}

export interface TakeawayInput {
  readonly takeaway: NonNullable<SupplySlice['takeaway']>;
  readonly perDay: readonly TakeawayDrink[];
  /** Share of weeks that the sleeves have to last, 0 < confidence < 1. */
  readonly confidence: number;
  readonly openDaysAWeek: number;
  /** Share of a day's uses that the rush covers. */
  readonly rushShare: number;
  readonly staffHourMinor: number;
}

/** Sizes that name drinks which are not on the menu or in another size already, and lids that are not listed. */
export function takeawayProblems(
  takeaway: TakeawayInput['takeaway'],
  menu: readonly string[],
): Fault[] {
  return readSizes(takeaway, menu).problems;
}

function readSizes(
  { cups, lids = {} }: TakeawayInput['takeaway'],
  known: readonly string[],
): { readonly problems: Fault[]; readonly sizeOf: ReadonlyMap<string, string> } {
  const problems: Fault[] = [];
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
            `is already in the size ${sizeOf.get(drink)}`,
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
          'is not one of the lids listed',
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
    if ([...ordered, ...asFallBack].some((cups) => cups > 0) && !sizeOf.has(drink))
      problems.push(
        problem(
          ['supply', 'takeaway', 'cups'],
          drink,
          'has no takeaway size',
          'add the drink to one of the sizes',
        ),
      );
  }
  if (problems.length > 0) return { ok: false, problems };

  const days = input.perDay[0]?.ordered.length ?? 0;
  const week = input.openDaysAWeek / input.rushShare;
  /** Cups of these sizes a day, with the share of each that is counted. */
  const used = (shareOf: Readonly<Record<string, number>>): Use => {
    const all = Array.from({ length: days }, () => 0);
    let instead = 0;
    for (const { drink, ordered, asFallBack } of input.perDay) {
      const share = shareOf[sizeOf.get(drink) ?? ''] ?? 0;
      if (share === 0) continue;
      for (let day = 0; day < days; day++) {
        all[day]! += share * (ordered[day]! + asFallBack[day]!);
        instead += share * asFallBack[day]!;
      }
    }
    return { aDay: all, insteadADay: days === 0 ? 0 : instead / days };
  };
  const line = (
    id: string,
    kind: 'cup' | 'lid',
    item: {
      name?: string | undefined;
      sleeve: number;
      price?: Price | undefined;
    },
    { aDay, insteadADay }: Use,
  ): TakeawayLine => {
    const mean = days === 0 ? 0 : aDay.reduce((sum, cups) => sum + cups, 0) / days;
    const forAWeek = weekOf(aDay, input);
    const sleevesAWeek = Math.ceil(forAWeek / item.sleeve);
    return {
      id,
      name: nameOf(id, item),
      kind,
      aWeek: mean * week,
      asFallBackAWeek: insteadADay * week,
      confidence: input.confidence,
      forAWeek,
      sleeve: item.sleeve,
      sleevesAWeek,
      minorAWeek:
        item.price === undefined
          ? null
          : Math.round(
              priceMinor(item.price, sleevesAWeek * item.sleeve, item.sleeve, input.staffHourMinor),
            ),
    };
  };
  const cupLines = Object.entries(cups).map(([id, cup]) => line(id, 'cup', cup, used({ [id]: 1 })));
  const lidLines = Object.entries(lids).map(([id, lid]) =>
    line(
      id,
      'lid',
      lid,
      used(
        Object.fromEntries(
          Object.entries(cups).flatMap(([cupId, cup]) =>
            cup.lid === id ? [[cupId, cup.lidded ?? 1]] : [],
          ),
        ),
      ),
    ),
  );
  return { ok: true, value: [...cupLines, ...lidLines] };
}

interface Use {
  readonly aDay: readonly number[];
  readonly insteadADay: number;
}

/** The smallest whole number of cups that is enough for the share of weeks asked for. */
function weekOf(
  aDay: readonly number[],
  { confidence, openDaysAWeek, rushShare }: TakeawayInput,
): number {
  if (aDay.length === 0) return 0;
  // A share of cups that get a lid is rounded up, day by day; a millionth is none.
  const whole = aDay.map((cups) => Math.ceil(cups / rushShare - 1e-6));
  const day = Array.from({ length: Math.max(...whole) + 1 }, () => 0);
  for (const cups of whole) day[cups]! += 1 / whole.length;
  let total: PieceCounts = [1];
  for (let open = 1; open <= openDaysAWeek; open++) total = sumOf(total, day);
  const part = openDaysAWeek - Math.floor(openDaysAWeek);
  return quantileOf(
    part === 0
      ? total
      : mixtureOf([
          { weight: 1 - part, counts: total },
          { weight: part, counts: sumOf(total, day) },
        ]),
    confidence,
  );
}

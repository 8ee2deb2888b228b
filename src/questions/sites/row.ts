/**
 * A unit of work, and what is kept of it: one site sized, as a row small enough that hundreds of thousands fit in
 * memory. Everything that the study of all sites says is worked out from these rows, whoever ran them.
 */
import { isTooMuch } from '../../cafe/too-much.js';
import type { Runner } from '../../cafe/runner.js';
import type { Answer, Share } from '../size/answer.js';
import { meanDayOf } from '../size/year.js';
import { scenarioStudy } from '../size/scenario-study.js';
import type { Opened } from '../question.js';

/** Pieces of one ware off the shelf through the day, against the stock: the small picture of a site. */
export interface Course {
  readonly ware: string;
  readonly stepMinutes: number;
  /** Median, and what 95 % of days stay at or below. */
  readonly median: readonly number[];
  readonly high: readonly number[];
}

export interface SizedRow {
  readonly unit: string;
  /** By ware, in the order of the scenario. */
  readonly pieces: Readonly<Record<string, number>>;
  readonly have: Readonly<Record<string, number>>;
  /** Pieces used in the rush, a day. */
  readonly uses: Readonly<Record<string, number>>;
  readonly certified: Share | null;
  readonly days: Answer['days'];
  /** Of all ware, and of what is to be bought; whole currency units. */
  readonly cost: number;
  readonly spend: number;
  readonly busy: Answer['busy'];
  readonly seatsHeldBusiest: number | null;
  /** Means a day. */
  readonly arrived: number;
  readonly servedInHouse: number;
  readonly left: number;
  readonly paperCups: number;
  readonly overloads: Answer['overloads'];
  readonly warnings: Answer['warnings'];
  readonly course?: Course;
}

export interface FailedRow {
  readonly unit: string;
  /** Why this unit cannot be sized. */
  readonly failed: string;
}

export type UnitRow = SizedRow | FailedRow;

export const isFailed = (row: object): row is FailedRow => 'failed' in row;
export const isSized = (row: UnitRow): row is SizedRow => !isFailed(row);

export interface RowOptions {
  readonly level?: number | undefined;
  readonly days?: number | undefined;
  /** Days watched for the small picture; 0: none. */
  readonly watch: number;
}

/** Days watched for a site's small picture. */
export const DAYS_WATCHED = 60;
/** Figures of a row keep this many digits: rows are the same whatever adds them up, and short. */
const DIGITS = 9;

/** Sizes one unit; what asks too much of one site is said in its row and stops no other. */
export const rowOf = (
  unit: string,
  opened: Opened,
  runner: Runner,
  { level, days, watch }: RowOptions,
): Promise<UnitRow> =>
  orFailed(unit, async () => {
    const { answer } = await scenarioStudy(opened, runner, {
      ...(level === undefined ? {} : { level }),
      ...(days === undefined ? {} : { days }),
      watch,
    });
    return rowOfAnswer(unit, answer);
  });

/** The row of a unit, or why it cannot be had; a fault of ours is thrown. */
export async function orFailed<T>(unit: string, work: () => Promise<T>): Promise<T | FailedRow> {
  try {
    return await work();
  } catch (error) {
    // The command's runner has made a mistake of the scenario's writer of it already.
    if (isTooMuch(error) || (error as Partial<Error>).name === 'MistakeError')
      return { unit, failed: (error as Error).message };
    throw error;
  }
}

function rowOfAnswer(unit: string, answer: Answer): SizedRow {
  const { guests, stock } = answer;
  const each = <T>(of: (line: Answer['stock'][number]) => T): Record<string, T> =>
    Object.fromEntries(stock.map((line) => [line.ware, of(line)]));
  return {
    unit,
    pieces: each(({ pieces }) => pieces),
    have: each(({ have }) => have),
    uses: Object.fromEntries(meanDayOf(answer).uses.map(({ ware, aDay }) => [ware, short(aDay)])),
    certified: answer.certified,
    days: answer.days,
    cost: short(answer.cost),
    spend: short(answer.spend),
    busy: answer.busy,
    seatsHeldBusiest: answer.seatsHeldBusiest,
    arrived: short(guests.arrived),
    servedInHouse: short(guests.parts.servedInHouse),
    left: short(guests.parts.left),
    paperCups: short(answer.takeawayCups.ordered + answer.takeawayCups.asFallBack),
    overloads: answer.overloads,
    warnings: answer.warnings,
    ...courseOf(answer),
  };
}

export const short = (value: number): number => Number(value.toPrecision(DIGITS));

/** Of the ware that is scarcest on the tight day. */
function courseOf({ evidence, tightest }: Answer): { readonly course?: Course } {
  const found = evidence?.offShelf.find(({ ware }) => ware === tightest.ware);
  return found === undefined
    ? {}
    : {
        course: {
          ware: found.ware,
          stepMinutes: evidence!.stepMinutes,
          median: found.q50,
          high: found.q95,
        },
      };
}

/** The stage with the least room: what is busiest over the opening hours; null where nothing is limited. */
export function busiestStage({ busy }: Pick<SizedRow, 'busy'>): {
  readonly stage: keyof Answer['busy'];
  readonly share: number;
} | null {
  const all = (Object.keys(busy) as (keyof Answer['busy'])[]).flatMap((stage) => {
    const share = busy[stage];
    return share === null ? [] : [{ stage, share }];
  });
  return all.length === 0 ? null : all.reduce((most, one) => (one.share > most.share ? one : most));
}

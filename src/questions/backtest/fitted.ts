/** The house as days of a till before a moment show it: the demand of its kinds of day, and which kind a day is of. */
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { applyTill } from '../../till/apply-till.js';
import type { TillMap } from '../../till/compile-map.js';
import { fitKinds } from '../../till/fit-kinds.js';
import { fitTill, type TillFit } from '../../till/fit-till.js';
import { fail, succeed, type Outcome } from '../../till/flaw.js';
import { kindOfDay } from '../../till/kinds-of-day.js';
import type { Tally, TillDay } from '../../till/tally.js';

export interface FittedHouse {
  /** Of the days that no kind stands apart from. */
  readonly fit: TillFit;
  readonly scenario: Scenario;
  /** Ids of its kinds of day; a single one has none. */
  readonly kindOf: (day: number) => string;
  /** Parties that a day of this kind has on average. */
  readonly expected: (kind: string) => number;
}

/** The id of the only kind of day. */
export const ONE_KIND = '';
/** Fewer deals than `till` makes: each origin fits its kinds anew, and Holm's smallest share of 5 % is well above 1 in 1,000. */
const DEALS = 999;

export interface Fitting {
  /** The base scenario, from which all but the demand comes. */
  readonly text: string;
  readonly map: TillMap;
  readonly tally: Tally;
  readonly file: string;
}

export function fittedHouse(
  { text, map, tally, file }: Fitting,
  earlier: readonly TillDay[],
): Outcome<FittedHouse> {
  const days: Tally = { ...tally, days: new Map(earlier.map((day) => [day.day, day])) };
  const whole: TillMap = { ...map, keepPartialDays: true };
  if (map.kinds.length === 0) {
    const fit = fitTill(days, whole, file);
    if (!fit.ok) return fit;
    return houseOf(applyTill(text, fit.value), {
      fit: fit.value,
      kindOf: () => ONE_KIND,
      expected: () => fit.value.partiesADay.mean,
    });
  }
  const kinds = fitKinds(days, whole, file, DEALS);
  if (!kinds.ok) return kinds;
  const { base, fit, fitted } = kinds.value;
  const own = new Map(fitted.map((kind) => [kind.id, kind.fit.partiesADay.mean]));
  return houseOf(applyTill(text, fit, kinds.value), {
    fit,
    kindOf: (day) => {
      const id = kindOfDay(map.kinds, day);
      return own.has(id) ? id : own.size === 0 ? ONE_KIND : base.id;
    },
    expected: (kind) => own.get(kind) ?? fit.partiesADay.mean,
  });
}

function houseOf(
  applied: ReturnType<typeof applyTill>,
  known: Omit<FittedHouse, 'scenario'>,
): Outcome<FittedHouse> {
  if (!applied.ok) return applied;
  const read = readScenario(applied.value.text, 'fitted', { piecesPerRack: piecesPerRackOf });
  if (read.ok) return succeed({ ...known, scenario: read.scenario });
  return fail(
    ...read.problems.map(({ at, value, rule, remedy }) => ({
      about: 'base' as const,
      path: at.map(String),
      value,
      rule,
      remedy,
    })),
  );
}

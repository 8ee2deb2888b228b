/** Kinds of day as a map names them, and which kind a day is of. */
import { weekdayOf } from './clock.js';

/** Days are numbers since 1970-01-01; Monday is 0. Any of the three lists makes a day one of this kind. */
export interface KindChoice {
  readonly id: string;
  readonly weekdays: readonly number[];
  readonly between: readonly { readonly from: number; readonly to: number }[];
  readonly dates: readonly number[];
}

/** The days that no kind names. */
export const USUAL = 'usual';
export const WEEKDAY = 'weekday';
export const WEEKEND = 'weekend';
export const HOLIDAY = 'holiday';

/** Where a map names no kinds: weekends apart from weekdays, where it asks for some of both. */
export const usualKinds = (weekdays: readonly number[]): readonly KindChoice[] =>
  weekdays.some((day) => day < 5) && weekdays.some((day) => day > 4)
    ? [{ id: WEEKEND, weekdays: [5, 6], between: [], dates: [] }]
    : [];

/** Days that no kind names: weekdays where the one kind named is the weekend. */
export const restOf = (kinds: readonly KindChoice[]): string =>
  kinds.some(({ weekdays }) => weekdays.includes(5) && weekdays.includes(6)) ? WEEKDAY : USUAL;

/** The first kind that names a day, in the order of the map; a date comes before a day of the week. */
export function kindOfDay(kinds: readonly KindChoice[], day: number): string {
  const dated = kinds.find(
    ({ dates, between }) =>
      dates.includes(day) || between.some(({ from, to }) => day >= from && day <= to),
  );
  return (
    (dated ?? kinds.find(({ weekdays }) => weekdays.includes(weekdayOf(day))))?.id ?? restOf(kinds)
  );
}

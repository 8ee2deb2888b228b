/**
 * Dates and times as tills write them, in the order the map states: never guessed.
 *
 * A day is a whole number of days since 1970-01-01; a time is minutes or seconds since midnight, as
 * written: no time zone is applied, since a till writes the clock on the wall.
 */

export type DateOrder = 'iso' | 'day-first' | 'month-first';

export const weekdayNames = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

const MS_A_DAY = 86_400_000;

/** The day number of a date, or null when there is no such date between 1970 and 2199. */
export function dayOf(year: number, month: number, day: number): number | null {
  if (year < 1970 || year > 2199 || month < 1 || month > 12 || day < 1) return null;
  const ms = Date.UTC(year, month - 1, day);
  return new Date(ms).getUTCDate() === day ? ms / MS_A_DAY : null;
}

/** A day number as year-month-day. */
export function isoDate(day: number): string {
  return new Date(day * MS_A_DAY).toISOString().slice(0, 10);
}

/** Monday is 0: day 0, 1 January 1970, was a Thursday. */
export function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

const isoForm = /^(\d{4})(-?)(\d{2})\2(\d{2})$/;
const orderedForm = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/;

/** The day a text names in the stated order, or null when it names none. Two-digit years are 20xx. */
export function readDate(text: string, order: DateOrder): number | null {
  if (order === 'iso') {
    const parts = isoForm.exec(text);
    return parts ? dayOf(Number(parts[1]), Number(parts[3]), Number(parts[4])) : null;
  }
  const parts = orderedForm.exec(text);
  if (!parts) return null;
  const year = parts[4]!.length === 2 ? 2000 + Number(parts[4]) : Number(parts[4]);
  const first = Number(parts[1]);
  const second = Number(parts[3]);
  return order === 'day-first' ? dayOf(year, second, first) : dayOf(year, first, second);
}

const timeForm =
  /^(\d{1,2})[:.](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?(?:\s*(?:Z|[+-]\d{2}:?\d{2}))?$/i;

/** Seconds since midnight, or null when the text is not a time of day. `9:05`, `09:05:30`, `9:05 pm`; a zone is read over. */
export function readTime(text: string): number | null {
  const parts = timeForm.exec(text);
  if (!parts) return null;
  let hour = Number(parts[1]);
  const minute = Number(parts[2]);
  const second = Number(parts[3] ?? 0);
  if (parts[4]) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (/^p/i.test(parts[4]) ? 12 : 0);
  }
  return hour > 23 || minute > 59 || second > 59 ? null : hour * 3600 + minute * 60 + second;
}

/** Date and time written in one column, apart by a space, a comma or the `T` of ISO 8601. */
export function splitMoment(text: string): readonly [date: string, time: string] {
  const parts = /^(\S+?)(?:\s*,\s*|\s+|T)(\d.*)$/.exec(text);
  return parts ? [parts[1]!, parts[2]!] : [text, ''];
}

/** Minutes since midnight as HH:MM. */
export function clock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** What the tally of a morning must hold, row by row: no gaps, nobody leaves who has not come, and drinks that guests can have. */
import type { Tell } from './sheet-rows.js';
import { clockText, SLOT_MINUTES, type Sheet } from './sheet.js';

export type Tallied = Pick<Sheet, 'before' | 'after' | 'tally'>;

interface Hours {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** Tallies go on until the last have left. */
const LATEST_AFTER_CLOSING = 4 * 60;
/** First drinks that each guest may have on average. */
const MOST_EACH = 5;
/** So many guests and not one drink is a column that was not counted. */
const GUESTS_WITH_DRINKS = 10;

/** @param columns titles of the counts of those who left, by size */
export function checkTally(
  tallied: Tallied,
  columns: readonly string[],
  hours: Hours,
  tell: Tell,
): void {
  checkSlots(tallied.tally, hours, tell);
  checkRoom(tallied, columns, tell);
  checkDrinks(tallied, tell);
}

/** Quarter hours without a gap, within the day of the house. */
function checkSlots(tally: Sheet['tally'], house: Hours, tell: Tell): void {
  tally.forEach(({ minute, row }, at) => {
    const last = tally[at - 1];
    const text = clockText(minute);
    if (last !== undefined && minute !== last.minute + SLOT_MINUTES) {
      const wanted = clockText(last.minute + SLOT_MINUTES);
      if (minute > last.minute)
        tell(
          row,
          'from',
          text,
          `leaves a gap after ${clockText(last.minute)}`,
          `give every quarter hour, ${wanted} next; write 0 where nobody came or went`,
        );
      else tell(row, 'from', text, `does not follow ${clockText(last.minute)}`, `write ${wanted}`);
    }
    if (minute < house.fromMinute - SLOT_MINUTES || minute >= house.toMinute + LATEST_AFTER_CLOSING)
      tell(
        row,
        'from',
        text,
        `is outside the hours ${clockText(house.fromMinute)} to ${clockText(house.toMinute)}`,
        'check the time, or the hours of the scenario',
      );
  });
}

/** Nobody leaves who has not come. */
function checkRoom(
  { before, after, tally }: Tallied,
  columns: readonly string[],
  tell: Tell,
): void {
  before.forEach((start, size) => {
    let inside = start;
    for (const { row, came, went, minute } of tally) {
      inside += came[size]! - went[size]!;
      if (inside < 0) {
        tell(
          row,
          columns[size]!,
          String(went[size]),
          `is ${-inside} more than can have sat there by ${clockText(minute + SLOT_MINUTES)}`,
          'check the counts of this size up to here, and those who sat there before',
        );
        return;
      }
    }
    const last = tally.at(-1);
    if (after !== null && last !== undefined && after[size] !== inside)
      tell(
        last.row,
        columns[size]!,
        String(after[size]),
        `are said to be left, but the counts leave ${inside}`,
        'check the counts of this size',
      );
  });
}

/** Drinks of a whole morning beside its guests; where large parties came, how many guests there were is not known. */
function checkDrinks({ before, tally }: Tallied, tell: Tell): void {
  const last = tally.at(-1);
  if (last === undefined) return;
  const guestsOf = (counts: readonly number[]): number =>
    counts.reduce((sum, count, size) => sum + count * (size + 1), 0);
  const guests = tally.reduce((sum, { came }) => sum + guestsOf(came), 0);
  const total = (of: 'drinks' | 'seconds'): number | null =>
    tally.every((slot) => slot[of] === null)
      ? null
      : tally.reduce((sum, slot) => sum + (slot[of] ?? 0), 0);
  const [first, second] = [total('drinks'), total('seconds')];
  const said = `${guests} guests came in`;
  if (first === 0 && guests >= GUESTS_WITH_DRINKS)
    tell(
      last.row,
      'first drinks',
      '0',
      `are all first drinks of the morning, and ${said}`,
      'count them, or leave the column empty',
    );
  if (tally.some(({ came }) => came.at(-1)! > 0) || before.at(-1)! > 0) return;
  if (first !== null && first > MOST_EACH * Math.max(1, guests))
    tell(
      last.row,
      'first drinks',
      String(first),
      `are all first drinks of the morning, and only ${said}`,
      'count only those of parties that came in, once',
    );
  if (second !== null && second > guests + guestsOf(before))
    tell(
      last.row,
      'second drinks',
      String(second),
      `are all later drinks of the morning, and only ${said}`,
      'count only drinks that are ordered after the first',
    );
}

/** A list of holidays (CSV, RFC 4180): a date a line (ISO 8601) in the first column; a heading and further columns are read over. */
import type { PositionOf } from '../../scenario/read-scenario.js';
import { readDate } from '../../till/clock.js';
import { shownText, type TillFlaw } from '../../till/flaw.js';
import { HOLIDAY } from '../../till/kinds-of-day.js';
import type { TillMap } from '../../till/compile-map.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import { tillProblem } from './read-map.js';

type WithHolidays =
  | { readonly ok: true; readonly map: TillMap }
  | { readonly ok: false; readonly about: 'map' | 'holidays'; readonly flaws: readonly TillFlaw[] };

/** The map with the holidays, where there is a list of them. @param positionOf of the map's text */
export function datedMap(
  map: TillMap,
  mapName: string,
  positionOf: PositionOf,
  holidays: GivenFile | undefined,
): Result<TillMap> {
  if (holidays === undefined) return { ok: true, value: map };
  const dated = withHolidays(map, holidays);
  if (dated.ok) return { ok: true, value: dated.map };
  const [file, at] = dated.about === 'map' ? [mapName, positionOf] : [holidays.name, null];
  return { ok: false, problems: dated.flaws.map((flaw) => tillProblem(flaw, file, at)) };
}

/** The map with the holidays as its first kind of day. */
export function withHolidays(map: TillMap, { bytes }: GivenFile): WithHolidays {
  if (map.kinds.some(({ id }) => id === HOLIDAY))
    return {
      ok: false,
      about: 'map',
      flaws: [
        {
          about: 'map',
          path: ['kinds', HOLIDAY],
          value: undefined,
          rule: 'names holidays, and so does the list of holidays',
          remedy: 'keep one of the two',
        },
      ],
    };
  const lines = new TextDecoder()
    .decode(bytes)
    .replace(/^\uFEFF/, '')
    .split(/\r\n?|\n/);
  const dates: number[] = [];
  const flaws: TillFlaw[] = [];
  const tell = (line: number, value: unknown, rule: string, remedy: string): void => {
    flaws.push({ about: 'export', path: [], value, rule, remedy, line });
  };
  lines.forEach((text, at) => {
    const first = text
      .split(/[,;\t]/)[0]!
      .trim()
      .replace(/^"(.*)"$/, '$1');
    if (text.trim() === '') return;
    const day = readDate(first, 'iso');
    if (day !== null) dates.push(day);
    else if (at > 0 || /\d/.test(first))
      tell(
        at + 1,
        shownText(first),
        'is not a day of the calendar',
        'write a day a line as year-month-day, such as 2026-05-31',
      );
  });
  if (flaws.length === 0 && dates.length === 0)
    tell(1, undefined, 'holds no date', 'write a day a line as year-month-day, such as 2026-05-31');
  return flaws.length > 0
    ? { ok: false, about: 'holidays', flaws }
    : {
        ok: true,
        map: {
          ...map,
          kinds: [{ id: HOLIDAY, weekdays: [], between: [], dates }, ...map.kinds],
        },
      };
}

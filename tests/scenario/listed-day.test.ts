import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readListedDays } from '../../src/scenario/listed-day-schema.js';
import { formatProblem } from '../../src/scenario/problems.js';

const day = {
  days: [
    {
      parties: [
        {
          minute: 12.5,
          size: 2,
          staysIn: true,
          dwellMinutes: 38.2,
          drinks: [{ drink: 'tea', makeMinutes: 0.7 }],
          seconds: [{ drink: 'tea', makeMinutes: 0.8, shareOfDwell: 0.4 }],
        },
        { minute: 13, size: 1, staysIn: false, drinks: [{ drink: 'tea', makeMinutes: 0.7 }] },
      ],
    },
  ],
};
const text = JSON.stringify(day, null, 1);
const problems = (changed: string): string[] => {
  const read = readListedDays(changed, 'd.json', ['tea', 'flat-white']);
  return read.ok ? [] : read.problems.map(formatProblem);
};
const lineOf = (part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

describe('listed days', () => {
  it('are read as they stand, with no second drinks and no dwell where none are given', () => {
    const read = readListedDays(text, 'd.json', ['tea']);
    expect(read.ok && read.days[0]!.parties).toEqual([
      day.days[0]!.parties[0],
      { ...day.days[0]!.parties[1], dwellMinutes: 0, seconds: [] },
    ]);
  });

  it('of the worked examples are all accepted', () => {
    const worked = JSON.parse(
      readFileSync(new URL('../../shared/checks/tiny-days.json', import.meta.url), 'utf8'),
    ) as { days: { day: unknown; config: { menu: { id: string }[] } }[] };
    expect(worked.days.length).toBeGreaterThan(5);
    for (const { day: one, config } of worked.days)
      expect(
        readListedDays(
          JSON.stringify({ days: [one] }),
          'd.json',
          config.menu.map(({ id }) => id),
        ).ok,
      ).toBe(true);
  });

  it.each([
    [
      '"minute": 12.5',
      '"minute": -1',
      'days[0].parties[0].minute: -1 is negative: minutes after opening cannot be; write a number not below 0, without a unit',
    ],
    [
      '"size": 2',
      '"size": 0',
      'days[0].parties[0].size: 0 is too few guests; write a whole number from 1 to 99',
    ],
    [
      '"dwellMinutes": 38.2',
      '"dwellMinutes": "38 min"',
      'days[0].parties[0].dwellMinutes: "38 min" is text where a plain number (minutes of dwell) is needed; write a number not below 0, without a unit',
    ],
    [
      '"staysIn": true',
      '"staysIn": "yes"',
      'days[0].parties[0].staysIn: "yes" is neither true nor false; write true or false',
    ],
    [
      '"shareOfDwell": 0.4',
      '"shareOfDwell": 1.4',
      'days[0].parties[0].seconds[0].shareOfDwell: 1.4 is more than the whole dwell; write a number from 0 to 1',
    ],
    [
      '"dwellMinutes": 38.2',
      '"dwelMinutes": 38.2',
      'days[0].parties[0].dwelMinutes: "dwelMinutes" is not a field here; did you mean "dwellMinutes"?',
    ],
  ])('%s → %s', (from, to, problem) => {
    const [first] = problems(text.replace(from, () => to));
    expect(first).toMatch(new RegExp(`^d\\.json:${lineOf(from)}:\\d+: `));
    expect(first!.replace(/^d\.json:\d+:\d+: /, '')).toBe(problem);
  });

  it('tell unknown drinks together with all else that is wrong', () => {
    const both = problems(text.replace('"tea"', '"flat-wite"').replace('"size": 2', '"size": 0'));
    expect(both).toHaveLength(2);
    expect(both.join()).toMatch(
      /size: 0 is too few guests.*drink: "flat-wite" is not on the menu/s,
    );
  });

  it('name an unknown drink with the nearest on the menu, and a broken file', () => {
    expect(problems(text.replace('"tea"', '"flat-wite"'))[0]).toMatch(
      /days\[0\]\.parties\[0\]\.drinks\[0\]\.drink: "flat-wite" is not on the menu; did you mean "flat-white"\?$/,
    );
    expect(problems('{ "days": [')[0]).toMatch(/^d\.json:1:1: cannot be read as JSON/);
    expect(problems('{ "days": [] }')[0]).toMatch(/days: is empty; give at least one day$/);
    expect(problems('[]')[0]).toMatch(/is a list where a group of fields is needed/);
  });
});

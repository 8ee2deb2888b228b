/** Kinds of day: known ones are recovered, and none is named where all days are one. */
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { withHolidays } from '../../src/questions/till/holidays.js';
import { seasonSentences } from '../../src/questions/till/tell-kinds.js';
import { kindsOf } from '../../src/scenario/kinds.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { holm } from '../../src/statistics/holm.js';
import { applyTill } from '../../src/till/apply-till.js';
import { dayOf } from '../../src/till/clock.js';
import { fitKinds } from '../../src/till/fit-kinds.js';
import { kindOfDay } from '../../src/till/kinds-of-day.js';
import { seasonOf } from '../../src/till/season.js';
import { must, readMap } from './sales.js';
import { baseOfKinds, tillOfKinds, weekendMap } from './till-of-kinds.js';

const DEALS = 299;

describe('kinds of day', () => {
  it('are found where weekends have more parties, at other times, and the factor lies in its interval', () => {
    let inside = 0;
    const tills = 12;
    for (let at = 0; at < tills; at += 1) {
      const found = must(
        fitKinds(tillOfKinds(`factor ${at}`, 12, { times: 1.6 }), weekendMap, 'made up', DEALS),
      );
      const [weekend] = found.compared;
      expect(weekend!.differs).toContain('volume');
      if (weekend!.times.low <= 1.6 && 1.6 <= weekend!.times.high) inside += 1;
      expect(found.base).toMatchObject({ id: 'weekday', days: 60 });
      // The file's own days are weekdays alone.
      expect(found.fit.days).toBe(60);
    }
    // 95 % of 12 within three standard errors.
    expect(inside).toBeGreaterThanOrEqual(9);
    const later = must(
      fitKinds(tillOfKinds('later', 12, { late: true }), weekendMap, 'made up', DEALS),
    );
    expect(later.compared[0]!.differs).toEqual(['shape']);
  });

  it('are not named on days that are all one in more than 5 % of tills and error', () => {
    const tills = 80;
    let named = 0;
    for (let at = 0; at < tills; at += 1) {
      const found = must(fitKinds(tillOfKinds(`one ${at}`, 8, {}), weekendMap, 'made up', DEALS));
      if (found.fitted.length > 0) named += 1;
      else expect(found.fit.days).toBe(56);
    }
    // Three standard errors above 5 % of 80.
    expect(named / tills).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / tills));
  });

  it('become those of the scenario, with only what differs, and the year of the export', () => {
    const kinds = must(
      fitKinds(tillOfKinds('year', 12, { times: 1.6 }), weekendMap, 'made up', DEALS),
    );
    const applied = must(applyTill(baseOfKinds, kinds.fit, kinds));
    const read = readScenario(applied.text, 'new.yaml');
    if (!read.ok) throw new Error(read.problems[0]!.message);
    expect(kindsOf(read.scenario).map(({ id, daysAYear }) => [id, daysAYear])).toEqual([
      ['weekday', 261],
      ['weekend', 104],
    ]);
    const { change } = (
      parse(applied.text) as { calendar: { kinds: { weekend: { change: object } } } }
    ).calendar.kinds.weekend;
    expect(Object.keys(change)).toEqual(['arrivals.slots.parties']);
    const parties = (kind: number): number => {
      const arrivals = kindsOf(read.scenario)[kind]!.scenario.arrivals as {
        slots: { parties: readonly number[] };
      };
      return arrivals.slots.parties.reduce((sum, one) => sum + one, 0);
    };
    expect(parties(1) / parties(0)).toBeCloseTo(kinds.compared[0]!.times.times, 2);
    expect(applied.notes.join(' ')).toContain('they replace costs.daysAYear');
  });

  it('with too few days are fitted with the others and named', () => {
    const map = {
      ...weekendMap,
      kinds: [{ id: 'fair', weekdays: [], between: [], dates: [20_003, 20_010] }],
    };
    const found = must(fitKinds(tillOfKinds('few', 8, {}), map, 'made up', DEALS));
    expect(found.tooFew).toEqual([{ id: 'fair', days: 2 }]);
    expect(found.fit.days).toBe(56);
    expect(found.fitted).toEqual([]);
  });

  it('give a day to a date before a day of the week, and to the first that names it', () => {
    const on = (id: string, given: object) => ({
      id,
      weekdays: [],
      between: [],
      dates: [],
      ...given,
    });
    const kinds = [on('market', { weekdays: [2] }), on('fair', { dates: [6] })];
    // Day 6 was Wednesday, 7 January 1970.
    expect([6, 13, 7].map((day) => kindOfDay(kinds, day))).toEqual(['fair', 'market', 'usual']);
  });

  it('that a map gets wrong are refused, each with its place', () => {
    const { told } = readMap(`columns: { date: Date, item: Item }
dates: iso
drinks: { Tea: tea }
days: { week: any }
kinds: { market: {}, usual: { week: [mon] }, fair: { between: [{ from: 2026-05-03, to: 2026-05-01 }] } }
hours: { from: "08:00", to: "16:00" }
`);
    expect(told.join('\n')).toMatch(/kinds\.market: does not say which days these are/);
    expect(told.join('\n')).toMatch(/kinds\.usual: is the name of the days that no kind names/);
    expect(told.join('\n')).toMatch(/kinds\.fair\.between\[0\]: ends before it starts/);
  });

  it('may be a list of holidays, read over its heading and further columns, or refused with the line', () => {
    const list = (text: string) =>
      withHolidays(weekendMap, { name: 'days.csv', bytes: new TextEncoder().encode(text) });
    const read = list('date,name\r\n2026-05-01,Labour Day\r\n\r\n"2026-12-26"\r\n');
    expect(read.ok && read.map.kinds[0]).toEqual({
      id: 'holiday',
      weekdays: [],
      between: [],
      dates: [dayOf(2026, 5, 1), dayOf(2026, 12, 26)],
    });
    expect(list('2026-05-01\n2026-02-30\n1 May\n')).toMatchObject({
      ok: false,
      flaws: [{ line: 2 }, { line: 3, value: '1 May' }],
    });
    expect(list('date\n')).toMatchObject({ ok: false, flaws: [{ rule: 'holds no date' }] });
  });
});

describe('the year', () => {
  const levels = (days: number, level: (day: number) => number) =>
    Array.from({ length: days }, (_, at) => ({ day: 20_000 + at, level: level(at) }));
  const wave = (at: number): number => 0.02 * Math.sin(at * 7.3);

  it('has a trend where there is one, and says where the last weeks stand', () => {
    const season = seasonOf(levels(140, (at) => 1 + at / 200 + wave(at)));
    expect(season.trend).toMatchObject({ found: true });
    expect(season.trend!.recent).toBeGreaterThan(1.15);
    expect(seasonSentences(season)[0]).toMatch(/^Trend: 2\.\d % more parties with every week/);
    expect(seasonSentences(seasonOf(levels(140, wave)))[0]).toMatch(/^Trend: none/);
  });

  it('has a season where months differ, and says what less than two years cannot', () => {
    const december = (at: number): number => {
      const month = new Date((20_000 + at) * 86_400_000).getUTCMonth();
      return 1 + (month === 11 ? 0.5 : 0) + wave(at);
    };
    const one = seasonOf(levels(360, december));
    expect(one.months).toMatchObject({ found: true, busiest: { month: 11 }, returns: false });
    expect(seasonSentences(one)[1]).toContain('it takes two years');
    expect(seasonOf(levels(760, december)).months).toMatchObject({ returns: true });
  });

  it('of a few weeks is too short, and says so', () => {
    expect(seasonSentences(seasonOf(levels(30, wave)))).toEqual([
      'Days of 5 weeks are too few to tell a trend (it takes 8) or a season (it takes 26).',
    ]);
  });
});

describe('several tests at once', () => {
  it('stand as worked out by hand (Holm)', () => {
    // 0.01 < 0.05/4; 0.015 < 0.05/3; 0.03 is not below 0.05/2, so 0.04 falls too.
    expect(holm([0.04, 0.01, 0.03, 0.015])).toEqual([false, true, false, true]);
    expect(holm([])).toEqual([]);
  });
});

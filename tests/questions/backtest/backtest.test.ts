/** The backtest: recorded days keep what was recorded, intervals and causes behave, and a known drift is found. */
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { Stream, streamKey } from '../../../src/engine/streams.js';
import { causesOf, effectiveDays } from '../../../src/questions/backtest/judged.js';
import { shareInterval } from '../../../src/statistics/share-interval.js';
import { recordedDay } from '../../../src/questions/backtest/recorded.js';
import { recordedDaysChart } from '../../../src/questions/backtest/charts/recorded-days.js';
import { backtestStudy } from '../../../src/questions/backtest/study.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { exactBinomialInterval } from '../../../src/statistics/exact-binomial-interval.js';
import { renderSvg } from '../../../src/tell/render-svg.js';
import { fixtureContext } from '../../tell/fixture.js';
import { datedMap } from '../../../src/questions/till/holidays.js';
import { isoDate } from '../../../src/till/clock.js';
import { levelled, simulatedTill, smallBase, smallMap } from './simulated-till.js';
import { baseOfKinds, tillOfKinds, weekendMap } from '../../till/till-of-kinds.js';
import { backtestBlocks } from '../../../src/questions/backtest/tell.js';
import { writeText } from '../../../src/tell/write-text.js';

const study = (drift: number, days = 24) =>
  backtestStudy({
    text: smallBase,
    map: smallMap,
    tally: simulatedTill('test', days, drift),
    file: 'simulated',
    runner: inThisThread(),
    level: 0.9,
    seed: '1',
    days: 100,
    draws: 10,
  });

describe('a recorded day', () => {
  it('has the parties, drinks and items of the till, each party in its slot', () => {
    const read = readScenario(smallBase, 'small');
    if (!read.ok) throw new Error('not read');
    const [day] = [...simulatedTill('day', 1, 1).days.values()];
    const stream = new Stream(streamKey('1', 'day'));
    const more = { ...day!, drinks: day!.parties.map((one) => (one === 0 ? 0 : one + 2)) };
    const { parties } = recordedDay(
      {
        day: { ...more, byGroup: [more.drinks.reduce((a, b) => a + b, 0)] },
        slotMinutes: 15,
        groups: smallMap.groups,
      },
      compile(read.scenario),
      stream,
    );
    const inSlot = (slot: number) =>
      parties.filter(({ minute }) => Math.floor(minute / 15) === slot);
    expect(day!.parties.map((_, slot) => inSlot(slot).length)).toEqual(day!.parties);
    expect(
      day!.parties.map((_, slot) =>
        inSlot(slot).reduce((sum, { drinks }) => sum + drinks.length, 0),
      ),
    ).toEqual(more.drinks);
  });
});

describe('the share of recorded days', () => {
  it('has the exact binomial interval where whole days are safe or not', () => {
    for (const [safe, days] of [
      [9, 10],
      [10, 10],
      [0, 7],
      [3, 12],
    ] as const) {
      const { low, high } = exactBinomialInterval(safe, days);
      const found = shareInterval(safe / days, days);
      expect(found.low).toBeCloseTo(low, 9);
      expect(found.high).toBeCloseTo(high, 9);
    }
  });

  it('is worth fewer days where one is like the next, and never more', () => {
    expect(effectiveDays([1, 2, 3, 4, 5, 6, 7, 8])).toBeLessThan(4);
    expect(effectiveDays([1, 9, 1, 9, 1, 9])).toBe(6);
  });
});

describe('causes', () => {
  it('name weekdays where they differ, and a wider spread where there is one', () => {
    const of = (seed: string, scale: (at: number) => number) =>
      [...simulatedTill(seed, 24, 1).days.values()].map((day, at) => ({
        ...day,
        day: 20_001 + at,
        parties: day.parties.map((one) => Math.round(one * scale(at))),
      }));
    const found = (days: ReturnType<typeof of>) =>
      causesOf(levelled(days), days.length - 12)
        .causes.filter((one) => one.found)
        .map(({ cause }) => cause);
    expect(found(of('a', (at) => (at % 7 === 0 ? 3 : 1)))).toContain('weekdays');
    expect(found(of('b', (at) => (at < 12 ? 1 : at % 2 === 0 ? 0.2 : 2)))).toContain('spread');
  });
});

describe('a backtest', () => {
  it('fits only days before those it tries, finds a known drift, and says how much more would have held', async () => {
    const found = await study(2.5);
    if (!found.ok) throw new Error(JSON.stringify(found.flaws));
    const { origins, verdict, causes, busier, factor, tried } = found.value;
    expect(tried).toBe(12);
    for (const origin of origins)
      expect(origin.tried.every(({ date }) => date > origin.to)).toBe(true);
    expect(causes.find(({ cause }) => cause === 'drift')).toMatchObject({ found: true });
    expect(busier).toBeGreaterThan(1.3);
    expect(factor).toBeGreaterThan(1);
    expect(['tooOptimistic', 'notKnown']).toContain(verdict);
    const drawn = recordedDaysChart(found.value, fixtureContext());
    const dates = origins.flatMap((origin) => origin.tried.map(({ date }) => date));
    expect(drawn.table.rows.map(([date]) => date)).toEqual(dates);
    // The picture's text alternative says what was promised and what came of it.
    expect(drawn.title).toMatch(/^Safe on \d.* of 12 recorded days; promised: 90\s%$/);
    const svg = await renderSvg(drawn.spec);
    for (const date of dates) expect(svg).toContain(`<title>${date}: `);
  });

  it('sizes for kinds of day, holds each to the promise, and takes no weekend for a cause', async () => {
    const asking = {
      text: baseOfKinds,
      tally: tillOfKinds('kinds', 8, { times: 2 }),
      file: 'simulated',
      runner: inThisThread(),
      level: 0.9,
      seed: '1',
      days: 60,
      draws: 6,
    };
    const [apart, together] = await Promise.all([
      backtestStudy({ ...asking, map: weekendMap }),
      backtestStudy({ ...asking, map: { ...weekendMap, kinds: [] } }),
    ]);
    if (!apart.ok || !together.ok) throw new Error('not answered');
    const { kinds, origins, causes } = apart.value;
    expect(kinds.map(({ kind }) => kind).toSorted()).toEqual(['weekday', 'weekend']);
    expect(kinds.reduce((sum, one) => sum + one.days, 0)).toBe(apart.value.tried);
    // As many more parties are expected on weekends as come; without kinds, the same on all days.
    for (const { tried } of origins)
      for (const { date, kind, expected } of tried) {
        const weekend = [0, 6].includes(new Date(`${date}T00:00:00Z`).getUTCDay());
        expect(kind).toBe(weekend ? 'weekend' : 'weekday');
        expect(expected > 45).toBe(weekend);
      }
    const found = (of: typeof causes) => of.filter((one) => one.found).map(({ cause }) => cause);
    expect(found(together.value.causes)).toContain('weekdays');
    expect(found(causes)).not.toContain('weekdays');
    expect(together.value.kinds).toEqual([]);
    // The kind that binds decides: its days are safer than where all days were fitted together.
    const safeOn = (days: typeof origins) => {
      const own = days
        .flatMap(({ tried }) => tried)
        .filter(({ date }) => [0, 6].includes(new Date(`${date}T00:00:00Z`).getUTCDay()));
      return own.reduce((sum, { safe }) => sum + safe, 0) / own.length;
    };
    expect(safeOn(origins)).toBeGreaterThan(safeOn(together.value.origins));
    const said = writeText(backtestBlocks(apart.value, fixtureContext()), {
      width: 200,
      all: true,
    });
    expect(said).toMatch(/By kind of day: nothing may run out on 90\s% of the days of each/);
    expect(said).toMatch(/weekend +8 /);
  });

  it('takes a list of holidays, says what they count as, and refuses a bad one with the line and the remedy', async () => {
    const tally = tillOfKinds('holidays', 4, {});
    const dates = [...tally.days.keys()].filter((_, at) => at % 2 === 0);
    const isoDates = (days: readonly number[]) => days.map((day) => isoDate(day)).join('\n');
    const withList = (text: string) =>
      datedMap({ ...weekendMap, kinds: [] }, 'map.yaml', () => ({ line: 1, column: 1 }), {
        name: 'holidays.csv',
        bytes: new TextEncoder().encode(text),
      });
    const told = async (text: string) => {
      const map = withList(text);
      if (!map.ok) throw new Error('the list was refused');
      const found = await backtestStudy({
        text: baseOfKinds,
        map: map.value,
        // Three times as many parties on every other day: the list alone says which.
        tally: {
          ...tally,
          days: new Map(
            [...tally.days].map(([day, one]) => [
              day,
              dates.includes(day) ? { ...one, parties: one.parties.map((few) => 3 * few) } : one,
            ]),
          ),
        },
        file: 'simulated',
        runner: inThisThread(),
        level: 0.9,
        seed: '1',
        days: 8,
        draws: 1,
      });
      if (!found.ok) throw new Error(JSON.stringify(found.flaws));
      return found.value;
    };
    const many = await told(isoDates(dates));
    // Seven are tried; two of them with seven days before, which is one too few.
    expect(many.kinds.find(({ kind }) => kind === 'holiday')).toMatchObject({ days: 5 });
    expect(many.joined).toEqual([]);
    const few = await told(isoDates(dates.slice(0, 3)));
    expect(few.joined).toEqual([{ kind: 'holiday', days: 3 }]);
    expect(writeText(backtestBlocks(few, fixtureContext()), { width: 200, all: true })).toContain(
      'Days of the kind holiday (3 of those used) count as other days: they are too few to size for apart.',
    );
    const bad = withList('date\n1 May\n');
    if (bad.ok) throw new Error('was not refused');
    const { file, line, message } = bad.problems[0]!;
    expect([file, line, message]).toEqual([
      'holidays.csv',
      2,
      '"1 May" is not a day of the calendar; write a day a line as year-month-day, such as 2026-05-31',
    ]);
  });

  it('is refused with too few days, with the remedy', async () => {
    const found = await study(1, 10);
    expect(found).toMatchObject({ ok: false, flaws: [{ about: 'map', path: ['days'] }] });
  });
});

import { describe, expect, it } from 'vitest';
import { meanDayOf } from '../../../src/questions/size/year.js';
import { sizedHouse } from './houses.js';

const corner = '4-bakery-corner';
const weekday = { daysAYear: 250 };
const days = { days: 120, certifyOn: 200 };
const sized = (kinds: unknown, options = {}) =>
  sizedHouse(corner, { 'costs.daysAYear': 302, 'calendar.kinds': kinds }, { ...days, ...options });
const sunday = (times: string) => ({
  daysAYear: 52,
  scale: { 'arrivals.peak.guests': times },
  change: { 'guests.staysIn': '60 %' },
});

describe('a stock for several kinds of day', () => {
  it('of one kind is that of the file without kinds, to the byte', async () => {
    const one = await sizedHouse(
      corner,
      { 'costs.daysAYear': 250, 'calendar.kinds': { weekday } },
      days,
    );
    expect(JSON.stringify(one)).toBe(
      JSON.stringify(await sizedHouse(corner, { 'costs.daysAYear': 250 }, days)),
    );
  });

  it('holds on each kind, tells the lowest, and never costs less with more guests on one', async () => {
    let before = (await sizedHouse(corner, {}, days)).cost;
    for (const times of ['100 %', '150 %', '220 %']) {
      const { cost, kinds, certified, tightestKind, stock } = await sized({
        weekday,
        sunday: sunday(times),
      });
      expect(cost).toBeGreaterThanOrEqual(before);
      before = cost;
      const lowest = kinds!.toSorted((a, b) => a.certified!.level - b.certified!.level)[0]!;
      expect(certified).toEqual(lowest.certified);
      expect(kinds!.find(({ id }) => id === tightestKind)!.certified).toEqual(lowest.certified);
      // Measured again, on days of which none was chosen or certified on.
      const pieces = Object.fromEntries(stock.map((line) => [line.ware, line.pieces]));
      const again = await sized({ weekday, sunday: sunday(times) }, { stock: pieces, days: 300 });
      for (const kind of again.kinds!) expect(kind.certified!.high).toBeGreaterThanOrEqual(0.95);
    }
  });

  it('has the year of each kind by its days', async () => {
    const answer = await sized({ weekday, sunday: sunday('200 %') });
    const [own, other] = answer.kinds!;
    meanDayOf(answer).uses.forEach(({ aDay }, ware) =>
      expect(aDay * 302).toBeCloseTo(250 * own!.uses[ware]!.aDay + 52 * other!.uses[ware]!.aDay, 6),
    );
    expect(other!.guests.arrived).toBeGreaterThan(1.5 * own!.guests.arrived);
  });

  it('is assured on every kind, each with its part of the error', async () => {
    const { kinds, assured, certified } = await sizedHouse(
      corner,
      { 'costs.daysAYear': 302, 'calendar.kinds': { weekday, sunday: sunday('150 %') } },
      { days: 300, certifyOn: undefined, confidence: 0.9, level: 0.85 } as never,
    );
    expect(assured!.held).toBe(true);
    for (const kind of kinds!) expect(kind.certified!.low).toBeGreaterThanOrEqual(0.85);
    expect(certified!.low).toBe(Math.min(...kinds!.map((kind) => kind.certified!.low)));
  });
});

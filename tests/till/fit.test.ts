import { describe, expect, it } from 'vitest';
import { isoDate } from '../../src/till/clock.js';
import { fitTill } from '../../src/till/fit-till.js';
import {
  countsMap,
  drawTable,
  drawTickets,
  firstDay,
  fitOf,
  mapFor,
  mustMap,
  plainForm,
  rushTruth,
  tallyOf,
  writeCounts,
  writeExport,
  type Ticket,
  type Truth,
} from './sales.js';

const plainMap = mustMap(mapFor(plainForm));
const truth: Truth = { ...rushTruth, days: 80 };
const tickets = drawTickets(truth, 'recovery');

describe('a fit', async () => {
  const fit = await fitOf(writeExport(tickets, plainForm), plainMap);
  const cv = 1 / Math.sqrt(truth.shape);

  it('finds again the rates the sales were drawn from', () => {
    fit.slots.forEach((slot, at) => {
      const rate = truth.rates[at]!;
      const error = Math.sqrt((rate + cv ** 2 * rate ** 2) / truth.days);
      expect(Math.abs(slot.parties - rate)).toBeLessThan(4 * error);
      expect(slot.standardError / error).toBeGreaterThan(0.6);
      expect(slot.standardError / error).toBeLessThan(1.6);
    });
    const whole = truth.rates.reduce((sum, rate) => sum + rate);
    expect(fit.partiesADay.low).toBeLessThan(whole);
    expect(fit.partiesADay.high).toBeGreaterThan(whole);
  });

  it('finds again the spread of days', () => {
    expect(fit.dayFactor.low).toBeLessThan(cv);
    expect(fit.dayFactor.high).toBeGreaterThan(cv);
    expect(Math.abs(fit.dayFactor.cv - cv)).toBeLessThan(0.07);
  });

  it('finds again party sizes and menu', () => {
    const parties = fit.partiesADay.mean * fit.days;
    fit.partySize.forEach((share, at) => {
      const p = truth.sizes[at]!;
      expect(Math.abs(share - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / parties));
    });
    expect(fit.groups.map((group) => group.drinks)).toEqual([
      ['flat-white'],
      ['tea'],
      ['hot-chocolate'],
    ]);
    fit.groups.forEach(({ share }, at) => {
      const p = truth.menu[at]!;
      expect(Math.abs(share - p)).toBeLessThan(
        4 * Math.sqrt((p * (1 - p)) / (parties * fit.drinksAParty)),
      );
    });
    expect(fit.groups.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('says that it fits, as it does', () => {
    expect(fit.goodness.table!.p).toBeGreaterThan(0.001);
    expect(fit.goodness.totals!.p).toBeGreaterThan(0.001);
    expect(fit.goodness.beyondDayLevel).toBeGreaterThan(0.9);
    expect(fit.goodness.beyondDayLevel).toBeLessThan(1.1);
  });

  it('has bands that hold some nine days in ten', () => {
    const table = drawTable({ ...truth, days: 400 }, 'fresh days');
    const inside = table
      .flatMap((row) =>
        row.map(
          (count, at) => count >= fit.slots[at]!.fitted.low && count <= fit.slots[at]!.fitted.high,
        ),
      )
      .filter(Boolean).length;
    expect(inside / table.length / truth.rates.length).toBeGreaterThan(0.9);
    expect(inside / table.length / truth.rates.length).toBeLessThan(0.98);
  });

  it('is the same from a counted report, but for party sizes worked out from sums', async () => {
    const other = await fitOf(writeCounts(tickets), mustMap(countsMap));
    const { partySize, sizesBy, reading: _, groups, ...rest } = fit;
    const { partySize: workedOut, sizesBy: sums, reading: __, groups: columns, ...same } = other;
    expect(same).toEqual(rest);
    expect(columns.map(({ count, drinks }) => ({ count, drinks }))).toEqual(
      groups.map(({ count, drinks }) => ({ count, drinks })),
    );
    expect([sizesBy, sums]).toEqual(['tickets', 'sums']);
    // Nearly 6,000 parties seen four or five at a time: a standard error of some 0.01 to 0.015.
    partySize.forEach((share, at) =>
      expect(Math.abs((workedOut[at] ?? 0) - share)).toBeLessThan(0.05),
    );
    expect(workedOut.reduce((sum, share, at) => sum + share * (at + 1), 0)).toBeCloseTo(
      fit.drinksAParty,
      3,
    );
  });

  it('joins quarter hours into longer slots', async () => {
    const half = await fitOf(
      writeExport(tickets, plainForm),
      mustMap(mapFor(plainForm, 'every: 30 min')),
    );
    half.slots.forEach((slot, at) =>
      expect(slot.parties).toBeCloseTo(
        fit.slots[2 * at]!.parties + fit.slots[2 * at + 1]!.parties,
        9,
      ),
    );
    expect(half.dayFactor).toEqual(fit.dayFactor);
    const counted = await fitOf(writeCounts(tickets), mustMap(`${countsMap}every: 1 h`));
    expect(counted.slots.length).toBe(4);
    expect(counted.slots[0]!.parties).toBeCloseTo(
      half.slots[0]!.parties + half.slots[1]!.parties,
      9,
    );
  });
});

/** Tickets with one tea each, so many in each quarter hour from 08:00, on each of some days. */
function plainDays(days: number, perSlot: (day: number, slot: number) => number): Ticket[] {
  return Array.from({ length: days }, (_, day) =>
    Array.from({ length: 16 }, (__, slot) =>
      Array.from({ length: perSlot(day, slot) }, (___, at): Ticket => ({
        day: firstDay + day,
        second: 8 * 3600 + slot * 900 + at,
        items: ['Tea'],
      })),
    ).flat(),
  ).flat();
}

const fitDays = async (
  sales: readonly Ticket[],
  rest = '',
): Promise<ReturnType<typeof fitTill>> => {
  const map = mustMap(
    mapFor(plainForm, rest).replace(
      'days: { week: any }',
      rest.includes('days:') ? '' : 'days: { week: any }',
    ),
  );
  return fitTill(await tallyOf(writeExport(sales, plainForm), map), map, 'sales.csv');
};

describe('the days', () => {
  it('of the kind are chosen by weekday, spell and exceptions', async () => {
    // 2020-01-01 was a Wednesday: 56 days are eight of each day of the week.
    const sales = plainDays(56, () => 3);
    const weekdays = await fitDays(sales, 'days: { week: weekdays }');
    expect(
      weekdays.ok && [
        weekdays.value.days,
        weekdays.value.chosen.otherKind,
        weekdays.value.from,
        weekdays.value.to,
      ],
    ).toEqual([40, 16, '2020-01-01', '2020-02-25']);
    const tuesdays = await fitDays(sales, 'days: { week: [tue] }');
    expect(tuesdays.ok && [tuesdays.value.days, tuesdays.value.kind, tuesdays.value.from]).toEqual([
      8,
      'Tuesday',
      '2020-01-07',
    ]);
    const some = await fitDays(
      sales,
      'days: { week: any, between: [{ from: 2020-01-01, to: 2020-01-10 }, { from: 2020-02-01, to: 2020-02-05 }], except: [2020-01-02, 2020-02-05] }',
    );
    expect(
      some.ok && [
        some.value.days,
        some.value.chosen.excepted,
        some.value.chosen.closed,
        some.value.chosen.otherKind,
      ],
    ).toEqual([13, ['2020-01-02', '2020-02-05'], 0, 41]);
  });

  it('must be eight or more', async () => {
    const seven = await fitDays(plainDays(7, () => 3));
    expect(
      seven.ok ? [] : seven.flaws.map(({ path, rule }) => `${path.join('.')} ${rule}`),
    ).toEqual([
      'days fits 7 days of the export (any day of the week), but under 8 days the difference between days cannot be told from chance',
    ]);
    expect((await fitDays(plainDays(8, () => 3))).ok).toBe(true);
    const lessExcepted = await fitDays(
      plainDays(56, () => 3),
      'days: { week: [tue], except: [2020-01-07] }',
    );
    expect(lessExcepted.ok ? '' : lessExcepted.flaws[0]!.rule).toContain(
      '7 days of the export (Tuesday, with 1 excepted, 48 of another kind left out)',
    );
  });

  it('without a row are closed, and no days of no trade', async () => {
    const fit = await fitDays(plainDays(30, (day) => (day % 10 === 4 ? 0 : 3)));
    expect(fit.ok && [fit.value.days, fit.value.chosen.closed, fit.value.partiesADay.mean]).toEqual(
      [27, 3, 48],
    );
  });

  it('with a long silence are partial and left out, unless the map keeps them', async () => {
    // Day 3 closes at 10:30; day 5 opens at 08:45, too short a silence to tell (nine tickets); day 7 misses 09:00 to 10:15.
    const sales = plainDays(20, (day, slot) =>
      (day === 3 && slot >= 10) || (day === 5 && slot < 3) || (day === 7 && slot >= 4 && slot < 9)
        ? 0
        : 3,
    );
    const fit = await fitDays(sales);
    expect(
      fit.ok && fit.value.chosen.partial.map(({ date, from, to }) => [date, from, to]),
    ).toEqual([
      [isoDate(firstDay + 3), '10:30', '12:00'],
      [isoDate(firstDay + 7), '09:00', '10:15'],
    ]);
    expect(fit.ok && fit.value.days).toBe(18);
    const kept = await fitDays(sales, 'partialDays: keep');
    expect(kept.ok && [kept.value.days, kept.value.chosen.partial.length]).toEqual([20, 0]);
  });

  it('of a quiet house are whole, however long the silence', async () => {
    const fit = await fitDays(plainDays(20, (day, slot) => (slot === day % 16 ? 1 : 0)));
    expect(fit.ok && [fit.value.days, fit.value.partiesADay.mean, fit.value.dayFactor.cv]).toEqual([
      20, 1, 0,
    ]);
  });

  it('without a drink in the hours fit nothing', async () => {
    const fit = await fitDays(
      plainDays(10, () => 3).map((ticket) => ({ ...ticket, items: ['Bread'] })),
    );
    expect(fit.ok ? '' : fit.flaws[0]!.rule).toBe(
      'are on no ticket of these days between 08:00 and 12:00',
    );
  });
});

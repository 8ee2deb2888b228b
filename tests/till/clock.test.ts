import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayOf,
  isoDate,
  readDate,
  readTime,
  splitMoment,
  weekdayNames,
  weekdayOf,
} from '../../src/till/clock.js';

describe('dates', () => {
  it('come back the same in every order they are written in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 80_000 }),
        fc.constantFrom('/', '.', '-'),
        (day, mark) => {
          const [year, month, date] = isoDate(day).split('-');
          expect(readDate(`${year}-${month}-${date}`, 'iso')).toBe(day);
          expect(readDate(`${year}${month}${date}`, 'iso')).toBe(day);
          expect(readDate([date, month, year].join(mark), 'day-first')).toBe(day);
          expect(readDate([month, date, year].join(mark), 'month-first')).toBe(day);
        },
      ),
      { seed: 20 },
    );
  });

  it('are never read in another order than the stated one', () => {
    expect(isoDate(readDate('03/04/2017', 'day-first')!)).toBe('2017-04-03');
    expect(isoDate(readDate('03/04/2017', 'month-first')!)).toBe('2017-03-04');
    expect(readDate('03/04/2017', 'iso')).toBeNull();
    expect(readDate('31/12/2017', 'month-first')).toBeNull();
    expect(readDate('2017-12-31', 'day-first')).toBeNull();
  });

  it.each([
    '2017-02-29',
    '2017-13-01',
    '2017-00-10',
    '2017-04-31',
    '2017-1-1',
    '1899-12-31',
    'Total',
    '',
  ])('%s is no day', (text) => {
    expect(readDate(text, 'iso')).toBeNull();
  });

  it('know leap years and short years', () => {
    expect(readDate('2000-02-29', 'iso')).not.toBeNull();
    expect(readDate('2100-02-29', 'iso')).toBeNull();
    expect(readDate('5.6.26', 'day-first')).toBe(dayOf(2026, 6, 5));
  });

  // Days of the week from common knowledge: 1 January 1970 was a Thursday, 1 January 2000 a Saturday; 25 December 2016 a Sunday.
  it.each([
    ['1970-01-01', 'thu'],
    ['2000-01-01', 'sat'],
    ['2016-12-25', 'sun'],
    ['2017-02-04', 'sat'],
  ])('%s was a %s', (date, weekday) => {
    expect(weekdayNames[weekdayOf(readDate(date, 'iso')!)]).toBe(weekday);
  });
});

describe('times', () => {
  it.each([
    ['00:00', 0],
    ['9:05', 32_700],
    ['09:05:30', 32_730],
    ['09.05', 32_700],
    ['12:00 am', 0],
    ['12:30 PM', 45_000],
    ['1:15:59 p.m.', 47_759],
    ['09:05:30.250', 32_730],
    ['09:05:30Z', 32_730],
    ['23:59:59+01:00', 86_399],
  ])('%s is second %i of the day', (text, second) => {
    expect(readTime(text)).toBe(second);
  });

  it.each(['24:00', '9', '13:00 pm', '0:10 am', '12:60', 'noon', '', '10:00:61'])(
    '"%s" is no time',
    (text) => {
      expect(readTime(text)).toBeNull();
    },
  );

  it.each([
    ['2017-04-03T09:58:11', '2017-04-03', '09:58:11'],
    ['3/4/2017, 9:58 AM', '3/4/2017', '9:58 AM'],
    ['03.04.2017  09:58', '03.04.2017', '09:58'],
    ['2017-04-03', '2017-04-03', ''],
  ])('%s holds a date and a time', (text, date, time) => {
    expect(splitMoment(text)).toEqual([date, time]);
  });
});

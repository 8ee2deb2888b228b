import { describe, expect, it } from 'vitest';
import { mapFor, mustMap, plainForm, readMap } from './sales.js';

describe('a map', () => {
  it('has quarter hours, commas and UTF-8 unless it says otherwise', () => {
    expect(mustMap(mapFor(plainForm))).toMatchObject({
      slotMinutes: 15,
      fromMinute: 480,
      toMinute: 720,
      encoding: 'utf-8',
      separator: 'comma',
      keepPartialDays: false,
      largestParty: 99,
    });
    expect(mustMap(mapFor(plainForm, 'every: 0.5 h')).slotMinutes).toBe(30);
  });

  it('may name several drinks where the till does not tell them apart', () => {
    const map = mustMap(
      mapFor(plainForm).replace(
        'TEA: tea',
        'Coffee: [flat-white, espresso]\n  Café: [espresso, flat-white, espresso]',
      ),
    );
    expect(map.groups).toContainEqual({
      drinks: ['flat-white', 'espresso'],
      items: ['Coffee', 'Café'],
    });
  });

  it('with many mistakes has them all told, each with its place and remedy', () => {
    const { told } = readMap(`colums: { date: Date }
columns: { date: Date, tme: Time, item: 3 }
dates: day_first
separator: coma
drinks: { Coffee: [], Tea: tea }
days: { week: [mon, teu], except: [2017-02-30] }
hours: { from: 8, to: "16:00" }
every: 15
largestParty: 0
`);
    expect(told.map((line) => line.split(' ')[0])).toEqual([
      'map.yaml:1:1:',
      'map.yaml:2:24:',
      'map.yaml:2:41:',
      'map.yaml:3:8:',
      'map.yaml:4:12:',
      'map.yaml:5:11:',
      'map.yaml:6:21:',
      'map.yaml:6:36:',
      'map.yaml:7:16:',
      'map.yaml:8:8:',
      'map.yaml:9:15:',
    ]);
    for (const near of ['columns', 'time', 'day-first', 'comma', 'tue'])
      expect(told.join('\n')).toContain(`did you mean "${near}"?`);
    expect(told.join('\n')).not.toMatch(/undefined|expected|invalid/i);
  });

  it.each([
    [
      'hours: { from: "16:00", to: "08:00" }',
      'hours: end at 08:00, which is not after their start at 16:00',
    ],
    ['hours: { from: "08:00", to: "08:00" }', 'hours: end at 08:00'],
    [
      'hours: { from: "08:00", to: "12:10" }',
      'every: "15 min" does not divide the hours from 08:00 to 12:10',
    ],
    ['every: 7 min', 'every: "7 min" does not divide the day'],
    ['every: 90 s', 'every: "1.5 min" does not divide the day'],
    ['largestParty: 100', 'largestParty: 100 is more than the 99 guests'],
    [
      'days: { week: any, between: [{ from: 2020-02-01, to: 2020-01-01 }] }',
      'days.between[0]: ends before it starts',
    ],
    ['drinks: { tea: a, " TEA": b }', 'drinks. TEA: " TEA" is the same item as "tea"'],
    ['drinks: {}', 'drinks: is empty'],
    ['drinks: [tea]', 'is not a map from items to drinks'],
    ['days: { week: holidays }', 'days.week: "holidays" does not name days of the week'],
    ['counts: { date: d, slot: s, every: 15 min, parties: p }', 'has both columns'],
  ])('with %s is refused', (line, problem) => {
    const key = `${line.split(':')[0]}:`;
    // Take out the line, or the block, that the odd one stands for.
    const kept = mapFor(plainForm)
      .split('\n')
      .filter((own) => !own.startsWith(key) && !(key === 'drinks:' && own.startsWith('  ')))
      .join('\n');
    const { told } = readMap(`${kept}\n${line}\n`);
    expect(told.length).toBe(1);
    expect(told[0]).toContain(problem);
  });

  it.each([
    ['every: 20 min', '"20 min" from 08:00 cannot be put together from counts every 15 min'],
    ['hours: { from: "08:05", to: "12:05" }', '"15 min" from 08:05 cannot be put together'],
    ['drinks: { tea*: tea }', '"tea*" has a * where a counted report needs the name of a column'],
  ])('of a counted report with %s is refused', (line, problem) => {
    const base =
      'counts: { date: d, slot: s, every: 15 min, parties: p }\ndates: iso\ndays: { week: any }\n';
    const rest = ['drinks: { tea: tea }', 'hours: { from: "08:00", to: "12:00" }']
      .filter((own) => own.split(':')[0] !== line.split(':')[0])
      .join('\n');
    expect(readMap(`${base}${rest}\n${line}`).told).toEqual([expect.stringContaining(problem)]);
  });

  it('needs columns or counts, and the order of dates', () => {
    const { told } = readMap(
      'drinks: { tea: tea }\ndays: { week: any }\nhours: { from: "08:00", to: "12:00" }\n',
    );
    expect(told.join('\n')).toContain(
      'dates: is missing; write one of iso, day-first, month-first',
    );
    expect(
      readMap(
        'dates: iso\ndrinks: { tea: tea }\ndays: { week: any }\nhours: { from: "08:00", to: "12:00" }\n',
      ).told.join('\n'),
    ).toContain('has neither columns (one row an item) nor counts');
  });
});

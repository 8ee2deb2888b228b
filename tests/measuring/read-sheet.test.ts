/** Sheets as people fill them in: good ones come back as they were, bad ones with every mistake in its place. */
import { describe, expect, it } from 'vitest';
import { readSheets, type SheetHouse } from '../../src/measuring/read-sheet.js';
import type { Sheet } from '../../src/measuring/sheet.js';

const house: SheetHouse = {
  name: 'Tern & Tide',
  fromMinute: 420,
  toMinute: 480,
  machines: 1,
  ware: ['cup', 'saucer'],
  today: '2026-06-30',
};
const head = 'sheet,cuptide measure\nhouse,Tern & Tide\ndate,2026-06-29\n';
const tallyHead =
  '\ntally\nfrom,in 1,in 2+,out 1,out 2+,away 1,away 2+,first drinks,second drinks,seats taken\n';
const good = `${head}${tallyHead}before,1,0
07:00,3,1,0,0,2,0,5,,1
07:15,2,0,3,0,,,2,1,
07:30,0,1,1,1,0,0,2,0,4
07:45,0,0,1,0,0,0,0,0,
08:00,,,,,,,,,
after,,,1,1
\nstays\nguests,served,left\n1,07:03,07:20\n2,7.40,08:10\n,,
\nrounds\nbegan,"first trip, s",pieces of first trip\n07:10,50,9\n07:21,44,
\nloads\nmachine,first piece waiting,started,"loading, s","cycle, s","unloading, s",pieces,full at\n1,07:11,07:20,31,120,28,12,16\n1,,,,,,,
\nware\nware,"brim, ml","rim, mm"\ncup,212,89.5\nsaucer,,150\n`;

const flawsOf = (text: string) => {
  const read = readSheets(text, house);
  return read.ok
    ? []
    : read.flaws.map(({ row, column, value, rule }) => `${row} ${column} ${value} ${rule}`);
};

describe('a filled sheet', () => {
  it('is read part by part; empty rows and rows after closing are left out', () => {
    const read = readSheets(good, house);
    if (!read.ok) throw new Error(JSON.stringify(read.flaws));
    const [value] = read.value as [Sheet];
    expect(value.tally.map(({ minute, came, went }) => [minute, came, went])).toEqual([
      [420, [3, 1], [0, 0]],
      [435, [2, 0], [3, 0]],
      [450, [0, 1], [1, 1]],
      [465, [0, 0], [1, 0]],
    ]);
    expect([value.before, value.after]).toEqual([
      [1, 0],
      [1, 1],
    ]);
    expect(value.stays.map(({ served, left }) => left - served)).toEqual([17, 30]);
    expect(value.loads).toMatchObject([
      { first: 431, started: 440, cycleSeconds: 120, pieces: 12 },
    ]);
    expect(value.ware).toMatchObject([
      { id: 'cup', brim: 212, rim: 89.5 },
      { id: 'saucer', brim: null },
    ]);
  });

  it('counts its lines rightly where they end in two ways', () => {
    const bad = good.replace('2,7.40,08:10', 'x,7.40,08:10');
    const [flaw, ...more] = flawsOf(bad);
    expect(more).toEqual([]);
    const mixed = `\n${bad.replaceAll('\n', '\r\n')}`;
    expect(flawsOf(mixed)).toEqual([flaw!.replace(/^\d+/, (row) => String(Number(row) + 1))]);
  });

  it('may come with semicolons and decimal commas', () => {
    const other = good
      .replaceAll('"brim, ml"', 'brim! ml')
      .replaceAll(/"([^"]*), (s|mm)"/g, '$1! $2')
      .replaceAll('89.5', '89!5')
      .replaceAll(',', ';')
      .replaceAll('!', ',');
    const read = readSheets(other, house);
    expect(read).toMatchObject({ ok: true, value: [{ ware: [{ rim: 89.5 }, {}] }] });
  });

  it('names a negative count, more out than in, a gap and a wrong day, all at once and by row', () => {
    const bad = good
      .replace('date,2026-06-29', 'date,2026-07-02')
      .replace('07:15,2,0,3,0', '07:15,-2,0,9,0')
      .replace('07:45,0,0,1', '07:50,0,0,1')
      .replace('1,07:03,07:20', '1,07:33,07:20')
      .replace('12,16', '18,16');
    expect(flawsOf(bad)).toEqual([
      '3 date 2026-07-02 is after today, 2026-06-30',
      '9 in 1 -2 is negative',
      '9 out 1 9 is 5 more than can have sat there by 07:30',
      '11 from 07:50 leaves a gap after 07:30',
      '17 left 07:20 is before 07:33, when they were served',
      '28 pieces 18 is more than the 16 that fill the rack',
    ]);
  });

  it('names another house, unknown parts, columns and items, and what is no count or time', () => {
    expect(flawsOf(good.replace('house,Tern', 'house,Gull'))[0]).toContain(
      'is another house than Tern & Tide',
    );
    expect(flawsOf(good.replace('\nstays\n', '\nstay\n'))[0]).toContain(
      'from stay is not a time of day',
    );
    expect(flawsOf(good.replace('in 2+', 'inn 2+')).join()).toMatch(
      /in 2\+ is missing.*inn 2\+ is not a column/s,
    );
    expect(flawsOf(good.replace('\nsaucer,', '\nsauser,'))).toEqual([
      '34 ware sauser is not an item of this house',
    ]);
    expect(flawsOf(good.replace('07:21,44', '7 21,4.5'))).toEqual([
      '24 began 7 21 is not a time of day',
      '24 first trip, s 4.5 is not a whole number',
    ]);
    expect(flawsOf(good.replace('07:21,44', '07:05,44'))[0]).toContain(
      'is before the round above it',
    );
    expect(flawsOf(good.replace('after,,,1,1', 'after,,,2,1'))[0]).toContain(
      'are said to be left, but the counts leave 1',
    );
  });

  it('is refused empty or as another file', () => {
    expect(flawsOf('')).toEqual(['1 date  is not a day']);
    expect(flawsOf('name: A scenario\nlevel: 95 %\n').length).toBeGreaterThan(0);
    expect(flawsOf('a,"b\n')[0]).toContain('is not a row of a table');
  });
});

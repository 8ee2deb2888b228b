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

  it('may have clocks, counts and its day as other programs write them', () => {
    const other = good
      .replace('date,2026-06-29', 'date,46202')
      .replace('1,07:03,07:20', '1.0,7:03 am,7h20')
      .replace('07:10,50,9', '7:10AM,50,"9,00"')
      .replace('07:21,44', '07.21.00,44');
    expect(readSheets(`\ufeff${other}`, house)).toEqual(readSheets(good, house));
    const clock = (text: string) => flawsOf(good.replace('1,07:03,07:20', `1,${text},07:20`));
    expect(clock('7am')).toEqual([]);
    for (const wrong of ['7', '13pm', '0am', '24:00', '07:60', 'seven'])
      expect(clock(wrong), wrong).toEqual([`17 served ${wrong} is not a time of day`]);
    expect(clock('7pm')).toEqual(['17 left 07:20 is before 19:00, when they were served']);
  });

  it('leaves no number open to two readings', () => {
    expect(flawsOf(good.replace('cup,212,89.5', 'cup,"1,212",89.5'))).toEqual([
      '33 ware 1,212 may have a decimal comma or a comma between thousands'.replace(
        'ware',
        'brim, ml',
      ),
    ]);
    expect(flawsOf(good.replace('07:10,50,9', '07:10,"1,000",9'))[0]).toContain(
      'is not a whole number',
    );
    expect(flawsOf(good.replace('07:10,50,9', '07:10,−50,9'))[0]).toContain('is negative');
  });

  it('without headings says so once', () => {
    const bare = good.replace(/from,in 1.*\n/, '');
    expect(flawsOf(bare).filter((flaw) => flaw.includes('headings'))).toEqual([
      '6 tally before stands where the headings should',
    ]);
  });

  it('is held against the drinks that its guests can have', () => {
    // Seven guests came in, with nine first drinks: a morning with ten or more and none was not counted.
    const plenty = good.replace('07:00,3,1,0,0,2,0,5,,1', '07:00,12,0,0,0,2,0,99,20,1');
    const alone = plenty
      .replaceAll(/^(07:30,0),1(,1),1/gm, '$1,0$2,0')
      .replace('after,,,1,1\n', '');
    expect(flawsOf(alone)).toEqual([
      '11 first drinks 103 are all first drinks of the morning, and only 14 guests came in',
      '11 second drinks 21 are all later drinks of the morning, and only 14 guests came in',
    ]);
    const none = alone
      .replace(',99,20,', ',0,,')
      .replace(',2,1,\n', ',0,1,\n')
      .replace(',0,2,0,4', ',0,0,0,4');
    expect(flawsOf(none)).toEqual([
      '11 first drinks 0 are all first drinks of the morning, and 14 guests came in',
    ]);
    // Where a large party came, nobody knows how many guests there were.
    expect(flawsOf(plenty.replace('after,,,1,1\n', ''))).toEqual([]);
  });

  it('is refused empty or as another file', () => {
    expect(flawsOf('')).toEqual(['1 date  is not a day']);
    expect(flawsOf('name: A scenario\nlevel: 95 %\n').length).toBeGreaterThan(0);
    expect(flawsOf('a,"b\n')[0]).toContain('is not a row of a table');
  });
});

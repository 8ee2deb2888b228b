/** The table of sites: what is wrong is said all at once, each at its place; a row means what its scenario would say. */
import { readFileSync } from 'node:fs';
import write from 'write-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { baseOf, sitesOf, tillKey, type Site } from '../../../src/questions/sites/site.js';
import { openTable, readTable } from '../../../src/questions/sites/table.js';
import { baseWithTill } from '../../../src/questions/sites/till.js';
import { busiestHour, meanStayMinutes } from '../../../src/questions/size/house-measures.js';
import { compile } from '../../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { formatProblem } from '../../../src/scenario/problems.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { changed, valid } from '../../scenario/a-scenario.js';

const peak = changed(
  'slots: { every: 30 min, parties: [6, 9] }',
  'peak: { guests: { value: 18 / h, basis: measured, range: [16 / h, 20 / h] }, shape: [2, 3] }',
);

function opened(text: string) {
  const read = readScenario(text, 'base.yaml');
  if (!read.ok) throw new Error(read.problems.map(formatProblem).join('\n'));
  return read;
}

/** The sites of a table, or its problems as they are shown. */
function read(table: string, base: string = valid): readonly Site[] | string[] {
  const own = opened(base);
  const found = readTable(new TextEncoder().encode(table), 't.csv', own);
  const sites = found.ok ? sitesOf(found.value, baseOf(own, undefined)) : found;
  return sites.ok ? sites.value : sites.problems.map(formatProblem);
}

const sitesIn = (table: string, base?: string): readonly Site[] => {
  const found = read(table, base);
  if (found.some((one) => typeof one === 'string')) throw new Error(found.join('\n'));
  return found as readonly Site[];
};

describe('a table of sites', () => {
  it('says all that is wrong with its form at once', () => {
    expect(
      read('id,seat,seats,seats,currency,menu.flat-whit.share\na,,,,,\n,,,,,\nA,1,2,3,4,5,6\n'),
    ).toEqual([
      't.csv:1: "seat" is no column of sites; did you mean "seats"?',
      't.csv:1: "seats" is given twice; keep one of the columns',
      't.csv:1: "currency" is the same for all sites; the order is in one currency: split the table',
      't.csv:1: "menu.flat-whit.share" is no column of sites and no path of the scenario; did you mean "flat-white"?',
      't.csv:3: is an empty row; remove it, or write the site',
      't.csv:4: "6" is beyond the last column; put text with a comma in quotes',
    ]);
    expect(read('name\nOne\n')[0]).toBe(
      't.csv:1: "name" has no column "id"; give each site an id of its own',
    );
    expect(read('')[0]).toBe('t.csv:1: is empty; write a row of names and a row for each site');
    expect(read('id\n')[0]).toBe('t.csv:1: has no sites below; write a row for each site');
    expect(read('id\na\nA\nb/c\n')).toEqual([
      't.csv:3: id: "A" is the id of line 2 already; give each site an id of its own',
      't.csv:4: id: "b/c" is not an id; write letters and digits, with . _ or - between them, such as harbour-2',
    ]);
    expect(read('id,stay,takeaway\na,40 %,60 %\n')[0]).toMatch(/says the same as the column stay/);
  });

  it('holds 10,000 sites and no more', () => {
    const rows = (count: number): string =>
      `id\n${Array.from({ length: count }, (_, at) => `s${at}`).join('\n')}\n`;
    const own = opened(valid);
    const lines = (count: number) => readTable(new TextEncoder().encode(rows(count)), 't.csv', own);
    expect(lines(10_000).ok).toBe(true);
    const over = lines(10_001);
    expect(over.ok ? [] : over.problems.map(formatProblem)).toEqual([
      't.csv:10002: is site 10,001, more than one table may have; split the table',
    ]);
  });

  it('says what is wrong with the values of all rows, by line and column', () => {
    expect(
      read(
        'id;seats;stay;guests;machines;hours;counter.makers;have\n' +
          'a;many;40;0;3 hod;7-9;0;cup=x\n' +
          'b;10;50 %;20;2;07:00-08:00;1;cup=5\n' +
          'c;;;;;;;mugg=3\n',
      ),
    ).toEqual([
      't.csv:2: stay: "40" is not a share of guests; write one such as 45 %',
      't.csv:2: guests: "0" is not a number of guests an hour; write one such as 64',
      't.csv:2: machines: "3 hod" is not a list of dishwashers; did you mean "hood"?',
      't.csv:2: hours: "7-9" is not a pair of times; write opening and closing, such as 07:00-11:00',
      't.csv:2: have: "cup=x" is not a list of pieces there are; write ids and pieces, such as medium-cup=30; saucer=40',
      't.csv:2: counter.makers: 0 is too few makers; write a whole number, 1 or more, or unlimited',
      't.csv:2: seats: "many" is not a count of seats; write a whole number, 1 or more, or unlimited',
      't.csv:4: have: "mugg" is not in ware; did you mean "mug"?',
    ]);
  });

  it('reads a row as the scenario with those values', () => {
    const [own, other] = sitesIn(
      'id,name,Seats,guests,takeaway,machines,clearing,have\n' +
        'a,,,,,,,\n' +
        'b,The Mill,33,27,70 %,2 hood,{ every: about 8 min },cup=12\n',
      peak,
    );
    const base = opened(peak).scenario;
    expect(own!.opened.scenario).toEqual({ ...base, name: 'a', seed: `${base.seed}/a` });
    // The range of the base is about the base: a site with other guests is not outside it.
    const expected = opened(
      [
        ['name: Harbour Steps', 'name: The Mill\nhave: { ware: { cup: 12 } }\nseed: 1/b'],
        ['{ value: 18 / h, basis: measured, range: [16 / h, 20 / h] }', '27 / h'],
        ['staysIn: 40 %', 'staysIn: 30 %'],
        ['count: 20', 'count: 33'],
        ['- { class: undercounter }', '- { class: hood, count: 2 }'],
        ['clearing: atOnce', 'clearing: { every: about 8 min }'],
      ].reduce((text, [from, to]) => changed(from!, to!, text), peak),
    ).scenario;
    expect(other!.opened.scenario).toEqual(expected);
  });

  it('scales arrivals that are given in slots, and stays of any law', () => {
    const [site] = sitesIn('id,guests,dwell\na,42,60 min\n');
    const { scenario } = site!.opened;
    // 15 parties of 1.4 guests come in the hour: 42 guests are twice as many.
    expect(scenario.arrivals.slots!.parties).toEqual([12, 18]);
    expect(meanStayMinutes(compile(scenario, piecesPerRackOf))).toBeCloseTo(60, 6);
  });

  it('is read alike from the first sheet of a workbook, where shares are numbers and days are days', async () => {
    const cell = (value: string | number | Date | null) =>
      value === null
        ? null
        : value instanceof Date
          ? { value, type: Date, format: 'dd/mm/yyyy' }
          : { value };
    const sheet = (rows: readonly (readonly (string | number | Date | null)[])[]) =>
      write(rows.map((row) => row.map(cell)) as never).toBlob();
    const bytes = new Uint8Array(
      await (
        await sheet([
          ['id', 'Stay', 'opening', 'seats', 'guests', 'have'],
          ['a', 0.45, new Date('2027-03-31T00:00:00Z'), 20, 42.5, 'cup=5'],
          ['b', '50 %', null, 30, 60, null],
          [null, null, null, null, null, null],
        ])
      ).arrayBuffer(),
    );
    const own = opened(valid);
    const csv =
      'id,Stay,opening,seats,guests,have\na,45 %,2027-03-31,20,42.5,cup=5\nb,50 %,,30,60,\n';
    const [fromSheet, fromText] = [
      await openTable(bytes, 't', own),
      readTable(new TextEncoder().encode(csv), 't', own),
    ];
    if (!fromSheet.ok || !fromText.ok) throw new Error('no table');
    expect(fromSheet.value.lines).toEqual(fromText.value.lines);
    const problems = async (wrong: Uint8Array) => {
      const found = await openTable(wrong, 't.xlsx', own);
      return found.ok ? [] : found.problems.map(formatProblem);
    };
    for (const cut of [4, 60, Math.floor(bytes.length / 2), bytes.length - 3])
      expect(await problems(bytes.subarray(0, cut))).toEqual([
        't.xlsx:1: is no workbook that can be read; save it again as XLSX, or as CSV',
      ]);
  });
});

describe('a site with a till of its own', () => {
  const file = (name: string) => ({ name, bytes: new Uint8Array(readFileSync(name)) });
  const scenario = file('scenarios/4-bakery-corner.yaml');
  const till = file('shared/till/bakery-quarter-hours.csv');
  const map = file('shared/till/bakery-saturdays.map.yaml');
  const names = { file: 'hours.csv', map: 'map.yaml' };

  it('starts from the base as its till has it, and its row still has the last word', async () => {
    const base = baseOf(opened(new TextDecoder().decode(scenario.bytes)), 'study');
    const tilled = await baseWithTill(scenario, till, map, base.seed);
    if (!tilled.ok) throw new Error(tilled.problems.map(formatProblem).join('\n'));
    const table = readTable(
      new TextEncoder().encode(
        'id,guests,till,map\na,,hours.csv,map.yaml\nb,40,hours.csv,map.yaml\nc,,,\n',
      ),
      't.csv',
      base.opened,
    );
    const sites = table.ok
      ? sitesOf(table.value, { ...base, tills: new Map([[tillKey(names), tilled.value]]) })
      : table;
    if (!sites.ok) throw new Error(sites.problems.map(formatProblem).join('\n'));
    const [a, b, c] = sites.value.map((site) => site.opened.scenario);
    expect(a!.arrivals).toEqual(tilled.value.opened.scenario.arrivals);
    expect(a!.arrivals).not.toEqual(base.opened.scenario.arrivals);
    expect(a!.seed).toBe('study/a');
    const busiest = (scenario_: typeof a): number =>
      busiestHour(compile(scenario_!, piecesPerRackOf));
    expect(busiest(b)).toBeCloseTo(40, 6);
    expect(b!.guests.partySize).toEqual(a!.guests.partySize);
    expect(c!.arrivals).toEqual(base.opened.scenario.arrivals);
  });

  it('needs its till and the map of it', () => {
    expect(read('id,till,map\na,t.csv,\nb,,m.yaml\n')).toEqual([
      't.csv:2: till: "t.csv" has no map beside it; give both: the export of a till, and the map of its columns',
      't.csv:3: map: "m.yaml" has no till beside it; give both: the export of a till, and the map of its columns',
    ]);
  });
});

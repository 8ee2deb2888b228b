import fc from 'fast-check';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { readTill } from '../../src/till/read-till.js';
import type { Tally, TillDay } from '../../src/till/tally.js';
import { OPEN_TICKETS } from '../../src/till/tickets.js';
import {
  countsMap,
  drawTickets,
  inPieces,
  mapFor,
  must,
  mustMap,
  plainForm,
  rushTruth,
  tallyOf,
  writeCounts,
  writeExport,
  type Form,
} from './sales.js';

const tickets = drawTickets({ ...rushTruth, days: 10 }, 'reading');
const counted = (tally: Tally): TillDay[] => [...tally.days.values()];

const forms: readonly (readonly [string, Partial<Form>])[] = [
  ['ISO dates in a file with a byte order mark', { bom: true }],
  ['CRLF line ends', { lineEnd: '\r\n' }],
  ['day-first dates, parted by semicolons', { date: 'day-first', separator: ';' }],
  ['month-first dates with am and pm, parted by tabs', { date: 'month-first', separator: '\t' }],
  ['date and time in one column', { oneColumn: true }],
  [
    'date and time in one column, day first',
    { oneColumn: true, date: 'day-first', separator: ';' },
  ],
  ['date and time in one column, month first', { oneColumn: true, date: 'month-first' }],
  ['no ticket numbers: the same second is one ticket', { ids: false }],
  ['no ticket numbers and one column', { ids: false, oneColumn: true }],
  ['a quantity column', { quantity: true }],
  ['names with line breaks in quotation marks', { breaks: true }],
  [
    'all of it at once',
    {
      bom: true,
      lineEnd: '\r\n',
      date: 'day-first',
      separator: ';',
      oneColumn: true,
      ids: false,
      quantity: true,
      breaks: true,
    },
  ],
];

describe('the same sales', async () => {
  const plain = await tallyOf(writeExport(tickets, plainForm), mustMap(mapFor(plainForm)));

  it('are counted as they were drawn', () => {
    const drinks = (items: readonly string[]): number =>
      items.filter((item) => /flat|tea|choc/i.test(item)).length;
    expect(plain.tickets).toBe(tickets.length);
    expect(plain.parties).toBe(tickets.filter(({ items }) => drinks(items) > 0).length);
    expect(plain.drinks).toBe(tickets.reduce((sum, { items }) => sum + drinks(items), 0));
    expect(plain.rows).toBe(tickets.reduce((sum, { items }) => sum + items.length, 0));
    expect(plain.ignoredRows).toBe(
      tickets.flatMap(({ items }) => items).filter((item) => item === 'NONE').length,
    );
    expect(plain.skipped).toEqual([]);
    expect(plain.sizes.slice(1).reduce((sum, count, at) => sum + count * (at + 1), 0)).toBe(
      plain.drinks,
    );
  });

  it.each(forms)('are read the same with %s', async (_, change) => {
    const form = { ...plainForm, ...change };
    const tally = await tallyOf(writeExport(tickets, form), mustMap(mapFor(form)));
    expect(tally.skipped).toEqual([]);
    expect(counted(tally)).toEqual(counted(plain));
  });

  it('are read the same from a counted report, but for the sizes of parties', async () => {
    const tally = await tallyOf(writeCounts(tickets), mustMap(countsMap));
    expect(counted(tally)).toEqual([...plain.days.values()].map((day) => ({ ...day, sizes: [] })));
    expect([tally.tickets, tally.parties, tally.drinks]).toEqual([
      plain.tickets,
      plain.parties,
      plain.drinks,
    ]);
  });

  it('are read the same in UTF-16 and windows-1252', async () => {
    const text = writeExport(tickets, plainForm).replaceAll('Bread', 'Pâté');
    const bytes16 = new Uint8Array(
      new Uint16Array([...text].map((letter) => letter.charCodeAt(0))).buffer,
    );
    const bytes1252 = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    for (const [encoding, bytes] of [
      ['utf-16', bytes16],
      ['windows-1252', bytes1252],
    ] as const) {
      const tally = must(
        await readTill(
          inPieces(bytes.subarray(0, 1001), bytes.subarray(1001)),
          mustMap(mapFor(plainForm, `encoding: ${encoding}`)),
        ),
      );
      expect(counted(tally)).toEqual(counted(plain));
      expect(tally.otherItems.some(({ item }) => item === 'Pâté')).toBe(true);
    }
    const wrong = await readTill(inPieces(bytes1252), mustMap(mapFor(plainForm)));
    expect(wrong.ok ? [] : wrong.flaws.map(({ rule }) => rule)).toEqual([
      expect.stringContaining('is not text in UTF-8'),
    ]);
  });

  it('are read the same wherever the bytes are cut into pieces', async () => {
    const form: Form = { ...plainForm, lineEnd: '\r\n', bom: true, breaks: true };
    const text = writeExport(tickets.slice(0, 60), form).replaceAll('Bread', 'Brötchen €');
    const bytes = new TextEncoder().encode(text);
    const map = mustMap(mapFor(form));
    const whole = must(await readTill(inPieces(bytes), map));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 0, max: bytes.length }), { maxLength: 40 }),
        async (cuts) => {
          const at = [0, ...cuts.sort((one, other) => one - other), bytes.length];
          const pieces = at.slice(1).map((end, k) => bytes.subarray(at[k], end));
          expect(must(await readTill(inPieces(...pieces), map))).toEqual(whole);
        },
      ),
      { seed: 20, numRuns: 60 },
    );
  });

  it('are read the same when two tills write in turn', async () => {
    const text = writeExport(tickets, plainForm);
    const [heading, ...rows] = text.trimEnd().split('\n');
    // Each row changes places with a row up to three tickets on.
    const mixed = rows
      .map((row, at) => ({ row, at: at + ((at * 7) % 5) * 1.5 }))
      .sort((one, other) => one.at - other.at)
      .map(({ row }) => row);
    const tally = await tallyOf([heading, ...mixed].join('\n'), mustMap(mapFor(plainForm)));
    expect(
      counted(tally)
        .map((day) => JSON.stringify(day))
        .sort(),
    ).toEqual(
      counted(plain)
        .map((day) => JSON.stringify(day))
        .sort(),
    );
  });
});

const small = mustMap(mapFor({ ...plainForm, quantity: true }));
const heading = 'Date,Time,No.,Item,Pieces\n';
const good = (count: number): string =>
  Array.from({ length: count }, (_, at) => `2020-01-0${1 + (at % 9)},09:00:00,${at},Tea,1\n`).join(
    '',
  );

describe('rows that cannot be read', () => {
  it('are skipped and told with their line and reason', async () => {
    const bad = [
      'Total,,,,\n', // line 2
      '\n',
      '2020-02-30,09:00:00,1,Tea,1\n', // 4
      '2020-01-01,nine,1,Tea,1\n',
      '2020-01-01,09:00:00,,Tea,1\n',
      '2020-01-01,09:00:00,1,  ,1\n', // 7
      '2020-01-01,09:00:00,1,Tea,some\n',
      '2020-01-01,09:00:00,1,Tea,5000\n',
      '2020-01-01,09:00:00\n', // 10
      '2020-01-01,09:00:00,1,Tea,with milk,1\n',
      heading, // 12
      '2020-01-01,09:00:00,1,"Tea,\nlarge",1\n', // 13 and 14, and fine
      '"2020-01-01"x,09:00:00,1,Tea,1\n', // 15
    ];
    const tally = await tallyOf(`${heading}${bad.join('')}${good(200)}`, small);
    const told = Object.fromEntries(tally.skipped.map(({ reason, lines }) => [reason, lines]));
    expect(told).toEqual({
      'no date (iso)': [2, 4, 15],
      'no time of day': [5],
      'no ticket number': [6],
      'no item': [7],
      'quantity is not a whole number': [8],
      'more than 500 of one item': [9],
      'fewer columns than the first row': [10],
      'more columns than the first row (a separator inside a field without quotation marks?)': [11],
      'the first row again': [12],
    });
    expect(tally.rows).toBe(200 + bad.length - 1);
    expect(tally.drinks).toBe(200);
  });

  it('are told with eight lines at the most', async () => {
    const tally = await tallyOf(`${heading}${'x,,,,\n'.repeat(20)}${good(300)}`, small);
    expect(tally.skipped).toEqual([
      { reason: 'no date (iso)', rows: 20, lines: [2, 3, 4, 5, 6, 7, 8, 9], example: 'x' },
    ]);
  });

  it('in a counted report are those that contradict themselves, or come twice', async () => {
    const rows = [
      '2020-01-01,09:00,4,2,3,0,0',
      '2020-01-01,09:00,4,2,3,0,0', // 3: again
      '2020-01-01,09:05,4,2,3,0,0', // 4: no slot of 15 min
      '2020-01-01,09:15,4,3,2,0,0', // 5: fewer drinks than tickets with one
      '2020-01-01,09:30,1,2,3,0,0', // 6: more with a drink than tickets
      '2020-01-01,09:45,4,-1,3,0,0', // 7
      '2020-01-01,10:00,4,0,3,0,0', // 8
    ];
    const fine = Array.from(
      { length: 60 },
      (_, day) =>
        `2020-0${2 + Math.floor(day / 28)}-${String(1 + (day % 28)).padStart(2, '0')},09:00,4,2,3,0,0`,
    );
    const tally = await tallyOf(
      ['day,from,tickets,with a drink,flat whites,teas,chocolates', ...rows, ...fine].join('\n'),
      mustMap(countsMap),
    );
    expect(tally.skipped.flatMap(({ lines }) => lines).sort()).toEqual([3, 4, 5, 6, 7, 8]);
    expect(tally.parties).toBe(2 * 61);
  });
});

describe('tickets', () => {
  const one = async (rows: string, rest = ''): Promise<Tally> =>
    tallyOf(heading + rows, mustMap(mapFor({ ...plainForm, quantity: true }, rest)));

  it('take the earliest of their times, and are parties by their drinks alone', async () => {
    const tally = await one(
      '2020-01-01,09:16:00,1,Cake,1\n2020-01-01,09:14:59,1,Tea,2\n2020-01-01,09:15:00,2,Cake,4\n',
    );
    const day = tally.days.get(18_262)!;
    expect([day.parties[4], day.parties[5], day.tickets[4], day.tickets[5]]).toEqual([1, 0, 1, 1]);
    expect(day.sizes[2]).toBe(1);
  });

  it('lose what was taken back, and are no party when nothing is left', async () => {
    const tally = await one(
      '2020-01-01,09:00:00,1,Tea,3\n2020-01-01,09:01:00,1,Tea,-1\n2020-01-01,09:02:00,2,Tea,1\n2020-01-01,09:02:00,2,Tea,-1\n',
    );
    expect([tally.tickets, tally.parties, tally.drinks]).toEqual([2, 1, 2]);
  });

  it('above the largest party are orders to carry away', async () => {
    const tally = await one(
      '2020-01-01,09:00:00,1,Tea,13\n2020-01-01,09:01:00,2,Tea,12\n',
      'largestParty: 12',
    );
    expect([tally.tickets, tally.parties, tally.tooLarge]).toEqual([2, 1, 1]);
    expect(tally.days.get(18_262)!.byGroup).toEqual([0, 12, 0]);
  });

  it('with the same number on two days are two', async () => {
    const tally = await one('2020-01-01,09:00:00,1,Tea,1\n2020-01-02,09:00:00,1,Tea,1\n');
    expect(tally.parties).toBe(2);
  });

  it('out of hours count for the export and not for the fit', async () => {
    const tally = await one(
      '2020-01-01,07:59:59,1,Tea,1\n2020-01-01,12:00:00,2,Tea,1\n2020-01-01,11:59:59,3,Tea,1\n',
    );
    expect([tally.parties, tally.partiesOutsideHours]).toEqual([3, 2]);
    expect(tally.days.get(18_262)!.parties.reduce((sum, count) => sum + count)).toBe(1);
  });

  it('are told when their rows come back to a day, or minutes are all there is', async () => {
    expect(
      (
        await one(
          '2020-01-01,09:00:00,1,Tea,1\n2020-01-02,09:00:00,2,Tea,1\n2020-01-01,09:30:00,3,Tea,1\n',
        )
      ).dayReturns,
    ).toBe(1);
    const minutes = mustMap(mapFor({ ...plainForm, ids: false }));
    expect(
      (await tallyOf('Date,Time,Item\n2020-01-01,09:00,Tea\n2020-01-01,09:00,Tea\n', minutes))
        .minutesMerged,
    ).toBe(true);
    expect(
      (await tallyOf('Date,Time,Item\n2020-01-01,09:00:10,Tea\n', minutes)).minutesMerged,
    ).toBe(false);
    expect((await tallyOf('Date,Time,Item\n2020-01-01,09:00:10Z,Tea\n', minutes)).markedUtc).toBe(
      true,
    );
  });
});

describe('an export is refused', () => {
  const rules = async (text: string, map = small): Promise<readonly string[]> => {
    const outcome = await readTill(inPieces(text), map);
    return outcome.ok
      ? []
      : outcome.flaws.map(
          ({ about, path, value, rule, remedy }) =>
            `${about} ${path.join('.')} ${String(value)} ${rule}; ${remedy}`,
        );
  };

  it.each([
    ['', 'is empty'],
    ['\n\n', 'is empty'],
    [heading, 'has a heading but no rows'],
    [
      `${heading}2020-01-01,09:00:00,1,"Tea,1\n${good(20)}`,
      'opens a quotation mark that is never closed',
    ],
    [
      `${heading}2020-01-01,09:00:00,1,"Tea,1\n${good(9000)}`,
      'opens a quotation mark that is never closed',
    ],
    [
      heading + good(8) + '01/02/2020,09:00:00,1,Tea,1\n',
      'has 1 rows of 9 that cannot be read, mostly for this: no date (iso), such as "01/02/2020"',
    ],
  ])('%#', async (text, rule) => {
    expect(await rules(text)).toEqual([expect.stringContaining(rule)]);
  });

  it('for columns it does not have, all at once and with the nearest name', async () => {
    expect(await rules(`Date,Tme,Number,Item\n${good(3)}`)).toEqual([
      'map columns.time Time is not a column of the export; did you mean "Tme"?',
      expect.stringContaining('map columns.ticket No. is not a column of the export'),
      expect.stringContaining('map columns.quantity Pieces is not a column of the export'),
    ]);
    expect(await rules(`Date,Time,No.,Item,Pieces,item\n${good(3)}`)).toEqual([
      'map columns.item Item is the name of two columns of the export; rename one of them in the export',
    ]);
  });

  it('for another separator than the stated one', async () => {
    expect(await rules((heading + good(3)).replaceAll(',', ';'))).toEqual([
      'map separator comma does not split the first row of the export into columns; did you mean "semicolon"?',
    ]);
  });

  it('and its source is closed', async () => {
    let closed = false;
    async function* source(): AsyncGenerator<string> {
      try {
        yield 'Date,Time\n';
        for (;;) yield good(9);
      } finally {
        closed = true;
      }
    }
    expect((await readTill(source(), small)).ok).toBe(false);
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(closed).toBe(true);
  });

  it('and what it holds is told without control characters', async () => {
    const told = await rules(`Date,Time,No.,Ite\u001bm,Pieces\n${good(3)}`);
    expect(told.join('')).toContain('Ite?m');
    expect(told.join('')).not.toContain('\u001b');
  });

  it('and a failing source fails as it is', async () => {
    async function* source(): AsyncGenerator<string> {
      yield heading;
      throw new RangeError('disk on fire');
    }
    await expect(readTill(source(), small)).rejects.toThrow('disk on fire');
  });
});

describe('memory', () => {
  setFlagsFromString('--expose_gc');
  const gc = runInNewContext('gc') as () => void;

  it('does not grow with the rows of an export', async () => {
    const held: number[] = [];
    async function* source(): AsyncGenerator<string> {
      yield 'Date,Time,No.,Item,Pieces\n';
      const blocks = 300;
      for (let block = 0; block < blocks; block += 1) {
        let text = '';
        for (let row = 0; row < 1000; row += 1) {
          const ticket = block * 500 + (row >> 1);
          // Thirty days; names and numbers that never repeat, so that keeping any of them would show.
          text += `2020-01-${String(1 + Math.floor(block / 10)).padStart(2, '0')},0${8 + (row % 2)}:${String(row % 60).padStart(2, '0')}:00,T${ticket},${row % 3 === 0 ? `Dish ${ticket} of the day` : 'Tea'},1\n`;
        }
        yield text;
        if (block === 60 || block === blocks - 1) {
          gc();
          held.push(process.memoryUsage().heapUsed);
        }
      }
    }
    const tally = must(await readTill(source(), small));
    expect(tally.rows).toBe(300_000);
    // 240,000 rows of some 45 bytes lie between the two moments: 10 MB if they were kept, as little as it takes to keep one.
    expect(held[1]! - held[0]!).toBeLessThan(2_000_000);
    expect(tally.days.size).toBe(30);
  }, 60_000);

  it('bounds the open tickets, however many there are', async () => {
    const many = 2 * OPEN_TICKETS + 10;
    const rows = Array.from({ length: many }, (_, at) => `2020-01-01,09:00:00,${at},Tea,1\n`).join(
      '',
    );
    // The first ticket was closed to make room, so what comes late for it is a ticket of its own; a later one was not.
    const tally = await tallyOf(
      `${heading}${rows}2020-01-01,09:00:00,0,Tea,1\n2020-01-01,09:00:00,${many - OPEN_TICKETS},Tea,1\n`,
      small,
    );
    expect(tally.tickets).toBe(many + 1);
    expect(tally.drinks).toBe(many + 2);
  });
});

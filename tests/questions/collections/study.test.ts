/** Collections in a small house: what stands in is in every answer, and what it replaces in none. */
import { describe, expect, test } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { ask } from '../../../src/questions/collections/ask.js';
import type { Collections } from '../../../src/questions/collections/answer.js';
import { workbookSheets } from '../../../src/quantities/read-workbook.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { writeText } from '../../../src/tell/write-text.js';

const house = `name: Two Rows
currency: EUR
staffHour: 20 EUR
hours: { from: "07:00", to: "08:00" }
arrivals:
  slots: { every: 30 min, parties: [6, 9] }
guests:
  partySize: { 1: 60 %, 2: 40 % }
  staysIn: 70 %
menu:
  flat-white: { share: 60 %, setting: [cup, saucer], fallBacks: [[bowl, saucer], takeaway], making: 40 s }
  latte: { share: 25 %, setting: [bowl, saucer], making: 40 s }
  tea: { share: 15 %, setting: [mug], making: 20 s }
ware:
  cup: { like: medium-cup, price: 4 EUR }
  bowl: { like: large-cup, price: 5 EUR }
  saucer: { like: saucer, price: 2 EUR, well: 62 mm }
  mug: { like: mug, price: 5 EUR }
seats: { count: 20 }
counter: { makers: 2 }
clearing: atOnce
washing: { machines: [{ class: undercounter }], partLoadWait: about 5 min }
supply:
  suppliers:
    old:
      leadTime: 5 days
      quotes:
        cup: { price: 4 EUR, carton: 6 }
        bowl: { price: 5 EUR, carton: 6 }
        saucer: { price: 2 EUR, carton: 6 }
        mug: { price: 5 EUR, carton: 6 }
collections:
  one: { name: One cup, file: one.csv, standsFor: { cup: one-200, bowl: one-200 } }
`;
const table = `id,name,price,brim,rim,foot,well,height,handle,mass,saucer,colour,carton,until
one-200,One cup for all,3,200,84,50,,64,27,250,one-saucer,white,6,2027-06-30
one-saucer,One saucer,1.50,,150,,54,18,,200,,white,6,
`;

async function asked(text: string, csv: string) {
  const read = readScenario(text, 'two-rows.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return ask(
    {
      opened: read,
      fileName: 'two-rows.yaml',
      runner: inThisThread(),
      context: contextOf(read.scenario, read.inputs, '0', piecesPerRackOf),
      beside: { 'one.csv': new TextEncoder().encode(csv) },
      today: '2026-12-01',
      loadSolver: null,
    },
    { days: 40 },
  );
}
const problems = async (text: string, csv: string): Promise<string[]> => {
  const reply = await asked(text, csv);
  return reply.ok
    ? []
    : reply.problems.map((one) => `${one.file}:${one.line} ${one.path} ${one.rule}`);
};

describe('collections', () => {
  test('one sheet: the house as it is beside the collection, on the same days', async () => {
    const reply = await asked(house, table);
    if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
    const { collections } = reply.value.json as Collections;
    const [now, one] = collections;
    expect(collections.map(({ id }) => id)).toEqual(['as-it-is', 'one']);
    // Vessels of the menu are gone, the mug stays, and one saucer comes with the new cup.
    expect(one!.vessels.map(({ ware }) => ware)).toEqual(['one-200', 'one-saucer', 'mug']);
    expect(one!.vessels[0]).toMatchObject({ standsFor: ['cup', 'bowl'], brimMl: 200 });
    const pieces = (line: typeof one, ids: string[]) =>
      line!.vessels.reduce((sum, { ware, pieces: n }) => sum + (ids.includes(ware) ? n : 0), 0);
    // Pooled stock of one cup is never above that of two, on the same guests.
    expect(pieces(one, ['one-200'])).toBeLessThanOrEqual(pieces(now, ['cup', 'bowl']));
    expect(pieces(one, ['mug'])).toBe(pieces(now, ['mug']));
    expect(one!.overMinor!).toBeLessThan(now!.overMinor!);
    expect(one!.nowMinor!).toBeLessThanOrEqual(one!.overMinor!);
    expect(now!.discontinued).toBeNull();
    expect(one!.discontinued).toMatchObject({
      names: ['One cup for all'],
      until: '2027-06-30',
      replacedPieces: pieces(one, ['one-200']),
    });
    expect(one!.vessels[0]!.fit).toMatchObject({ fits: true, clearanceMm: 4 });
    const text = writeText(reply.value.blocks, { width: 80, all: true });
    expect(text).toContain('One cup costs least');
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(String(reply.value.figures!.content).split('\r\n')).toHaveLength(4);
    const [file] = await reply.value.files!(undefined as never, undefined as never);
    const book = await workbookSheets(file!.content as Uint8Array);
    if (!book.ok) throw new Error('not read back');
    const [side, vessels] = book.value;
    expect(side!.rows.map((row) => [row[1], row[2], row[4]]).slice(1)).toEqual(
      collections.map(({ name, pieces, nowMinor }) => [name, pieces, nowMinor! / 100]),
    );
    expect(vessels!.rows.filter(([name]) => name === 'One cup').map((row) => row[2])).toEqual(
      one!.vessels.map(({ ware }) => ware),
    );
  });

  test('mistakes of the table stand in its rows, those of the names in the scenario', async () => {
    expect(await problems(house, table.replace(',84,', ',wide,'))).toEqual([
      'one.csv:2 rim is not a length',
    ]);
    // A price is that of the piece and of its quote: one mistake, said as the table may have it.
    const wrongPrice = await asked(house, table.replace(',3,200', ',3 a sleeve,200'));
    expect(wrongPrice.ok ? [] : wrongPrice.problems).toEqual([
      expect.objectContaining({
        file: 'one.csv',
        line: 2,
        path: 'price',
        remedy: expect.stringContaining('a thousand or a carton'),
      }),
    ]);
    for (const price of ['dear', '3 USD', '3.001', '-1'])
      expect(
        (await problems(house, table.replace(',3,200', `,${price},200`))).map((one) =>
          one.slice(0, 15),
        ),
        price,
      ).toEqual(['one.csv:2 price']);
    // Only its quote knows what a carton holds.
    expect(await problems(house, table.replace(',3,200', ',20.33 a carton,200'))).toEqual([]);
    expect(await problems(house.replace('cup: one-200,', 'saucer: one-200,'), table)).toEqual([
      'two-rows.yaml:33 collections.one.standsFor.saucer is not a cup or glass of this scenario',
    ]);
    expect(await problems(house.replace('cup: one-200,', 'cup: two-200,'), table)).toEqual([
      'two-rows.yaml:33 collections.one.standsFor.cup is not in the table of the collection',
    ]);
    expect(await problems(house.slice(0, house.indexOf('collections:')), table)).toEqual([
      'two-rows.yaml:1  names no collections to compare',
    ]);
  });
});

/** A stocktake in a small house: what a questioned count would have ordered waits, and the rest does not. */
import { expect, test } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { ask } from '../../../src/questions/stocktake/ask.js';
import type { StocktakeAnswer } from '../../../src/questions/stocktake/study.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { writeText } from '../../../src/tell/write-text.js';

const house = `name: Two Rows
currency: EUR
staffHour: 20 EUR
hours: { from: "07:00", to: "08:00" }
arrivals: { slots: { every: 30 min, parties: [9, 12] } }
guests: { partySize: { 1: 60 %, 2: 40 % }, staysIn: 100 % }
menu:
  latte: { share: 70 %, setting: [cup, saucer], making: 40 s }
  tea: { share: 30 %, setting: [mug], making: 20 s }
ware:
  cup: { like: medium-cup, price: 4 EUR }
  saucer: { like: saucer, price: 2 EUR }
  mug: { like: mug, price: 5 EUR }
washing: { machines: [{ class: undercounter }], partLoadWait: about 5 min }
clearing: atOnce
counter: { makers: 2 }
seats: { count: 40 }
supply:
  suppliers:
    old:
      leadTime: 5 days
      freight: { fixed: 10 EUR }
      quotes:
        cup: { price: 4 EUR, carton: 6 }
        saucer: { price: 2 EUR, carton: 6 }
`;

async function counted(
  rows: string,
  scenario = house,
): Promise<{ answer: StocktakeAnswer; text: string }> {
  const read = readScenario(scenario, 'two-rows.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const reply = await ask(
    {
      opened: read,
      fileName: 'two-rows.yaml',
      runner: inThisThread(),
      context: contextOf(read.scenario, read.inputs, '0', piecesPerRackOf),
      today: '2026-12-01',
      loadSolver: null,
    },
    {
      days: 40,
      since: '2026-09-01',
      last: { cup: 60, saucer: 3, mug: 50 },
      counts: { name: 'c.csv', bytes: new TextEncoder().encode(`ware,counted\n${rows}`) },
    },
  );
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  return {
    answer: reply.value.json as StocktakeAnswer,
    text: writeText(reply.value.blocks, { width: 80 }).replaceAll(/\s+/g, ' '),
  };
}

test('ware whose count is questioned waits with its order, by itself; the rest is ordered as without it', async () => {
  const both = await counted('cup,1\nsaucer,3\n');
  const [cup, saucer] = both.answer.lines;
  expect([cup!.question, saucer!.question]).toEqual(['too many gone', null]);
  expect(Math.min(cup!.topUp, saucer!.topUp)).toBeGreaterThan(0);
  expect(both.answer.waiting.lines.map(({ ware }) => ware)).toEqual(['cup']);
  const alone = await counted('saucer,3\n');
  expect(both.answer.order).toEqual(alone.answer.order);
  expect(alone.answer.order.lines.map(({ ware }) => ware)).toEqual(['saucer']);
  expect(alone.text).not.toMatch(/First find out|Wait/);
  expect(both.text).toMatch(
    /First find out what happened to: Cup\. Order now: \d+ saucers, for €[\d.]+ with freight, tax and your own handling\. Wait with the order until you know: \d+ cups, for €[\d.]+ with /,
  );
  expect(both.text).toMatch(/Cup: 59 of 60 lost .* Wait with the order of \d+ \(\d cartons?, €/);
  expect(both.text).toContain('Freight, before tax: €10.00 and €10.00.');
});

test('nothing is ordered now where all of it waits, sold or not', async () => {
  const cups = await counted('cup,1\n');
  expect(cups.answer.order).toMatchObject({ lines: [], totalMinor: 0 });
  expect(cups.text).toContain('Wait with the order until you know:');
  const mugs = await counted('mug,1\n');
  expect(mugs.text).toMatch(
    /First find out what happened to: Mug\. Wait with the order until you know: \d+ mugs\. No supplier sells them/,
  );
  for (const { text } of [cups, mugs]) expect(text).not.toMatch(/Order (now|\d+ now)/);
});

test('a price is that of what is sold; what is not sold, or a file without suppliers, is said by itself', async () => {
  const some = await counted('cup,1\nmug,1\n');
  expect(some.text).toMatch(
    /until you know: \d+ cups, for €[\d.]+ with freight, tax and your own handling\. Wait with the order until you know: \d+ mugs\. No supplier sells them/,
  );
  const none = await counted('mug,1\n', house.slice(0, house.indexOf('supply:')));
  expect(none.text).toMatch(/until you know: \d+ mugs\. The scenario names no supplier/);
  expect(none.text).not.toContain('o supplier sells');
});

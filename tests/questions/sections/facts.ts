/** What the sections say is what the answers hold, and what the terminal says. */
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import write from 'write-excel-file/node';
import { orderSheetXlsx } from '../../../src/ordering/order-sheet-xlsx.js';
import { verdictSentence } from '../../../src/questions/compare/sentence.js';
import { signed, wholeMoney } from '../../../src/questions/compare/money-text.js';
import { tellComparison } from '../../../src/questions/compare/tell.js';
import { writeText } from '../../../src/tell/write-text.js';
import { formatsFor } from '../../../src/tell/format.js';
import { inputName } from '../../../src/tell/input-name.js';
import { orderBlocks } from '../../../src/questions/order/tell.js';
import { daysOf } from '../../../src/questions/size/lead.js';
import { missedLevel, plainData } from '../../../src/questions/compare/facts.js';
import { orderWorkbook } from '../../../src/questions/order/workbook.js';
import { suitBlocks } from '../../../src/questions/suit/tell.js';
import { answersOf, readText, scenarioNames, sectionsOf } from './answers.js';

const demo = scenarioNames[0]!;
const flat = (text: string): string => text.replace(/[\s\u00A0]+/g, ' ');

describe('the sections of the demo', () => {
  it('give the verdicts in the words of the terminal, and rank in the order of the answer', async () => {
    const answered = await answersOf(demo);
    const { alternatives } = answered.answers;
    const formats = formatsFor(answered.context);
    const name = (id: string): string =>
      alternatives.alternatives.find((one) => one.id === id)!.name;
    const days = daysOf(answered.context);
    const whole = wholeMoney(answered.context, formats);
    const telling = { formats, whole, name, days };
    const { order, notRanked } = alternatives.ranking;
    const { alternatives: html } = await sectionsOf(answered, false);
    const terminal = flat(writeText(tellComparison(alternatives, answered.context)));
    for (const one of alternatives.alternatives.slice(1)) {
      if (notRanked.includes(one.id)) continue;
      const words = flat(verdictSentence(alternatives, one, telling));
      expect(terminal).toContain(words);
      expect(readText(html)).toContain(words);
    }
    const rows = [
      ...html.match(/<table[\s\S]*?<\/table>/)![0].matchAll(/<th scope="row"><bdi>(.*?)<\/bdi>/g),
    ].map(([, row]) => row);
    expect(rows).toEqual(order.filter((id) => !notRanked.includes(id)).map(name));
    const [first, ...others] = alternatives.alternatives;
    const low = { ...first!, certified: { ...first!.certified!, high: 0.9 } };
    const high = others.map((one) => ({ ...one, certified: { ...one.certified!, high: 0.96 } }));
    expect(missedLevel({ ...alternatives, alternatives: [low, ...high], level: 0.95 })).toEqual([
      low,
    ]);
  });

  it('read the map against the house as it is, losses of a further machine too', async () => {
    const answered = await answersOf(demo);
    const { points, machineWorth, own } = answered.answers.map;
    const whole = wholeMoney(answered.context, formatsFor(answered.context));
    const text = readText((await sectionsOf(answered, false)).map);
    expect(machineWorth.length).toBe(4);
    for (const { stockCost } of points)
      expect(text).toContain(flat(signed(stockCost - own, whole)));
    const worst = Math.min(...machineWorth.map(({ stockCost }) => stockCost));
    expect(text).toContain(flat(whole(worst)));
  });

  it('name the inputs to measure first, and list the widest first', async () => {
    const answered = await answersOf(demo);
    const { moves } = answered.answers;
    const { moves: html } = await sectionsOf(answered, false);
    const first = readText(/<p>.*?<\/p>/.exec(html)![0]);
    for (const path of moves.measureFirst.paths)
      expect(first).toContain(flat(inputName(path)).slice(0, 50));
    const widest = moves.inputs.toSorted(
      (a, b) => Math.abs(b.high - b.low) - Math.abs(a.high - a.low),
    )[0]!;
    if (widest.high !== widest.low)
      expect(readText(/<tbody>[\s\S]*?<\/th>/.exec(html)![0])).toContain(
        flat(inputName(widest.path)).slice(0, 50),
      );
  });

  it('say how near each rack in use is to another number', async () => {
    const answered = await answersOf(demo);
    const { lines } = answered.answers.racks;
    const text = readText((await sectionsOf(answered)).racks);
    const near = lines.filter(({ used, cliff }) => used && cliff !== null);
    expect(near.length).toBeGreaterThan(0);
    for (const { name, pieces, cliff } of near) {
      const { changeMm, piecesThen } = cliff!;
      const by = Math.abs(changeMm);
      expect(text).toMatch(
        new RegExp(
          `${name}: one [^.]* holds ${pieces}\\. With its [a-z]+ ${Number.isInteger(by) ? by : by.toFixed(1)} mm ${changeMm < 0 ? '(?:narrower|shorter|less)' : '(?:wider|longer|more)'} ${piecesThen === 0 ? 'it no longer fits' : `a rack would hold ${piecesThen}`}\\.`,
        ),
      );
    }
  });

  it('tell the order as the terminal does, and that a plain search proves nothing', async () => {
    const answered = await answersOf(demo);
    const { order } = answered.answers;
    const { order: html } = await sectionsOf(answered, false);
    const terminal = flat(writeText(orderBlocks(order, answered.context))).replaceAll(' - ', ' ');
    for (const [, paragraph] of html.matchAll(/<(?:p|li)[^>]*>(.*?)<\/(?:p|li)>/g)) {
      const said = readText(paragraph!);
      expect(terminal).toContain(said);
    }
    expect(order.sheet.plan!.proved).toBe(false);
    expect(readText(html)).toContain('not proved to cost least');
    const proved = {
      ...order,
      sheet: { ...order.sheet, plan: { ...order.sheet.plan!, proved: true } },
    };
    expect(writeText(orderBlocks(proved, answered.context))).not.toContain('not proved');
  });

  it('give every finding of the vessels, gravest first, and the figures of the terminal', async () => {
    const answered = await answersOf(demo);
    const { suit } = answered.answers;
    const text = readText((await sectionsOf(answered, false)).suit);
    const places = suit.findings.map(({ message }) => text.indexOf(flat(message)));
    expect(places.every((at) => at >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    const blocks = suitBlocks(suit, answered.context);
    const terminal = flat(writeText(blocks, { width: 80, all: true })).replaceAll(' - ', ' ');
    for (const { message } of suit.findings) expect(terminal).toContain(flat(message));
    for (const { house } of suit.drinks) {
      if (house === null) continue;
      expect(text).toContain(house.solidsPer100Ml.toFixed(2));
      expect(terminal).toContain(house.solidsPer100Ml.toFixed(2));
    }
  });
});

describe('the workbook without a file system', () => {
  it('holds, part for part, what the writer for a file system writes', async () => {
    const { order } = (await answersOf(demo)).answers;
    const book = orderSheetXlsx(order.sheet);
    const written = write(
      book.sheets as never,
      { features: book.features as never } as never,
    ) as unknown as { toBuffer(): Promise<Uint8Array> };
    const [here, there] = [
      unzipSync(await orderWorkbook(order.sheet)),
      unzipSync(new Uint8Array(await written.toBuffer())),
    ];
    // The time of writing stands in the properties.
    const parts = Object.keys(there).filter((name) => !name.startsWith('docProps/'));
    expect(parts.filter((name) => /sheet\d+\.xml$/.test(name))).toHaveLength(6);
    for (const name of parts) expect(here[name], name).toEqual(there[name]);
  });
});

describe('measures', () => {
  /** NIST Handbook 44 (2024), appendix C: exact values of inch, pound, ounce, US fluid ounce; 0 and 100 °C are 32 and 212 °F. */
  it('are converted as NIST defines them', () => {
    const us = formatsFor({ locale: 'en', currency: 'USD', openingMinute: null, units: 'us' });
    expect(
      [
        us.length(25.4),
        us.mass(453.59237),
        us.mass(28.349523125),
        us.volume(29.5735295625),
        us.temperature(0),
        us.temperature(100),
        us.height(91.44),
      ].map(flat),
    ).toEqual(['1 in', '1 lb 0 oz', '1.0 oz', '1.0 fl oz', '32 °F', '212 °F', '36 in']);
    const metric = formatsFor({ locale: 'de', currency: 'EUR', openingMinute: null });
    expect(
      [
        metric.length(1.9),
        metric.length(2),
        metric.mass(7840),
        metric.temperature(51.4),
        metric.height(89.6),
      ].map(flat),
    ).toEqual(['1,9 mm', '2 mm', '7,8 kg', '51 °C', '90 cm']);
  });
});

describe('a value of several parts', () => {
  it('is written without brackets of a program; clock times and lists stay', () => {
    expect(plainData('{lognormal:{mean:15 min,sd:8 min}}')).toBe(
      'lognormal: mean 15 min, sd 8 min',
    );
    expect(plainData('[medium-cup,saucer]')).toBe('[medium-cup, saucer]');
    expect(plainData('{at:08:15}')).toBe('at 08:15');
    expect(plainData('58 / h')).toBe('58 / h');
  });
});

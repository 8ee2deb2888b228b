/** What a morning's sheet is worth, against brute force; and sheets of mornings whose truth is known. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { sheetFacts } from '../../../src/questions/measure/facts.js';
import { halfWidths } from '../../../src/questions/measure/foretold.js';
import { habitReaders, measuredInputs } from '../../../src/questions/measure/inputs.js';
import { compile } from '../../../src/scenario/compile.js';
import { sheetsOf } from '../../../src/questions/measure/given-sheets.js';
import { sheetCsv } from '../../../src/questions/measure/template.js';
import { sheetPage } from '../../../src/questions/measure/print.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { worthByBruteForce } from '../../measuring/brute-force.js';
import { morningOf } from '../../measuring/morning.js';

function demo() {
  const read = readScenario(readFileSync('scenarios/1-commuter-bar.yaml', 'utf8'), 'demo', {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error('the demo cannot be read');
  const context = contextOf(read.scenario, read.inputs, '', piecesPerRackOf);
  return { ...read, facts: sheetFacts(read.scenario, context, []) };
}
/** Reads no habit. */
const blind = { read: () => null, now: null };
const bytesOf = (text: string) => ({ name: 'sheet.csv', bytes: new TextEncoder().encode(text) });

describe('the worth of a morning', () => {
  it('is what brute force finds on a small house', async () => {
    const { foretold, found } = await worthByBruteForce({ days: 20, draws: 25, mornings: 2 });
    // By hand with 200 draws and 20 mornings: 0.320 foretold, 0.331 found.
    expect(foretold).toBeLessThan(0.5);
    expect(Math.abs(found / foretold - 1)).toBeLessThan(0.5);
  });
});

describe('a sheet of the demo', () => {
  it('reads back empty as it was written, and says that nothing was counted', () => {
    const { facts, scenario, inputs } = demo();
    const empty = sheetCsv(facts).replace('date,', 'date,2026-01-15');
    const sheet = sheetsOf(bytesOf(empty), facts, '2026-01-16');
    if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
    const { measured, kept } = measuredInputs(sheet.value, scenario, inputs, null);
    expect(measured).toEqual([]);
    expect(kept.map(({ path }) => path)).toContain('guests.partySize');
    expect(kept.every(({ why }) => why.length > 10)).toBe(true);
  });

  it('gives back what it measured within a few intervals, marked with n and law', () => {
    const { facts, scenario, inputs } = demo();
    const found = Array.from({ length: 12 }, (_, number) => {
      const sheet = sheetsOf(bytesOf(morningOf(scenario, 'test', number).csv), facts, '2026-01-16');
      if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
      const { measured } = measuredInputs(sheet.value, scenario, inputs, null, () => blind);
      return measured.find(({ path }) => path === 'guests.dwell.bySize.1')!;
    });
    const inside = found.filter(({ low, high }) => low! <= 19 && 19 <= high!);
    // 12 intervals of 95 %: nine or fewer that hold the truth have a chance of 2 %, eight or fewer of 0.3 %.
    expect(inside.length).toBeGreaterThan(8);
    expect(
      found.every(
        ({ n, range, source }) =>
          n >= 12 && range !== null && source.startsWith('sheet of 2026-01-15, '),
      ),
    ).toBe(true);
  });

  it('narrows each input about as far as was foretold', () => {
    const { facts, scenario, inputs } = demo();
    const unmeasured = inputs.map((one) => ({ ...one, basis: 'assumed' as const }));
    const widths = new Map<string, number[]>();
    for (let number = 0; number < 9; number += 1) {
      const sheet = sheetsOf(
        bytesOf(morningOf(scenario, 'width', number).csv),
        facts,
        '2026-01-16',
      );
      if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
      const read = measuredInputs(sheet.value, scenario, unmeasured, null, () => blind);
      for (const { path, low, high } of read.measured)
        if (low !== null) widths.set(path, [...(widths.get(path) ?? []), high! - low]);
    }
    const model = compile(scenario, piecesPerRackOf);
    for (const [path, size] of [
      ['guests.partySize', 1.48],
      ['guests.drinksEach', 1.05],
      ['guests.secondDrink', 0.08],
    ] as const) {
      const { half } = halfWidths(path, size, model, () => blind).tally!;
      const middle = widths.get(path)!.toSorted((a, b) => a - b)[4]!;
      // The middle of nine: guests differ from morning to morning, and with them the width, by a tenth or two.
      expect(middle / (2 * half), path).toBeGreaterThan(0.8);
      expect(middle / (2 * half), path).toBeLessThan(1.25);
    }
  });

  it('reads a habit through the house: a busy morning is no longer taken for a slow round', () => {
    const { scenario } = demo();
    const reader = habitReaders(scenario, 'test')('clearing.every');
    const { minutes, times, cv, beyond, simulated } = reader.now!;
    const at = reader.read(minutes)!;
    // Rounds that are due while the clearer is busy are never walked: more minutes lie between than the ten written.
    expect(minutes).toBeGreaterThan(11);
    expect(at.factor).toBeCloseTo(1, 6);
    expect(at.slope).toBeLessThan(1);
    expect(beyond).toBeGreaterThan(0);
    expect(beyond + simulated).toBeLessThan((cv * cv) / times);
    // The error of the simulation stays, however many mornings are counted.
    expect(at.beyond(2)).toBeGreaterThan(at.beyond(1) / 2);
    expect(at.beyond(2)).toBeLessThan(at.beyond(1));
  });

  it('keeps what was measured before, unless by a sheet', () => {
    const { facts, scenario, inputs } = demo();
    const sheet = sheetsOf(bytesOf(morningOf(scenario, 'test', 0).csv), facts, '2026-01-16');
    if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
    const read = (source: string) =>
      measuredInputs(
        sheet.value,
        scenario,
        inputs.map((one) => (one.path === 'guests.staysIn' ? { ...one, source } : one)),
        null,
        () => blind,
      );
    expect(read('tally').kept.map(({ path }) => path)).toContain('guests.staysIn');
    expect(read('sheet of 2026-01-01, 50 parties').measured.map(({ path }) => path)).toContain(
      'guests.staysIn',
    );
  });

  it('is printed with a row for every quarter hour, in the paper of the place', () => {
    const { facts } = demo();
    const page = sheetPage(facts, '');
    expect(page.match(/<th scope="row">\d\d:\d\d<\/th>/g)!.length).toBe(12 + 4);
    expect(page).toContain('size:A4 landscape');
    expect(sheetPage({ ...facts, paper: 'letter' }, '')).toContain('size:letter landscape');
  });
});

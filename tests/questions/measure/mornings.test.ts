/** Several mornings' sheets, pooled: counts and times as of one, gaps never from one day to the next, and differences named. */
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import write from 'write-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { givenSheets } from '../../../src/questions/measure/given-sheets.js';
import { sheetFacts } from '../../../src/questions/measure/facts.js';
import { measuredInputs, replacedSheets } from '../../../src/questions/measure/inputs.js';
import { readFilled } from '../../../src/questions/measure/read.js';
import { readingBlocks } from '../../../src/questions/measure/tell-reading.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { writeText } from '../../../src/tell/write-text.js';
import { smallHouse } from '../../measuring/brute-force.js';
import { morningOf } from '../../measuring/morning.js';

const opened = (text: string) => {
  const read = readScenario(text, 'house', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
};
const demo = opened(readFileSync('scenarios/1-commuter-bar.yaml', 'utf8'));
const unmeasured = demo.inputs.map((one) => ({ ...one, basis: 'assumed' as const }));
const facts = sheetFacts(
  demo.scenario,
  contextOf(demo.scenario, demo.inputs, '', piecesPerRackOf),
  [],
);
/** Reads no habit. */
const blind = { read: () => null, now: null };
const DAYS = ['2026-01-13', '2026-01-15', '2026-01-20'];
const TODAY = '2026-02-01';

/** The sheet of a simulated morning, as of a day. */
const csvOf = (scenario: typeof demo.scenario, seed: string, number: number, date: string) =>
  morningOf(scenario, seed, number).csv.replace('date,2026-01-15', `date,${date}`);
const file = (text: string, name = 'sheet.csv') => ({
  name,
  bytes: new TextEncoder().encode(text),
});
const sheetsOf = async (...files: ReturnType<typeof file>[]) => {
  const read = await givenSheets(files, facts, TODAY);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.value;
};
const flawsOf = async (...files: ReturnType<typeof file>[]) => {
  const read = await givenSheets(files, facts, TODAY);
  return read.ok
    ? []
    : read.problems.map(({ file, line, path, message }) => `${file}:${line}: ${path}: ${message}`);
};
type Sheets = Awaited<ReturnType<typeof sheetsOf>>;
const inputsOf = (sheets: Sheets) =>
  measuredInputs(sheets, demo.scenario, unmeasured, null, () => blind);
const measuredIn = (sheets: Sheets, path: string) =>
  inputsOf(sheets).measured.find((one) => one.path === path);

const one = csvOf(demo.scenario, 'pooled', 0, DAYS[0]!);
const other = csvOf(demo.scenario, 'pooled', 1, DAYS[1]!);

describe('mornings given together', () => {
  it('are the same as two files, as one file beneath each other, and as two sheets of a workbook', async () => {
    const two = await sheetsOf(file(other), file(one));
    expect(two.map(({ date }) => date)).toEqual([DAYS[0], DAYS[1]]);
    const bare = (sheets: Sheets) =>
      JSON.parse(JSON.stringify(sheets, (key, value: unknown) => (key === 'row' ? 0 : value)));
    expect(bare(await sheetsOf(file(`${one}\n\n${other}`)))).toEqual(bare(two));
    const cells = (csv: string) =>
      (parse(csv, { relax_column_count: true, skip_empty_lines: false }) as string[][]).map((row) =>
        row.map((value) => ({ type: String, value })),
      );
    const blob = await write([
      { sheet: 'Notes', data: [[{ type: String, value: 'rain until nine' }]] },
      { sheet: 'Tuesday', data: cells(one) },
      { sheet: 'Thursday', data: cells(other) },
    ] as never).toBlob();
    const workbook = { name: 'both.xlsx', bytes: new Uint8Array(await blob.arrayBuffer()) };
    expect(bare(await sheetsOf(workbook))).toEqual(bare(two));
  });

  it('are refused with the same day twice, or with other columns, and with all that is wrong with any', async () => {
    expect(await flawsOf(file(one, 'a.csv'), file(one, 'b.csv'))).toEqual([
      `b.csv:3: date: "${DAYS[0]}" is the day of another sheet too (a.csv); give each morning once, with all its parts in one sheet`,
    ]);
    const pair = one
      .split('\n')
      .slice(0, 5)
      .concat('from,in 1,in 2+,out 1,out 2+,away 1,away 2+,first drinks,second drinks,seats taken')
      .join('\n')
      .replace(DAYS[0]!, DAYS[2]!);
    expect((await flawsOf(file(one), file(pair))).join()).toContain(
      '"2 sizes" are not the 4 party sizes of the first sheet',
    );
    const wrong = await flawsOf(
      file(one.replace(DAYS[0]!, 'Tuesday'), 'a.csv'),
      file(other.replace('stays\n', 'stayed\n'), 'b.csv'),
    );
    expect(wrong[0]).toMatch(/^a\.csv:3: date: "Tuesday" is not a day/);
    expect(wrong[1]).toMatch(/^b\.csv:\d+: /);
  });
});

describe('what pooled mornings say', () => {
  it('of a morning and itself is the same mean, with an interval of about 1/√2', async () => {
    const alone = await sheetsOf(file(one));
    const twice = [alone[0]!, { ...alone[0]!, date: DAYS[2]! }];
    const { measured, differences } = inputsOf(twice);
    expect(differences!.compared).toBeGreaterThan(5);
    expect(differences!.differ).toEqual([]);
    for (const { path, mean, low, high, n, source } of measured) {
      const single = measuredIn(alone, path);
      // Too few on one morning, and enough on two.
      if (single === undefined) continue;
      expect(source).toMatch(/^sheets of 2026-01-13 and 2026-01-20, /);
      expect(n, path).toBe(2 * single.n);
      // Rounded as a file writes them; the law of the stays is fitted anew, and its spread moves their mean a little.
      expect(Math.abs(mean / single.mean - 1), path).toBeLessThan(0.02);
      if (low === null || single.low === null) continue;
      const shrinks = (high! - low) / (single.high! - single.low);
      expect(shrinks, path).toBeGreaterThan(0.6);
      expect(shrinks, path).toBeLessThan(0.8);
    }
  });

  it('has no gap from the last round of one day to the first of the next', async () => {
    const both = await sheetsOf(file(one), file(other));
    const every = (sheets: Sheets) =>
      inputsOf(sheets).kept.find(({ path }) => path === 'clearing.every')!.why;
    const gaps = both.map(({ rounds }) => rounds.length - 1);
    expect(every(both)).toContain(`${gaps[0]! + gaps[1]!} gaps between rounds`);
  });

  it('holds the truth about as often as it says, and seldom calls equal mornings different', async () => {
    const pairs = 8;
    let [inside, seen, named] = [0, 0, 0];
    for (let pair = 0; pair < pairs; pair += 1) {
      const sheets = await sheetsOf(
        ...[0, 1].map((half) =>
          file(csvOf(demo.scenario, 'pairs', 2 * pair + half, DAYS[half]!), `${half}.csv`),
        ),
      );
      const { measured, differences } = inputsOf(sheets);
      named += differences!.differ.length;
      for (const [path, truth] of [
        ['guests.dwell.bySize.1', 19],
        ['guests.staysIn', 0.45],
        ['guests.secondDrink', 0.08],
      ] as const) {
        const { low, high } = measured.find((each) => each.path === path)!;
        seen += 1;
        inside += low! <= truth && truth <= high! ? 1 : 0;
      }
    }
    // 24 intervals of 95 %: 19 or fewer that hold the truth have a chance of 0.6 %.
    expect([inside > 19, seen]).toEqual([true, 24]);
    // At 5 % of 8 pairs, three or more have a chance of 0.6 %.
    expect(named).toBeLessThan(3);
  });

  it('names what differs, with a range that holds what each morning says; an earlier sheet is replaced', async () => {
    const raw = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');
    const busy = opened(raw.replace(/^ {2}staysIn: .*/m, '  staysIn: 75 %'));
    const sheets = await sheetsOf(file(one), file(csvOf(busy.scenario, 'busy', 0, DAYS[1]!)));
    const { differences, measured } = inputsOf(sheets);
    const named = differences!.differ.find(({ path }) => path === 'guests.staysIn');
    expect(named).toMatchObject({ unit: 'share' });
    const { low, high } = measured.find(({ path }) => path === 'guests.staysIn')!;
    expect(low).toBeLessThanOrEqual(named!.mornings[0]!.mean);
    expect(high).toBeGreaterThanOrEqual(named!.mornings[1]!.mean);
    const earlier = unmeasured.map((input) =>
      input.path === 'guests.staysIn' ? { ...input, source: 'sheet of 2026-01-01, 90' } : input,
    );
    expect(replacedSheets(earlier, inputsOf(sheets))).toEqual(['sheet of 2026-01-01']);
    expect(replacedSheets(unmeasured, inputsOf(sheets))).toEqual([]);
  });

  it('leaves arrivals and the day factor alone, says so, and foretells what one more morning leaves', async () => {
    const house = opened(smallHouse);
    const context = contextOf(house.scenario, house.inputs, '', piecesPerRackOf);
    const read = await readFilled({
      files: [0, 1].map((number) => file(csvOf(house.scenario, 'small', number, DAYS[number]!))),
      opened: house,
      text: smallHouse,
      facts: sheetFacts(house.scenario, context, []),
      today: TODAY,
      runner: inThisThread(),
      options: { level: 0.95, seed: '1', days: 20, piecesPerRack: piecesPerRackOf },
    });
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const { reading, text } = read.value;
    expect(reading.dates).toEqual([DAYS[0], DAYS[1]]);
    const width = ({ costLow, costHigh }: typeof reading.after) => costHigh - costLow;
    expect(width(reading.another)).toBeLessThan(width(reading.after));
    expect(width(reading.another)).toBeGreaterThan(width(reading.after) * Math.sqrt(2 / 3) - 1e-9);
    expect(opened(text).scenario.arrivals).toEqual(house.scenario.arrivals);
    const said = writeText(readingBlocks(reading, context), { width: 400, all: true });
    expect(said).toContain('the sheets of 2026-01-13 and 2026-01-15, taken together');
    expect(said).toMatch(/The mornings agree: none of the \d inputs that both give differs/);
    expect(said).toContain('How much whole days differ (dayFactor) stays as it was');
  });
});

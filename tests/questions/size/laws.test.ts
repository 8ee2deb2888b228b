import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/questions/size/answer.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import { study, type StudyOptions } from '../../../src/questions/size/study.js';

const demo = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');

async function answerOf(text: string, options: StudyOptions = {}): Promise<Answer> {
  const read = readScenario(text, 'law.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return (
    await study(read.scenario, inThisThread(), {
      days: 300,
      peaks: true,
      piecesPerRack: piecesPerRackOf,
      ...options,
    })
  ).answer;
}
const pieces = (answer: Answer): number[] => answer.stock.map((line) => line.pieces);

describe('laws of the whole line', () => {
  it('renaming ware and drinks changes no number', async () => {
    const renamed = demo
      .replaceAll('[medium-cup', '[a-cup')
      .replace('  medium-cup: {', '  a-cup: {')
      .replaceAll('flat-white:', 'zebra:');
    expect(renamed).not.toBe(demo);
    const [a, b] = [await answerOf(demo), await answerOf(renamed)];
    expect(b.peaks).toEqual(a.peaks);
    expect(pieces(b)).toEqual(pieces(a));
    expect(b.cost).toBe(a.cost);
  });

  it('the order of ware changes no peak and no least cost', async () => {
    const line = /^ {2}teaspoon: .*\n/m.exec(demo)![0];
    const reordered = demo.replace(line, '').replace('ware:\n', `ware:\n${line}`);
    const [a, b] = [await answerOf(demo), await answerOf(reordered)];
    expect(b.stock[0]!.ware).toBe('teaspoon');
    expect(b.peaks!.map(([spoon, ...rest]) => [...rest, spoon])).toEqual(a.peaks);
    expect(b.cost).toBe(a.cost);
  });

  it('other units for the same quantities change no number', async () => {
    const other = demo
      .replaceAll('120 s', '2 min')
      .replaceAll('50 s', '0.83333333333333333 min')
      .replaceAll('45 %', '0.45')
      .replaceAll('8 min', '480 s');
    expect(other).not.toBe(demo);
    expect(await answerOf(other)).toEqual(await answerOf(demo));
  });

  it('a higher level never costs less', async () => {
    const costs = [];
    for (const level of [0.8, 0.9, 0.95, 0.98]) costs.push((await answerOf(demo, { level })).cost);
    expect(costs).toEqual([...costs].sort((x, y) => x - y));
  });

  it('a provisional answer comes from the first days alone and differs from the full one only in how sure it is', async () => {
    const [quick, full] = [
      await answerOf(demo, { days: 200, certifyOn: 200 }),
      await answerOf(demo, { days: 200 }),
    ];
    expect([quick.days, full.days]).toEqual([
      { chosenOn: 200, certifiedOn: 200 },
      { chosenOn: 200, certifiedOn: 1000 },
    ]);
    expect(pieces(quick)).toEqual(pieces(full));
    const width = ({ certified }: Answer) => certified!.high - certified!.low;
    expect(width(quick)).toBeGreaterThan(width(full));
    const rest = (answer: Answer) => ({ ...answer, days: null, certified: null, warnings: null });
    expect(rest(quick)).toEqual(rest(full));
  });

  it('a low-water rule is searched for, and fresh days do not speak against the stock found', async () => {
    const marked = demo
      .replace('medium-cup: { like: medium-cup,', 'medium-cup: { like: medium-cup, lowWater: 6,')
      .replace('partLoadWait: 8 min', 'partLoadWait: 30 min');
    const sized = await answerOf(marked, { days: 200, peaks: false });
    const stock = Object.fromEntries(sized.stock.map((line) => [line.ware, line.pieces]));
    const judged = await answerOf(marked, { days: 200, peaks: false, stock });
    // A given stock is judged on days that had no part in the choice: the level asked for lies in its interval.
    expect(judged.rushLevel!.high).toBeGreaterThanOrEqual(0.95);
    expect(judged.rushLevel!.low).toBeLessThanOrEqual(0.95);
  });
});

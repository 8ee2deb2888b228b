import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runDays } from '../../src/cafe/run-days.js';
import { byDays, inThisThread } from '../../src/cafe/runner.js';
import { mergeDays, type RushTask } from '../../src/cafe/rush.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

const FILE = 'scenarios/1-commuter-bar.yaml';
const read = readScenario(readFileSync(FILE), FILE, { piecesPerRack: piecesPerRackOf });
if (!read.ok) throw new Error('the demo does not read');
const model = compile(read.scenario, piecesPerRackOf);
const taskOf = (days: number): RushTask => ({
  model,
  seed: 'runner',
  from: 9,
  days,
  stock: null,
  listed: null,
  byDay: true,
});

describe('days run in this thread', () => {
  it.each([
    [3, 3, [3]],
    [5, 2, [2, 2, 1]],
  ])('%s of them: in parts, which together are all', async (days, most, lengths) => {
    const done: number[] = [];
    let pauses = 0;
    const runner = inThisThread(
      (part) => done.push(part),
      async () => void (pauses += 1),
    );
    const parts = await runner.apart(taskOf(days), most);
    expect(parts.map((part) => part.days)).toEqual(lengths);
    expect(done).toEqual(lengths);
    expect(pauses).toBeGreaterThanOrEqual(lengths.length);
    const whole = runDays(taskOf(days));
    expect(mergeDays(parts)).toEqual(whole);
    expect(await runner.run(taskOf(days))).toEqual(whole);
    // Whoever is done first comes first; the days say what their order is.
    for (const turned of [parts.toReversed(), [...parts.slice(1), ...parts.slice(0, 1)]])
      expect(byDays(turned)).toEqual(parts);
  });
});

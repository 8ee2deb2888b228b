import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  loadTimes,
  lossesOver,
  slowerClearing,
  storageOf,
} from '../../../src/questions/cards/facts.js';
import { meanMs, scaledLaw, type DurationLaw } from '../../../src/engine/durations.js';
import { orderStudy } from '../../../src/questions/order/study.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import type { Scenario } from '../../../src/scenario/scenario.js';
import { study } from '../../../src/questions/size/study.js';
import { solver } from '../../ordering/solver.js';
import { changed, valid } from '../../scenario/a-scenario.js';

function scenarioOf(text: string): Scenario {
  const read = readScenario(text, 'a.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.scenario;
}

const bar = scenarioOf(
  readFileSync(new URL('../../../scenarios/1-commuter-bar.yaml', import.meta.url), 'utf8'),
);
const runner = inThisThread();

describe('slower clearing', () => {
  it('is the difference of two studies of the same days', async () => {
    const days = 80;
    const facts = await slowerClearing(bar, runner, { days, seed: 'a' });
    if (bar.clearing === 'atOnce') throw new Error('the bar walks rounds');
    const sized = async (every: DurationLaw) =>
      (
        await study(
          {
            ...bar,
            clearing: { ...(bar.clearing as Exclude<Scenario['clearing'], 'atOnce'>), every },
          },
          runner,
          { days, certifyOn: 1, seed: 'a', piecesPerRack: piecesPerRackOf },
        )
      ).answer;
    const [now, slow] = [
      await sized(bar.clearing.every),
      await sized(scaledLaw(bar.clearing.every, 2)),
    ];
    expect(facts).toMatchObject({ everyMinutes: 20, insteadOfMinutes: 10, days });
    expect(facts.ware.map(({ extraPieces }) => extraPieces)).toEqual(
      now.stock.map(({ pieces }, index) => slow.stock[index]!.pieces - pieces),
    );
    expect(facts.extraPieces).toBe(
      facts.ware.reduce((sum, { extraPieces }) => sum + extraPieces, 0),
    );
    expect(facts.extraCost).toBeCloseTo(slow.cost - now.cost, 9);
    expect(facts.extraTurnedAway).toBe(slow.guests.turnedAway - now.guests.turnedAway);
  });

  it('costs pieces where all else is ample: what lies longer on the table is out longer', async () => {
    const ample = scenarioOf(
      changed(
        'clearing: atOnce',
        'clearing: { every: 15 min, clearers: unlimited, tripPieces: unlimited, trip: 0 s }',
        changed('seats: { count: 20 }', 'seats: { count: unlimited }'),
      ),
    );
    expect((await slowerClearing(ample, runner, { days: 100 })).extraPieces).toBeGreaterThan(0);
  });

  it('compares clearing at once with rounds every ten minutes', async () => {
    const facts = await slowerClearing(scenarioOf(valid), runner, { days: 100 });
    expect(facts).toMatchObject({ everyMinutes: 10, insteadOfMinutes: null });
    expect(facts.extraPieces).toBeGreaterThan(0);
  });
});

describe('where the pieces stand', () => {
  it('is what the order says', async () => {
    const ordered = await orderStudy(bar, runner, {
      days: 120,
      date: '2026-03-02',
      loadSolver: solver,
    });
    if (!ordered.ok) throw new Error('no order');
    expect(ordered.value.storage).not.toBeNull();
    expect(storageOf(bar, ordered.value.answer)).toEqual(ordered.value.storage);
  });

  it('is null where nothing is said, and needs watched days where it is', async () => {
    const plain = scenarioOf(valid);
    const { answer } = await study(plain, runner, {
      days: 20,
      certifyOn: 1,
      piecesPerRack: piecesPerRackOf,
    });
    expect(storageOf(plain, answer)).toBeNull();
    expect(() => storageOf({ ...plain, storage: { top: {} } }, answer)).toThrow(RangeError);
  });
});

describe('losses', () => {
  it('are rate × uses for breakage, and grow with the days', async () => {
    const { answer } = await study(bar, runner, {
      days: 20,
      certifyOn: 1,
      piecesPerRack: piecesPerRackOf,
    });
    const scenario: Scenario = {
      ...bar,
      supply: {
        ...bar.supply!,
        losses: { 'medium-cup': { perThousandUses: 2 } },
        rushShare: 0.5,
      },
      calendar: { daysAWeek: 5 },
    };
    const uses = answer.uses.find(({ ware }) => ware === 'medium-cup')!.aDay;
    // By hand: uses of the rush are half of the day's, on five days a week, two broken in a thousand.
    expect(lossesOver(scenario, answer, 'medium-cup', 7).broken).toBeCloseTo(
      (uses * 2 * 5 * 2) / 1000,
      9,
    );
    expect(lossesOver(scenario, answer, 'medium-cup', 14).broken).toBeCloseTo(
      2 * lossesOver(scenario, answer, 'medium-cup', 7).broken,
      9,
    );
    const spoons = lossesOver(bar, answer, 'teaspoon', 365);
    const held = answer.stock.find(({ ware }) => ware === 'teaspoon')!.pieces;
    expect(spoons.gone).toBeGreaterThan(0);
    expect(spoons.gone).toBeLessThan(held);
  });
});

describe('a load', () => {
  it('takes its mean times', () => {
    // 40 s + 120 s + 40 s, the undercounter machine of shared/machine-classes.json with the bar's own cycle.
    expect(loadTimes(bar)).toEqual({
      handsMs: 80_000,
      machineMs: 200_000,
      racks: 1,
      waterMl: 3300,
    });
    expect(meanMs({ law: 'measured', valuesMs: [10, 20, 60] })).toBe(30);
    expect(meanMs({ law: 'exponential', meanMs: 7 })).toBe(7);
    expect(meanMs({ law: 'gamma', meanMs: 7, sdMs: 2 })).toBe(7);
    expect(meanMs({ law: 'lognormal', meanMs: 8, sdMs: 3 })).toBe(8);
  });
});

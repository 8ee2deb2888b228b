import { describe, expect, it } from 'vitest';
import { candidatesOf, type Candidate } from '../../../src/questions/compare/alternatives.js';
import { extraOf } from '../../../src/questions/compare/evaluate.js';
import { QuickReader } from '../../../src/questions/compare/quick.js';
import { screened, usualCandidates } from '../../../src/questions/compare/screen.js';
import { usualQuestions } from '../../../src/questions/compare/usual.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { opened, scenarioNames } from '../sections/answers.js';

const reading = { piecesPerRack: piecesPerRackOf };
const baseOf = (name: string): Candidate => {
  const candidates = candidatesOf(opened(name), name, reading);
  if (!candidates.ok) throw new Error(candidates.problems[0]!.message);
  return candidates.all[0]!;
};
const demo = baseOf(scenarioNames[0]!);
const asked = (id: string): Candidate =>
  usualCandidates(demo, reading).find((one) => one.id === id)!;
const machines = ({ scenario }: Candidate): number =>
  Array.isArray(scenario.washing.machines)
    ? scenario.washing.machines.reduce((sum, { count }) => sum + (count ?? 1), 0)
    : 0;

it('what comes over the demo is no choice: a machine that fails, more guests', () => {
  const candidates = candidatesOf(opened(scenarioNames[0]!), 'demo', reading);
  if (!candidates.ok) throw new Error(candidates.problems[0]!.message);
  const plans = candidates.all.filter(({ planFor }) => planFor).map(({ id }) => id);
  expect(plans).toEqual(['machine-down', 'busier']);
});

describe('the usual questions', () => {
  it.each(scenarioNames.map((name) => [name] as const))(
    'are valid changes of %s, each of them a change, no name twice',
    (name) => {
      const base = baseOf(name);
      const all = usualCandidates(base, reading);
      expect(all.length).toBeGreaterThan(12);
      expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
      for (const { scenario } of all) expect(scenario).not.toEqual(base.scenario);
      const plans = new Set(usualQuestions.filter((one) => one.planFor).map(({ id }) => id));
      for (const { id, planFor } of all) expect(planFor).toBe(plans.has(id));
    },
  );

  it('change what their names say in the demo', () => {
    expect(machines(asked('another-machine'))).toBe(machines(demo) + 1);
    expect(asked('faster-machine').scenario.washing.machines).toMatchObject([{ class: 'hood' }]);
    expect(usualCandidates(demo, reading).some(({ id }) => id === 'one-machine-fewer')).toBe(false);
    const cups = (one: Candidate): string[] =>
      Object.keys(one.scenario.ware).filter((id) => one.scenario.ware[id]!.shape === 'cup');
    expect(cups(demo)).toHaveLength(2);
    expect(cups(asked('one-cup'))).toEqual(['large-cup']);
    expect(asked('barista-more').scenario.counter.makers).toBe(3);
    expect(asked('more-takeaway').scenario.guests.staysIn).toBeCloseTo(0.35, 12);
    // By the time of day: every part of it.
    const corner = baseOf('4-bakery-corner.yaml');
    const fewer = usualCandidates(corner, reading).find(({ id }) => id === 'less-takeaway')!;
    expect(fewer.scenario.guests.staysIn).toEqual(
      (corner.scenario.guests.staysIn as readonly { for: number; staysIn: number }[]).map(
        (step) => ({ ...step, staysIn: expect.closeTo(step.staysIn + 0.1, 12) as number }),
      ),
    );
    const narrower = asked('narrower-cup').scenario;
    const changed = Object.keys(narrower.ware).filter(
      (id) => narrower.ware[id]!.rim !== demo.scenario.ware[id]!.rim,
    );
    expect(changed).toHaveLength(1);
    expect(narrower.ware[changed[0]!]!.rim).toBeLessThan(demo.scenario.ware[changed[0]!]!.rim!);
  });

  it('are thinned to those that matter, another machine always among them', async () => {
    const quick = { level: 0.95, seed: 'screen', days: 60, ...reading };
    const { kept, left } = await screened(demo, inThisThread(), quick, reading);
    expect(kept[0]!.id).toBe('base');
    expect(kept.some(({ id }) => id === 'another-machine')).toBe(true);
    expect(kept.length).toBeLessThanOrEqual(1 + 6 + 3 + 1);
    const all = usualCandidates(demo, reading);
    expect(kept.length - 1 + left.length).toBe(all.length);
    // What asks for less ware than the house needs is nothing to plan for.
    const reader = new QuickReader(inThisThread(), { ...quick, seed: `${quick.seed}/screen` });
    const plans = all.filter(({ planFor }) => planFor);
    const costs = new Map<string, number>();
    for (const one of plans)
      costs.set(one.name, (await reader.read(one.scenario, extraOf(one))).stockCost);
    const stayed = plans.filter(({ id }) => kept.some((one) => one.id === id));
    expect(stayed).toHaveLength(3);
    const least = Math.min(...stayed.map(({ name }) => costs.get(name)!));
    for (const name of left) expect(costs.get(name) ?? 0).toBeLessThanOrEqual(least);
  });
});

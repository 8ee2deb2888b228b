import { describe, expect, it } from 'vitest';
import published from '../../../shared/checks/published.json' with { type: 'json' };
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { racksStudy } from '../../../src/questions/racks/study.js';
import type { RacksAnswer } from '../../../src/questions/racks/answer.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import { demoApart as demo } from '../../scenario/demo-apart.js';

async function racksOf(text: string): Promise<RacksAnswer> {
  const read = readScenario(text, 'racks.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return racksStudy(read.scenario, inThisThread());
}
const withCup = (fields: string, rest = ''): string =>
  `${demo.replace('like: medium-cup, name: Medium cup,', `like: medium-cup, name: Medium cup, ${fields},`)}\n${rest}`;

const usual = await racksOf(demo);

describe('racks as a study', () => {
  it('a cup that no longer goes in its compartments when wider moves to the rack with fewest loads', async () => {
    const { twoShapes, lines } = await racksOf(
      withCup(
        'rim: 84 mm, handle: 0 mm, family: narrow',
        'racks: { families: { narrow: grid-25 } }',
      ),
    );
    const [now, wide] = twoShapes!.shapes;
    expect([now!.racks['medium-cup'], now!.perRack['medium-cup']]).toEqual(['grid-25', 25]);
    expect(wide!.racks['medium-cup']).not.toBe('grid-25');
    expect(wide!.perRack['medium-cup']).toBeLessThan(25);
    expect(lines.find(({ ware, used }) => ware === 'medium-cup' && used)!.rack).toBe('grid-25');
  });

  it('where racks wait until they are full, wider cups take more of them and more handling', async () => {
    const { twoShapes } = await racksOf(demo.replace(/partLoadWait: .*/, 'partLoadWait: 90 min'));
    const [now, wide] = twoShapes!.shapes;
    expect(wide!.racksADay).toBeGreaterThan(now!.racksADay + 0.5);
    expect(wide!.handlingMinutes).toBeGreaterThan(now!.handlingMinutes + 0.5);
  });

  it('tells nothing of wider cups that no rack takes', async () => {
    expect((await racksOf(withCup('rim: 450 mm, handle: 0 mm, perRack: 1'))).twoShapes).toBeNull();
  });

  it('the racks of the plan are no more than those in use, and cups alone take part of them', () => {
    const { plan, twoShapes } = usual;
    expect(plan.fewest).toBe(true);
    expect(plan.racksADay).toBeLessThanOrEqual(plan.usedRacksADay!);
    expect(twoShapes!.shapes[0]!.fullRacksADay).toBeLessThan(plan.usedRacksADay!);
  });

  it('counts spoons among the racks that would be washed if all were full, as washing does', async () => {
    const spoons = (perRack: number): string =>
      demo.replace('price: 1.30 EUR }', `price: 1.30 EUR, perRack: ${perRack} }`);
    expect(spoons(60)).not.toBe(demo);
    const [few, many] = [await racksOf(spoons(60)), await racksOf(spoons(120))];
    const more = few.plan.usedRacksADay! - many.plan.usedRacksADay!;
    expect(more).toBeGreaterThan(0.3);
    expect(few.plan.racksADay - many.plan.racksADay).toBeCloseTo(more, 9);
  });

  it('advises a lift by the length of the shift: a morning of three hours has the multiplier of long work (NIOSH 94-110, table 5)', () => {
    const { lines, lift } = usual;
    const { LCkg } = (published as unknown as { id: string; expected: { LCkg: number } }[]).find(
      ({ id }) => id === 'niosh-multipliers',
    )!.expected;
    // By hand, at the destination, the worse end: HM 25/40; VM 1 − 0.003 × 30; DM 0.82 + 4.5/45; FM 0.85 at 0.2 a minute or fewer (from memory), CM 0.95 below 75 cm.
    expect(lift).toEqual({ reachCm: 40, fromCm: 90, toCm: 45 });
    const limit = LCkg * (25 / 40) * (1 - 0.003 * 30) * (0.82 + 4.5 / 45) * 0.85 * 0.95;
    for (const { loadedKg, liftingIndex } of lines)
      expect(liftingIndex).toBeCloseTo(loadedKg! / limit, 6);
  });

  it('says nothing of mass and lifting where the mass of a piece is not known', async () => {
    const { lines } = await racksOf(
      demo.replace(
        'like: tumbler, name: Tumbler,',
        'name: Tumbler, shape: glass, rim: 77 mm, height: 96 mm, drying: 4 min, family: glasses,',
      ),
    );
    const glasses = lines.filter(({ ware }) => ware === 'tumbler');
    expect(glasses.length).toBeGreaterThan(0);
    for (const { loadedKg, liftingIndex } of glasses)
      expect([loadedKg, liftingIndex]).toEqual([null, null]);
  });

  it('counts the extenders of a tall glass', () => {
    const { lines } = usual;
    const glass = lines.find(({ ware, rack }) => ware === 'tumbler' && rack === 'grid-25')!;
    // 96 mm in a rack of 80 mm inside, 40 mm an extender (assumed).
    expect(glass.extenders).toBe(1);
    for (const line of lines.filter(({ rack }) => rack === 'open')) expect(line.extenders).toBe(0);
  });
});

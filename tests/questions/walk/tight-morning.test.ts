/** The tight morning: counts of one simulated day, never more than the stock, the tightest moment among them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { busiestHour, meanStayMinutes } from '../../../src/questions/size/house-measures.js';
import { thinned, tightMorningChart } from '../../../src/questions/walk/charts/tight-morning.js';
import { titleOf } from '../../../src/tell/charts/style.js';
import { formatsFor } from '../../../src/tell/format.js';
import { fixtureContext } from '../../tell/fixture.js';
import { walkDay } from '../../../src/questions/walk/day.js';
import { tightMorning } from '../../../src/questions/walk/tight-morning.js';

function opened(name: string) {
  const read = readScenario(readFileSync(`scenarios/${name}`, 'utf8'), name, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(name);
  return { model: compile(read.scenario, piecesPerRackOf), seed: read.scenario.seed };
}
const houses = ['1-commuter-bar.yaml', '2-brunch-room.yaml', '4-bakery-corner.yaml'];

describe.each(houses)('%s', (name) => {
  const { model, seed } = opened(name);

  it('has its pieces within the stock at every moment, and the peak of the walk among them', () => {
    for (const day of [0, 7]) {
      const free = walkDay({ model, seed, day, stock: null, listed: null });
      const walk = walkDay({ model, seed, day, stock: free.peaks, listed: null });
      for (const ware of walk.wares) {
        const morning = tightMorning(walk, ware);
        const off = morning.moments.map(({ counts }) => counts.reduce((a, b) => a + b, 0));
        const peak = walk.peaks[walk.wares.indexOf(ware)]!;
        expect(Math.max(...off)).toBe(peak);
        expect(morning.tightest.left).toBe(morning.stock - peak);
        expect(off.at(-1)).toBe(0);
        const minutes = morning.moments.map(({ minute }) => minute);
        expect(minutes).toEqual(minutes.toSorted((a, b) => a - b));
        expect(minutes).toContain(morning.tightest.minute);
        // On a phone fewer moments are drawn, the tightest among them.
        const drawn = thinned(morning).moments;
        expect(drawn.length).toBeLessThanOrEqual(Math.min(46, minutes.length));
        expect(morning.moments).toEqual(expect.arrayContaining([...drawn]));
        expect(drawn).toContainEqual(
          morning.moments.find(({ minute }) => minute === morning.tightest.minute),
        );
        expect(drawn.at(-1)!.minute).toBe(minutes.at(-1));
      }
    }
  });
});

describe('a house that needs no ware', () => {
  it('has no tight moment: nothing is said to be left, or to have run out', () => {
    const morning = {
      day: 0,
      ware: 'cup',
      stock: 0,
      moments: [0, 60].map((minute) => ({ minute, counts: [0, 0, 0, 0] as const })),
      tightest: { minute: 0, left: 0 },
    };
    const { spec } = tightMorningChart(
      { morning, name: 'Cup', openingMinute: 480 },
      { locale: 'en', formats: formatsFor(fixtureContext()) },
    );
    expect([titleOf(spec), spec.description]).toEqual([
      'A tight day: nothing leaves the shelf',
      'On a simulated day as busy as about 1 day in 20 no piece is used.',
    ]);
  });
});

describe('measures of the house', () => {
  it('are those that the first example says', () => {
    const { model } = opened('1-commuter-bar.yaml');
    expect(busiestHour(model)).toBeCloseTo(64, 6);
    // Parties of 1, 2, 3, 4 with weights 62, 30, 6, 2 %; guests alone stay 19 min, others 27.
    const guests = 0.62 + 0.6 + 0.18 + 0.08;
    expect(meanStayMinutes(model)).toBeCloseTo((0.62 * 19 + (0.6 + 0.18 + 0.08) * 27) / guests, 6);
  });
});

import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../src/questions/compare/alternatives.js';
import { takeLooks } from '../../../src/questions/compare/looks.js';
import { compareStudy } from '../../../src/questions/compare/study.js';
import { tellComparison } from '../../../src/questions/compare/tell.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { writeText } from '../../../src/tell/write-text.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import { idealised, steady } from '../../published/scenario-of.js';

/** A café of cups alone: guests one a minute, washed at once; of three dwells the shortest keeps the fewest cups out, so it needs the least money. */
const dwelling = (minutes: number): Record<string, unknown> => ({ exponential: `${minutes} min` });
const tree = idealised({
  ...steady(1, 20),
  guests: { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: dwelling(8) },
  costs: { indifference: '0.5 EUR' },
  alternatives: {
    shorter: { change: { 'guests.dwell': dwelling(3) } },
    longer: { change: { 'guests.dwell': dwelling(18) } },
  },
});

describe('the ranking of a tiny idealised café', () => {
  const read = readScenario(JSON.stringify(tree), 'tiny.json');
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const candidates = candidatesOf(read, 'tiny.json');
  if (!candidates.ok) throw new Error(candidates.problems.map(({ message }) => message).join('\n'));

  it('is the known order, told apart the right way round, in at least 95 % of 60 repeated trials', async () => {
    let right = 0;
    for (let trial = 0; trial < 60; trial += 1) {
      const { houses } = await takeLooks(candidates.all, inThisThread(), {
        level: 0.95,
        seed: `trial ${trial}`,
        looks: [200],
        habitDays: 0,
      });
      if (houses.map(({ verdict }) => verdict).join() === ',cheaper,dearer') right += 1;
    }
    expect(right).toBeGreaterThanOrEqual(57);
  }, 240_000);

  it('stops looking once something can be said of every house', async () => {
    const { houses } = await takeLooks(candidates.all, inThisThread(), {
      level: 0.95,
      seed: 'once',
      looks: [400, 800, 1600],
      habitDays: 0,
    });
    expect(houses.map(({ byLook }) => byLook.length)).toEqual([0, 1, 1]);
  });
});

describe('an alternative that is no choice', () => {
  const read = readScenario(
    JSON.stringify(
      idealised({
        ...steady(1, 20),
        guests: {
          partySize: 1,
          staysIn: '100 %',
          drinksEach: 1,
          secondDrink: 0,
          dwell: dwelling(8),
        },
        alternatives: {
          quieter: { scale: { arrivals: '50 %' } },
          longer: { change: { 'guests.dwell': dwelling(12) } },
          busier: { scale: { arrivals: '150 %' } },
        },
      }),
    ),
    'tiny.json',
  );
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const found = candidatesOf(read, 'tiny.json');
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('\n'));

  it('has no verdict of money, though half the guests need fewer cups, and stands apart', async () => {
    const comparison = await compareStudy(found.all, inThisThread(), {
      days: 100,
      noLevel: true,
    });
    const { ranking, alternatives } = comparison;
    const [base, quieter, longer, busier] = alternatives;
    expect(quieter!.total).toBeLessThan(base!.total);
    expect([ranking.best, ranking.notRanked]).toEqual(['base', ['quieter', 'busier']]);
    expect(ranking.order.slice(-2).toSorted()).toEqual(['busier', 'quieter']);
    expect([quieter!.said, busier!.said, longer!.said]).toEqual([null, null, 'dearer']);
    // The stock as it is lasts on more of the quiet days and on fewer of the busy ones.
    expect(quieter!.asItIsLasts!.level).toBeGreaterThan(base!.certified!.level);
    expect(busier!.asItIsLasts!.level).toBeLessThan(base!.certified!.level);
    const text = writeText(tellComparison(comparison, contextOf(read.scenario, read.inputs, '')));
    const apart = text.slice(text.indexOf('To plan for'), text.indexOf('Money from today'));
    expect(apart).toMatch(/- Quieter: your stock as it is lasts on/);
    expect(apart).toMatch(
      /- Busier: your stock as it is lasts on .+ To reach 95.%, have \d+ cups more/s,
    );
    expect(apart).not.toMatch(/It (pays|does not pay)|close to call/);
    expect(text.slice(text.indexOf('Money from today'))).not.toMatch(/Quieter|Busier/);
  });
});

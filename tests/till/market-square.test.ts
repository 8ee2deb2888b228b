/** The café on the market square: its till is as drawn, its kinds of day are found as they were drawn, and one stock holds on each. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { study } from '../../src/questions/size/study.js';
import { askTill } from '../../src/questions/till/ask.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { MARKET_DAY, marketTill, SATURDAY, USUAL } from './market-till.js';
import { inPieces } from './sales.js';

const read = (name: string) => readFileSync(`scenarios/market-square/${name}`);
const given = (name: string) => ({ name, bytes: read(name) });
const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
const times = (kind: typeof USUAL) => sum(kind.hours) / sum(USUAL.hours);

describe('the market square', () => {
  it('has the till that its script draws', () => {
    expect(read('till.csv').toString()).toBe(marketTill());
  });

  it('has kinds of day that are found as they were drawn, and the scenario that the command writes', async () => {
    const reply = await askTill({
      map: given('till.map.yaml'),
      scenario: given('market-square.yaml'),
      sales: { name: 'till.csv', open: () => inPieces(marketTill()) },
      outName: 'by-kinds.yaml',
    });
    if (!reply.ok) throw new Error(reply.problems.map(({ message }) => message).join('\n'));
    const [market, saturday] = reply.value.kinds.compared;
    expect([market!.id, market!.differs]).toEqual(['market-day', ['volume', 'shape']]);
    expect([saturday!.id, saturday!.differs]).toEqual(['saturday', ['volume', 'shape', 'mix']]);
    for (const [found, drawn] of [
      [market!, MARKET_DAY],
      [saturday!, SATURDAY],
    ] as const) {
      expect(found.times.low).toBeLessThan(times(drawn));
      expect(found.times.high).toBeGreaterThan(times(drawn));
    }
    expect(reply.value.text).toBe(read('by-kinds.yaml').toString());
  });

  it('needs its stock for market days and Saturdays; usual days need less', async () => {
    const opened = readScenario(read('by-kinds.yaml').toString(), 'by-kinds.yaml', {
      piecesPerRack: piecesPerRackOf,
    });
    if (!opened.ok) throw new Error(opened.problems[0]!.message);
    const { answer } = await study(opened.scenario, inThisThread(), {
      days: 60,
      certifyOn: 100,
      piecesPerRack: piecesPerRackOf,
    });
    const safe = new Map(answer.kinds!.map(({ id, certified }) => [id, certified!.level]));
    expect([...safe.keys()]).toEqual(['usual', 'market-day', 'saturday']);
    // Usual days are safe nearly always; the two others decide, one for its guests and one for its mugs.
    expect(safe.get('usual')).toBeGreaterThan(0.985);
    for (const kind of ['market-day', 'saturday']) {
      expect(safe.get(kind), kind).toBeGreaterThan(0.85);
      expect(safe.get(kind), kind).toBeLessThan(safe.get('usual')!);
    }
    expect(answer.tightestKind).not.toBe('usual');
  });
});

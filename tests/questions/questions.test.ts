/** Further questions, asked as a page asks them: the same answers as the command's, mistakes in their place, nothing of Node. */
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../src/questions/compare/answer.js';
import { mapOf, movesOf } from '../../src/questions/compare/parts.js';
import { inLetter } from '../../src/questions/letter-list.js';
import { questions } from '../../src/questions/list.js';
import type { Asking } from '../../src/questions/question.js';
import type { Value } from '../../src/questions/settings.js';
import { contextOf } from '../../src/tell/context-of.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { inThisThread } from '../../src/cafe/runner.js';
import { changed, valid } from '../scenario/a-scenario.js';

const reading = { piecesPerRack: piecesPerRackOf };

function asked(text: string): Asking {
  const read = readScenario(text, 'a.yaml', reading);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return {
    opened: read,
    fileName: 'a.yaml',
    runner: inThisThread(),
    context: contextOf(read.scenario, read.inputs, '0', piecesPerRackOf),
    today: '2027-03-01',
    loadSolver: null,
  };
}

const ask = (name: string, asking: Asking, given: Readonly<Record<string, Value>> = {}) =>
  inLetter.find((one) => one.name === name)!.ask(asking, given);

const withMap = `${valid}costs: { map: { machines: [1, 2], clearing: [5 min], classes: [undercounter] } }\nalternatives:\n  later: { change: { counter.making: 60 s } }\n`;

describe('further questions', () => {
  it('have the answers that the comparison gives all at once', async () => {
    const asking = asked(withMap);
    const days = 50;
    const whole = await ask('compare', asking, { days, map: true, moves: true });
    if (!whole.ok) throw new Error('no comparison');
    const { map, moves, ...rest } = whole.value.json as Comparison;
    expect(await mapOf(asking, { days })).toEqual({ ok: true, value: map });
    expect(await movesOf(asking, { days })).toEqual(moves);
    const alone = await ask('compare', asking, { days });
    expect(alone.ok && alone.value.json).toEqual({ ...rest, map: null, moves: null });
  });

  it('have the guide for other sizes of this house, the mistakes of which are named in the file', async () => {
    const guide = await ask('guide', asked(valid), { days: 100 });
    expect(guide).toMatchObject({
      ok: true,
      value: { json: { houses: [{ seats: 10 }, { seats: 20 }, { seats: 30 }, { seats: 40 }] } },
    });
    const endless = await ask('guide', asked(changed('count: 20', 'count: unlimited')));
    expect(endless).toMatchObject({ ok: false, problems: [{ path: 'seats.count' }] });
  });

  it('have names and offers that are told apart, and boxes for settings that are there', () => {
    const all = questions;
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    const offers = all.flatMap((one) => (one.offers ?? []).map((offer) => ({ one, offer })));
    expect(offers.length).toBeGreaterThan(5);
    expect(new Set(offers.map(({ offer }) => offer.id)).size).toBe(offers.length);
    for (const { one, offer } of offers) {
      expect(inLetter, offer.id).toContain(one);
      for (const name of Object.keys(offer.boxes ?? {})) expect(one.settings).toHaveProperty(name);
    }
    for (const one of inLetter.filter(({ only }) => only === 'letter'))
      expect(one.offers, one.name).toBeDefined();
  });

  it('place mistakes in the file', async () => {
    const noClass = await mapOf(
      asked(withMap.replace('classes: [undercounter]', 'classes: [nonesuch]')),
    );
    expect(noClass).toMatchObject({
      ok: false,
      problems: [
        {
          file: 'a.yaml',
          path: 'costs.map.classes[0]',
          line: withMap.split('\n').findIndex((line) => line.startsWith('costs')) + 1,
        },
      ],
    });
    const noPath = await ask(
      'compare',
      asked(withMap.replace('counter.making:', 'counter.makin:')),
    );
    expect(noPath).toMatchObject({ ok: false, problems: [{ file: 'a.yaml' }] });
    // The map looks at the house as it is, so a bad alternative is no hindrance.
    expect((await mapOf(asked(withMap.replace('counter.making:', 'counter.makin:')))).ok).toBe(
      true,
    );
    const supply =
      changed(
        '  mug: { price: 5 EUR, perRack: 12, family: china, drying: 3 min }',
        '  mug: { price: 5 EUR, perRack: 12, family: china, drying: 3 min }',
      ) + 'storage: { top: { width: 0 mm, depth: 380 mm } }\n';
    const noRoom = await ask('order', asked(supply));
    expect(noRoom).toMatchObject({
      ok: false,
      problems: [
        { file: 'a.yaml', path: 'storage.top.width', line: supply.trimEnd().split('\n').length },
      ],
    });
    expect((await ask('suit', asked(valid))).ok).toBe(true);
  });

  it('need neither Node nor the solver', async () => {
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const { metafile } = await build({
      absWorkingDir: root,
      entryPoints: ['src/page/engine/questions.ts'],
      outdir: 'none',
      bundle: true,
      write: false,
      metafile: true,
      platform: 'browser',
      format: 'esm',
      logLevel: 'silent',
    });
    expect(Object.keys(metafile.inputs).length).toBeGreaterThan(100);
    expect(
      Object.keys(metafile.inputs).filter((path) => /node:|\/highs\/|src\/cli\//.test(path)),
    ).toEqual([]);
    expect(Object.values(metafile.outputs).flatMap(({ imports }) => imports)).toEqual([]);
    // What the letter does not offer is left out of it.
    const carried = Object.keys(metafile.inputs).filter((path) => path.endsWith('/ask.ts'));
    expect(carried.toSorted()).toEqual(
      // The letter is the answer of `size`.
      ['size', ...inLetter.map(({ name }) => name)]
        .map((name) => `src/questions/${name}/ask.ts`)
        .toSorted(),
    );
  });
});

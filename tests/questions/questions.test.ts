/** Further questions, asked as a page asks them: the same answers as the command's, mistakes in their place, nothing of Node. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../src/questions/compare/alternatives.js';
import { compareStudy } from '../../src/questions/compare/study.js';
import {
  askAlternatives,
  askGuide,
  askMap,
  askMoves,
  askOrder,
  askSuit,
  type Question,
} from '../../src/questions/questions.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { inThisThread } from '../../src/cafe/runner.js';
import { changed, valid } from '../scenario/a-scenario.js';

const reading = { piecesPerRack: piecesPerRackOf };

function asked(text: string): Question {
  const read = readScenario(text, 'a.yaml', reading);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return { opened: read, fileName: 'a.yaml', runner: inThisThread(), days: 100 };
}

const withMap = `${valid}costs: { map: { machines: [1, 2], clearing: [5 min], classes: [undercounter] } }\nalternatives:\n  later: { change: { counter.making: 60 s } }\n`;

describe('further questions', () => {
  it('have the answers that the comparison gives all at once', async () => {
    const question = asked(withMap);
    const candidates = candidatesOf(question.opened, 'a.yaml', reading);
    if (!candidates.ok) throw new Error('no candidates');
    const whole = await compareStudy(candidates.all, inThisThread(), {
      days: 100,
      map: true,
      moves: true,
      ...reading,
    });
    const [map, moves, alternatives] = [
      await askMap(question),
      await askMoves(question),
      await askAlternatives(question),
    ];
    expect(map).toEqual({ ok: true, value: whole.map });
    expect(moves).toEqual({ ok: true, value: whole.moves });
    expect(alternatives).toEqual({ ok: true, value: { ...whole, map: null, moves: null } });
  });

  it('have the guide for other sizes of this house, the mistakes of which are named in the file', async () => {
    const guide = await askGuide(asked(valid));
    if (!guide.ok) throw new Error('no guide');
    expect(guide.value.houses.map(({ seats }) => seats)).toEqual([10, 20, 30, 40]);
    const endless = await askGuide(asked(changed('count: 20', 'count: unlimited')));
    expect(endless).toMatchObject({ ok: false, problems: [{ path: 'seats.count' }] });
  });

  it('place mistakes in the file', async () => {
    const noClass = await askMap(
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
    const noPath = await askAlternatives(
      asked(withMap.replace('counter.making:', 'counter.makin:')),
    );
    expect(noPath).toMatchObject({ ok: false, problems: [{ file: 'a.yaml' }] });
    // The map looks at the house as it is, so a bad alternative is no hindrance.
    expect((await askMap(asked(withMap.replace('counter.making:', 'counter.makin:')))).ok).toBe(
      true,
    );
    const supply =
      changed(
        '  mug: { price: 5 EUR, perRack: 12, family: china, drying: 3 min }',
        '  mug: { price: 5 EUR, perRack: 12, family: china, drying: 3 min }',
      ) + 'storage: { top: { width: 0 mm, depth: 380 mm } }\n';
    const noRoom = await askOrder(asked(supply), '2027-03-01');
    expect(noRoom).toMatchObject({
      ok: false,
      problems: [
        { file: 'a.yaml', path: 'storage.top.width', line: supply.trimEnd().split('\n').length },
      ],
    });
    expect(JSON.stringify(await askSuit(asked(valid)))).toContain('"ok":true');
  });

  it('need neither Node nor the solver', async () => {
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const { metafile } = await build({
      absWorkingDir: root,
      entryPoints: ['src/questions/questions.ts', 'src/questions/order/workbook.ts'],
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
    expect(readFileSync(`${root}src/questions/questions.ts`, 'utf8')).not.toContain("'node:");
  });
});

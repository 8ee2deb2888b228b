import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runDays } from '../../../src/cafe/run-days.js';
import { compile } from '../../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';

describe('time of loading and unloading', () => {
  const constant = {
    loading: { law: 'constant', ms: 30_000 },
    unloading: { law: 'constant', ms: 20_000 },
  } as const;

  it.each(
    readdirSync('scenarios')
      .filter((file) => file.endsWith('.yaml'))
      .flatMap((file) =>
        ([2, 'clearers', 'makers'] as const).map((hands) => [file, hands] as const),
      ),
  )('%s, hands %s: is that of the loads, whatever else those hands do', (file, hands) => {
    const read = readScenario(readFileSync(`scenarios/${file}`), file, {
      piecesPerRack: piecesPerRackOf,
    });
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
    const model = compile(read.scenario, piecesPerRackOf);
    const washing = {
      ...model.washing,
      hands,
      machines: model.washing.machines!.map((machine) => ({ ...machine, ...constant })),
    };
    const { sums } = runDays({
      model: { ...model, washing },
      seed: 'hands',
      from: 0,
      days: 20,
      stock: null,
      listed: null,
      byDay: false,
    });
    expect(sums.loads).toBeGreaterThan(0);
    expect(sums.handlingMs).toBe(sums.loads * 50_000);
  });
});

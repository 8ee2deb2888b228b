/** Sections of the letter bring the figures that the command writes. */
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { section } from '../../src/page/engine/questions.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { changed } from '../scenario/a-scenario.js';

async function figures(offer: string, typed: Record<string, string> = {}) {
  const opened = readScenario(changed('clearing: atOnce', 'clearing: {}'), 'a.yaml', {
    piecesPerRack: piecesPerRackOf,
  });
  if (!opened.ok) throw new Error('refused');
  const context = contextOf(opened.scenario, opened.inputs, '0', piecesPerRackOf);
  const asking = { opened, fileName: 'a.yaml', runner: inThisThread(), context };
  return (await section({ ...asking, today: '2027-03-01' }, { days: 40 }, { offer, typed }))
    .figures;
}

describe('figures of a section', () => {
  it('are the guide’s, a line a house', async () => {
    const guide = await figures('guide', { seats: '20, 30' });
    expect(guide?.ending).toBe('guide.csv');
    const lines = String(guide?.content).trim().split('\r\n');
    expect(new Set(lines.slice(1).map((line) => line.split(',')[0]))).toEqual(
      new Set(['20', '30']),
    );
  });

  it('are the order’s, a line a ware', async () => {
    const order = await figures('order');
    expect(order?.ending).toBe('order.csv');
    expect(String(order?.content)).toContain('Saucer');
  });

  it('are none where the command writes none', async () => {
    expect(await figures('moves')).toBeUndefined();
  });
});

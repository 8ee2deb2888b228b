import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import type { GivenOptions } from '../../src/letter/live.js';
import { section } from '../../src/page/engine/questions.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { changed } from '../scenario/a-scenario.js';

/** The page's section "What moves the order" of a small house that clears in rounds. */
async function moves(options: GivenOptions): Promise<string> {
  const opened = readScenario(changed('clearing: atOnce', 'clearing: {}'), 'a.yaml', {
    piecesPerRack: piecesPerRackOf,
  });
  if (!opened.ok) throw new Error('refused');
  const context = contextOf(opened.scenario, opened.inputs, '0', piecesPerRackOf);
  const asking = {
    opened,
    fileName: 'a.yaml',
    runner: inThisThread(),
    context,
    today: '2027-03-01',
  };
  return (await section(asking, options, { offer: 'moves', typed: {} })).html;
}

describe('what moves the order, in the page', () => {
  it('says how far the answer moves as habits vary', async () => {
    const html = await moves({ days: 100 });
    expect(html).toContain('If habits are a fifth off');
    expect(html).toContain('Time between clearing rounds');
    expect(html).toMatch(/Saucer: \d+ (as planned, \d+ to \d+|either way)/);
  });

  it('says nothing of it for a stock that was given', async () => {
    expect(await moves({ days: 100, stock: { cup: 10 } })).not.toContain('habits');
  });
});

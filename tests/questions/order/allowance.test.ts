/** An order that allows for inputs: its par, its price beside the plain order's, and what it says of both. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { orderAnswer, orderStudy, type OrderOptions } from '../../../src/questions/order/study.js';
import { orderBlocks } from '../../../src/questions/order/tell.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { writeText } from '../../../src/tell/write-text.js';

const file = 'scenarios/1-commuter-bar.yaml';
const read = readScenario(readFileSync(file), file, { piecesPerRack: piecesPerRackOf });
if (!read.ok) throw new Error('no scenario');
const context = contextOf(read.scenario, read.inputs, '0.1.0', piecesPerRackOf);

async function ordered(more: Partial<OrderOptions>) {
  const study = await orderStudy(read.ok ? read.scenario : (null as never), inThisThread(), {
    days: 60,
    date: '2027-01-04',
    loadSolver: null,
    ...more,
  });
  if (!study.ok) throw new Error('no order');
  const text = writeText(orderBlocks(study.value, context), { width: 100, all: true });
  return { json: orderAnswer(study.value), text: text.replace(/\s+/g, ' ') };
}

describe('an order that allows for inputs', async () => {
  const plain = await ordered({});
  const safe = await ordered({ allowFor: { house: read, days: { draws: 25, daysEach: 2 } } });
  const found = safe.json.allowingForInputs!;

  it('has the larger par in its lines, and the plain order beside it', () => {
    expect(plain.json.allowingForInputs).toBeUndefined();
    expect(safe.json.lines.map(({ par }) => par)).toEqual(found.stock.map(({ pieces }) => pieces));
    expect(found.plainTotalMinor).toBe(plain.json.totals.totalMinor);
    expect(found.plainPieces).toBe(plain.json.lines.reduce((sum, { par }) => sum + par, 0));
    expect(found.spend).toBeGreaterThan(found.plainSpend);
    expect(found.held.level).toBeGreaterThan(found.plain.level);
  });

  it('says how long each lasts and what the safety costs, in its lead and its method', () => {
    const money = (minor: number): string =>
      `€${(minor / 100).toLocaleString('en', { minimumFractionDigits: 2 })}`;
    const more = money(safe.json.totals.totalMinor - plain.json.totals.totalMinor);
    expect(safe.text).toContain(`This safety costs ${more}: the order without it comes to`);
    expect(safe.text).toContain(money(plain.json.totals.totalMinor));
    expect(safe.text).toContain(`${(100 * found.held.level).toFixed(1)} % of days`);
    expect(safe.text).toContain(`${(100 * found.plain.level).toFixed(1)} % of such days`);
    expect(safe.text).toMatch(/25 times,? with 2 days each/);
    expect(plain.text).not.toContain('allows for inputs');
  });
});

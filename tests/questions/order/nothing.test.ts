/** An order of a house where every drink goes out in paper says nothing of cartons that it does not buy. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { orderStudy } from '../../../src/questions/order/study.js';
import { orderBlocks } from '../../../src/questions/order/tell.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { writeText } from '../../../src/tell/write-text.js';

const demo = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');

async function told(staysIn: string): Promise<string> {
  const text = demo.replace(/staysIn: \{.*\}/, `staysIn: ${staysIn}`);
  const read = readScenario(text, 'bar.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error('no scenario');
  const options = { days: 5, date: '2027-01-04', loadSolver: null };
  const study = await orderStudy(read.scenario, inThisThread(), options);
  if (!study.ok) throw new Error('no order');
  const context = contextOf(read.scenario, read.inputs, '0.1.0', piecesPerRackOf);
  return writeText(orderBlocks(study.value, context), { width: 1000, all: false });
}

it('of no pieces is not explained by whole cartons', async () => {
  const none = await told('0 %');
  expect(none).toContain('Order 0 pieces');
  expect(none).not.toContain('whole cartons bring more');
  expect(await told('45 %')).toContain('whole cartons bring more');
});

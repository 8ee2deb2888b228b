/** A house at a glance, against what its file says. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { busiestHour, glanceAt } from '../../../src/questions/size/house-measures.js';
import { compile } from '../../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';

it('the demo: its seats, its dishwasher, the 64 guests of its busiest hour, and the shape of its morning', () => {
  const path = fileURLToPath(new URL('../../../scenarios/1-commuter-bar.yaml', import.meta.url));
  const read = readScenario(readFileSync(path, 'utf8'), path, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error('the demo does not read');
  const model = compile(read.scenario, piecesPerRackOf);
  const { guestsAQuarter, seats, machines } = glanceAt(model);
  expect([seats, machines]).toEqual([26, 1]);
  expect(busiestHour(model)).toBeCloseTo(64, 6);
  // Twelve quarters of an hour in the shape of the file; the largest are 13 in it.
  const shape = [3, 5, 7, 9, 11, 13, 13, 11, 9, 7, 6, 6];
  expect(guestsAQuarter).toHaveLength(shape.length);
  const most = Math.max(...guestsAQuarter);
  guestsAQuarter.forEach((guests, i) => expect(guests / most).toBeCloseTo(shape[i]! / 13, 1));
  // The busiest hour holds four whole quarters; each is rounded to a tenth.
  expect(guestsAQuarter.slice(4, 8).reduce((sum, guests) => sum + guests, 0)).toBeCloseTo(64, 0);
});

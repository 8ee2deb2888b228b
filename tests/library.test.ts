import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inThisThread, readScenario, size } from '../src/index.js';
import { cuptide } from './cli/run.js';

it('gives the answer of the command, for a house whose racks follow from the shape of its ware', async () => {
  const file = 'scenarios/2-brunch-room.yaml';
  const read = readScenario(readFileSync(file, 'utf8'), file);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const { answer } = await size(read, inThisThread(), { days: 100 });
  const { out } = cuptide(['size', file, '--days', '100', '--json']);
  expect(JSON.parse(out)).toMatchObject({
    stock: answer.stock.map(({ ware, pieces }) => ({ ware, pieces })),
    certified: answer.certified,
  });
});

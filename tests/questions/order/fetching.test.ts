/** Drinks in cold cups: none where all cups stand on the machine, all where none do, and fewer the more stand there. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { storageLayout } from '../../../src/ordering/storage.js';
import { fetchingOf, type Fetching } from '../../../src/questions/order/fetching.js';
import { storedWare } from '../../../src/questions/order/stored-ware.js';
import { study } from '../../../src/questions/size/study.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';

const file = fileURLToPath(new URL('../../../scenarios/1-commuter-bar.yaml', import.meta.url));
const read = readScenario(readFileSync(file), file, { piecesPerRack: piecesPerRackOf });
if (!read.ok) throw new Error('no scenario');
const { scenario } = read;
const { answer } = await study(scenario, inThisThread(), {
  days: 30,
  watch: 10,
  piecesPerRack: piecesPerRackOf,
});
const wares = storedWare(scenario, answer);

async function withOnTop(pieces: number): Promise<Fetching> {
  const onTop = Object.fromEntries(
    wares.map(({ id, warmth, par }) => [id, warmth > 0 ? Math.min(par, pieces) : 0]),
  );
  // A top as large as a room: what is given always fits.
  const top = { width: 9000, depth: 9000 };
  const storage = { ...scenario.storage!, top: { ...scenario.storage!.top, ...top }, onTop };
  const house = { ...scenario, storage };
  const layout = storageLayout(storage, wares);
  return fetchingOf(
    { scenario: house, seed: answer.seed },
    layout,
    wares,
    answer,
    40,
    inThisThread(),
  );
}

describe('drinks in a cold cup', () => {
  it('none, all, and fewer with more cups on the machine', async () => {
    const shares: number[] = [];
    for (const pieces of [0, 4, 10, 20, 1000]) shares.push((await withOnTop(pieces)).coldShare!);
    expect(shares[0]).toBe(1);
    expect(shares.at(-1)).toBe(0);
    for (const [at, share] of shares.entries())
      if (at > 0) expect(share).toBeLessThanOrEqual(shares[at - 1]!);
    expect(shares[1]).toBeLessThan(1);
    expect(shares[1]).toBeGreaterThan(0);
  });

  it('the whole is between the least and the greatest of its ware', async () => {
    const { coldShare, coldByWare } = await withOnTop(6);
    const all = coldByWare.map(({ share }) => share);
    expect(coldShare!).toBeGreaterThanOrEqual(Math.min(...all));
    expect(coldShare!).toBeLessThanOrEqual(Math.max(...all));
  });
});

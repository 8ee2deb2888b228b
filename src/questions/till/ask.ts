/** A till export, asked what it says: export, map and base scenario → fit → blocks and a new scenario. */
import { applyTill, unknownDrinks } from '../../till/apply-till.js';
import { fitKinds, type TillKinds } from '../../till/fit-kinds.js';
import type { TillFlaw } from '../../till/flaw.js';
import { readTill } from '../../till/read-till.js';
import type { TillSource } from '../../till/text.js';
import { readScenario, type PositionOf } from '../../scenario/read-scenario.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Block } from '../../tell/block.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import { datedMap } from './holidays.js';
import { readTillMap, tillProblem } from './read-map.js';
import { tillBlocks } from './tell.js';

export interface TillAsking {
  readonly map: GivenFile;
  readonly scenario: GivenFile;
  readonly holidays?: GivenFile | undefined;
  readonly sales: { readonly name: string; readonly open: () => TillSource };
  /** Names the new scenario in problems. */
  readonly outName: string;
}

export interface TillReply {
  readonly kinds: TillKinds;
  /** The new scenario. */
  readonly text: string;
  readonly blocks: readonly Block[];
}

export async function askTill(asking: TillAsking): Promise<Result<TillReply>> {
  const { map: mapFile, scenario: base, holidays, sales, outName } = asking;
  const map = readTillMap(mapFile.bytes, mapFile.name);
  if (!map.ok) return map;
  const opened = readScenario(base.bytes, base.name, { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) return opened;
  const stop = (flaws: readonly TillFlaw[]): Result<never> => {
    const files: Record<TillFlaw['about'], readonly [string, PositionOf | null]> = {
      map: [mapFile.name, map.positionOf],
      base: [base.name, opened.positionOf],
      export: [sales.name, null],
    };
    return { ok: false, problems: flaws.map((flaw) => tillProblem(flaw, ...files[flaw.about])) };
  };
  const baseText = new TextDecoder().decode(base.bytes);
  const unknown = unknownDrinks(map.map.groups, baseText);
  if (unknown.length > 0) return stop(unknown);
  const dated = datedMap(map.map, mapFile.name, map.positionOf, holidays);
  if (!dated.ok) return dated;
  const tally = await readTill(sales.open(), map.map);
  if (!tally.ok) return stop(tally.flaws);
  const kinds = fitKinds(tally.value, dated.value, sales.name.split(/[/\\]/).at(-1)!);
  if (!kinds.ok) return stop(kinds.flaws);
  const applied = applyTill(baseText, kinds.value.fit, kinds.value);
  if (!applied.ok) return stop(applied.flaws);
  const { text, notes } = applied.value;
  const made = readScenario(text, `${outName} (not written)`, { piecesPerRack: piecesPerRackOf });
  if (!made.ok) return made;
  return {
    ok: true,
    value: { kinds: kinds.value, text, blocks: tillBlocks(kinds.value.fit, notes, kinds.value) },
  };
}

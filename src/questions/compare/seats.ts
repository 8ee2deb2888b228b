/** The planning table: the same house at other sizes, guests growing with seats, all else as given. */
import { minorPerUnit } from '../../quantities/money.js';
import type { Candidate } from './alternatives.js';
import type { PlanningRow } from './answer.js';
import type { QuickOptions } from './quick.js';
import { nameOf } from '../../quantities/name.js';
import { checkTree, type ReadOptions } from '../../scenario/read-scenario.js';
import { rawValueAt, scaled, withRawValue } from '../../scenario/raw-paths.js';
import type { Runner } from '../../cafe/runner.js';
import { study } from '../size/study.js';
import { costOf } from './differences.js';
import { unitCosts } from '../../scenario/compile.js';
import { ownedPieces } from '../../scenario/have.js';

/** @throws RangeError where the scenario has no number of seats to scale from */
export async function planningTable(
  base: Candidate,
  sizes: readonly number[],
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
): Promise<PlanningRow[]> {
  const own = base.scenario.seats.count;
  if (own === null || own === 0)
    throw new RangeError(
      'a planning table needs a scenario with a number of seats, which guests then grow with',
    );
  const rows: PlanningRow[] = [];
  for (const seats of sizes) {
    const raw = withRawValue(
      withRawValue(base.raw, ['arrivals'], scaled(rawValueAt(base.raw, ['arrivals']), seats / own)),
      ['seats', 'count'],
      seats,
    );
    const read = checkTree(raw, () => ({ line: 1, column: 1 }), base.name, reading);
    if (!read.ok)
      throw new RangeError(
        `with ${seats} seats the scenario is not valid: ${read.problems[0]!.message}`,
      );
    const { answer } = await study(read.scenario, runner, {
      level: options.level,
      seed: options.seed,
      days: options.days,
      ...(options.piecesPerRack === undefined ? {} : { piecesPerRack: options.piecesPerRack }),
    });
    const stock = answer.stock.map(({ pieces }) => pieces);
    rows.push({
      seats,
      stock: answer.stock.map(({ ware, pieces }) => ({
        ware,
        name: nameOf(ware, read.scenario.ware[ware]!),
        pieces,
        perSeat: pieces / seats,
      })),
      stockCost:
        costOf({
          stock,
          owned: ownedPieces(read.scenario),
          unitCost: unitCosts(read.scenario),
        }) / minorPerUnit(read.scenario.currency),
      certified: answer.certified,
      machinesBusy: answer.busy.machines,
    });
  }
  return rows;
}

/** Parts of a comparison that can be asked for alone; both are of the house as it is, whatever its alternatives say. */
import { inOrder } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { placed } from '../part-checks.js';
import type { Asking } from '../question.js';
import type { Result } from '../result.js';
import { candidatesOf, type Candidate } from './alternatives.js';
import type { MovesAnswer, TradeOffMap } from './answer.js';
import { mapDays, mapFlaws, tradeOffMap } from './map.js';
import type { QuickOptions } from './quick.js';
import { whatMoves } from './sensitivity.js';

type House = Pick<Asking, 'opened' | 'fileName' | 'runner'>;
interface Options {
  readonly level?: number | undefined;
  readonly seed?: string | undefined;
  readonly days?: number | undefined;
}

const reading = { piecesPerRack: piecesPerRackOf };
/** Days of one reading of a map or of an input at an end of its range. */
const QUICK_DAYS = 500;

/** What machines, their class and clearing rounds are worth in ware. */
export async function mapOf(house: House, options: Options = {}): Promise<Result<TradeOffMap>> {
  const base = asItIs(house);
  const flaws = mapFlaws(base);
  if (flaws.length > 0)
    return { ok: false, problems: inOrder(placed(flaws, house.opened, house.fileName)) };
  const quick = quickOf(house, options);
  return {
    ok: true,
    value: await tradeOffMap(
      base,
      house.runner,
      options.days === undefined ? { ...quick, days: mapDays(base) } : quick,
      reading,
    ),
  };
}

/** How far each input moves the order over its range. */
export const movesOf = (house: House, options: Options = {}): Promise<MovesAnswer> =>
  whatMoves(asItIs(house), house.runner, quickOf(house, options), reading, null);

function asItIs({ opened, fileName }: House): Candidate {
  const { alternatives: _, ...scenario } = opened.scenario;
  const found = candidatesOf({ ...opened, scenario }, fileName, reading);
  // Without alternatives there is nothing that could be wrong with one.
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.all[0]!;
}

const quickOf = (
  { opened: { scenario } }: House,
  { level, seed, days }: Options,
): QuickOptions => ({
  level: level ?? scenario.level,
  seed: seed ?? scenario.seed,
  days: Math.min(days ?? QUICK_DAYS, QUICK_DAYS),
  ...reading,
});

/** One size of house as the guide has it. */
import { rackKind } from '../../catalogue/catalogue.js';
import { minorPerUnit } from '../../quantities/money.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import { racksOf, shelfM2 } from '../compare/costs.js';
import { busiestHour } from '../size/house-measures.js';
import type { GuideHouse, GuideStock } from './answer.js';
import { saucersACup } from './saucers.js';
import { dotCost, halfWidth, type Sized } from './sized.js';

/** Share of guests who take away; what was asked for as 60 % is that, whatever sums it went through. */
export const takeawayOf = (scenario: Scenario): number =>
  Math.round((1 - meanStaysIn(scenario)) * 1e9) / 1e9;

export function houseOf(
  scenario: Scenario,
  { answer, samples, unitCosts: costs }: Sized,
): GuideHouse {
  const model = compile(scenario, piecesPerRackOf);
  const perUnit = minorPerUnit(scenario.currency);
  const seats = scenario.seats.count!;
  const staysIn = meanStaysIn(scenario);
  const guests = busiestHour(model);
  const stock = answer.stock.map((line, ware): GuideStock => {
    // Pieces are whole: so is what they may be off by, and a sample that never varies has not seen all.
    const half = halfWidth(samples?.map((sample) => sample[ware]!) ?? null);
    const off = half === null ? null : Math.max(1, Math.ceil(half));
    return {
      ware: line.ware,
      name: line.name,
      pieces: line.pieces,
      low: off === null ? null : Math.max(0, line.pieces - off),
      high: off === null ? null : line.pieces + off,
      perSeat: line.pieces / seats,
      unitCost: line.unitCost,
      aCup: saucersACup(scenario, answer.stock, line.ware),
    };
  });
  const costHalf = halfWidth(samples?.map((sample) => dotCost(sample, costs) / perUnit) ?? null);
  const { hands } = scenario.washing;
  return {
    seats,
    takeaway: takeawayOf(scenario),
    guestsAnHour: guests,
    inHouseAnHour: guests * staysIn,
    makers: model.makers,
    clearers: model.clearing.every === null ? null : model.clearing.clearers,
    hands: typeof hands === 'number' ? hands : null,
    machines: model.washing.machines?.length ?? null,
    busy: answer.busy,
    days: answer.days.chosenOn,
    stock,
    certified: answer.certified,
    cost: answer.cost,
    costLow: costHalf === null ? null : Math.max(0, answer.cost - costHalf),
    costHigh: costHalf === null ? null : answer.cost + costHalf,
    racks: answer.loads.racksNeeded.map(({ kind, racks }) => ({
      kind,
      name: rackKind(kind)?.name ?? kind,
      racks: scenario.racks?.owned?.[kind] ?? racks,
    })),
    racksCost: racksOf(scenario, answer.loads.racksNeeded).cost / perUnit,
    shelfM2: shelfM2(
      scenario,
      stock.map(({ pieces }) => pieces),
    ),
    paperCups: answer.takeawayCups.ordered + answer.takeawayCups.asFallBack,
    overloads: answer.overloads,
    warnings: answer.warnings,
  };
}

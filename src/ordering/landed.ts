/** What a piece costs when it stands on the shelf, and how that falls with the size of the order. */
import { charges } from './costs/charges.js';
import {
  consignmentTotal,
  costsOf,
  namedCosts,
  sumOfCosts,
  type CostAmount,
} from './costs/index.js';
import { freight } from './costs/freight.js';
import { goods, goodsOf } from './costs/goods.js';
import { splitMinor } from './money.js';
import { cartonsIn, priceAt, type Consignment, type Quote, type Supplier } from './supply.js';

export interface LandedLine {
  readonly ware: string;
  readonly pieces: number;
  readonly cartons: number;
  readonly goodsMinor: number;
  readonly freightMinor: number;
  readonly taxMinor: number;
  /** The landed costs, which these three are among. */
  readonly costs: readonly CostAmount[];
  readonly landedMinor: number;
  /** For display; not for sums. */
  readonly landedPerPieceMinor: number;
}

/**
 * The lines of a consignment with their shares of its landed costs, which sum to the consignment's own.
 * Freight and the like are shared by value or by mass; tax by all that it is on.
 */
export function landedLines(
  consignment: Consignment,
  shareFreightBy: 'value' | 'mass',
): readonly LandedLine[] {
  const { lines } = consignment;
  const values = lines.map(({ quote, cartons }) => goodsOf(quote, cartons));
  const byMass =
    shareFreightBy === 'mass' && lines.every(({ quote }) => quote.cartonMassG !== null);
  const weights = byMass ? lines.map(({ quote, cartons }) => quote.cartonMassG! * cartons) : values;
  // Goods come first and tax last, when all that it is on has been shared.
  let taxed = values;
  const shares = costsOf([consignment])
    .filter(({ landed }) => landed)
    .map((cost) => {
      if (cost.id === 'goods') return { cost, parts: values };
      if (cost.id === 'tax') return { cost, parts: splitMinor(cost.minor, taxed) };
      const parts = splitMinor(cost.minor, weights);
      if (charges.find(({ id }) => id === cost.id)!.taxed)
        taxed = taxed.map((value, index) => value + parts[index]!);
      return { cost, parts };
    });
  return lines.map(({ quote, cartons }, index) => {
    const pieces = cartons * quote.cartonPieces;
    const costs = shares.map(({ cost, parts }) => ({ ...cost, minor: parts[index]! }));
    const { goodsMinor, freightMinor, taxMinor } = namedCosts(costs);
    const landedMinor = sumOfCosts(costs);
    return {
      ware: quote.ware,
      pieces,
      cartons,
      goodsMinor,
      freightMinor,
      taxMinor,
      costs,
      landedMinor,
      landedPerPieceMinor: landedMinor / pieces,
    };
  });
}

export interface LandedPoint {
  readonly cartons: number;
  readonly pieces: number;
  /** Landed cost of one piece, minor units with parts. */
  readonly perPieceMinor: number;
  readonly goodsPerPieceMinor: number;
  /** What happens at this size: a price break, a freight step, or free freight. */
  readonly step: string | null;
}

/** Landed cost of a piece against the size of an order of that ware alone, carton by carton. */
export function landedBySize(
  supplier: Supplier,
  quote: Quote,
  mostCartons: number,
): readonly LandedPoint[] {
  const first = Math.max(1, quote.minimumCartons);
  const consignment = (cartons: number): Consignment => ({
    supplier,
    handlingMinor: 0,
    lines: [{ quote, cartons }],
  });
  return Array.from({ length: Math.max(0, mostCartons - first + 1) }, (_, index) => first + index)
    .filter((cartons) => goodsOf(quote, cartons) >= supplier.minimumOrderMinor)
    .map((cartons) => {
      const pieces = cartons * quote.cartonPieces;
      const whole = consignment(cartons);
      return {
        cartons,
        pieces,
        perPieceMinor: sumOfCosts(costsOf([whole]).filter(({ landed }) => landed)) / pieces,
        goodsPerPieceMinor: goods(whole) / pieces,
        step: cartons === first ? null : stepBetween(consignment(cartons - 1), whole),
      };
    });
}

/** What changes from one consignment to a larger one, in words; null: nothing but size. */
function stepBetween(smaller: Consignment, larger: Consignment): string | null {
  const changes: string[] = [];
  larger.lines.forEach(({ quote, cartons }) => {
    const before = smaller.lines.find((line) => line.quote.ware === quote.ware);
    if (before !== undefined && priceAt(quote, before.cartons) !== priceAt(quote, cartons))
      changes.push('price break');
  });
  const free = (consignment: Consignment): boolean =>
    consignment.supplier.freeFromMinor !== null &&
    goods(consignment) >= consignment.supplier.freeFromMinor;
  if (free(larger) && !free(smaller)) changes.push('free freight');
  else if (!free(larger)) {
    const step = (consignment: Consignment): string =>
      consignment.supplier.freight.findLast((one) => cartonsIn(consignment) >= one.fromCartons)
        ?.name ?? '';
    if (step(larger) !== step(smaller)) changes.push(step(larger));
  }
  return changes.length === 0 ? null : changes.join(', ');
}

export interface NextStep {
  readonly supplier: string;
  readonly ware: string;
  /** Pieces and cartons more. */
  readonly pieces: number;
  readonly cartons: number;
  /** Cost of the goods more, before tax; negative where a price break makes the larger order cheaper. */
  readonly goodsMinor: number;
  /** Freight saved, before tax; negative where it costs more. */
  readonly freightSavedMinor: number;
  /** All costs of the larger consignment less those of this one, tax included. */
  readonly netMinor: number;
  /** 'price break', 'free freight', or the name of the freight step. */
  readonly step: string;
}

/**
 * For each ware of a consignment, the fewest cartons more that reach a step: a price break, the next freight
 * step or free freight. Sorted by what they cost in all, the cheapest first; steps that neither save freight nor
 * lower a price are left out.
 */
export function nextSteps(consignment: Consignment, mostMoreCartons = 60): readonly NextStep[] {
  const steps = consignment.lines.flatMap((line): readonly NextStep[] => {
    for (let more = 1; more <= mostMoreCartons; more++) {
      const larger = {
        ...consignment,
        lines: consignment.lines.map((other) =>
          other === line ? { ...line, cartons: line.cartons + more } : other,
        ),
      };
      const step = stepBetween(consignment, larger);
      if (step === null) continue;
      const freightSavedMinor = freight(consignment) - freight(larger);
      if (freightSavedMinor <= 0 && !step.includes('price break')) continue;
      return [
        {
          supplier: consignment.supplier.id,
          ware: line.quote.ware,
          pieces: more * line.quote.cartonPieces,
          cartons: more,
          goodsMinor: goods(larger) - goods(consignment),
          freightSavedMinor,
          netMinor: consignmentTotal(larger) - consignmentTotal(consignment),
          step,
        },
      ];
    }
    return [];
  });
  return steps.sort((a, b) => a.netMinor - b.netMinor);
}

/** Part of the price of the pieces more that a step must save for anyone to think about it; ours, no source. */
const WORTH_A_THOUGHT = 0.25;

/** Steps that pay for at least a quarter of the pieces they add, tax left out. */
export const stepsWorthNaming = (consignment: Consignment): readonly NextStep[] =>
  nextSteps(consignment).filter((step) => {
    const line = consignment.lines.find(({ quote }) => quote.ware === step.ware)!;
    const more = goodsOf(line.quote, line.cartons) * (step.cartons / line.cartons);
    return step.goodsMinor - step.freightSavedMinor <= more * (1 - WORTH_A_THOUGHT);
  });

/** "Medium cup: 12 more would cost €9.00 and save €31.00 of freight (free freight): €22.00 less in all". */
export function nextStepSentence(
  step: NextStep,
  nameOf: (ware: string) => string,
  money: (minor: number) => string,
): string {
  const cost =
    step.goodsMinor >= 0
      ? `cost ${money(step.goodsMinor)}`
      : `make the goods ${money(-step.goodsMinor)} cheaper`;
  const saving =
    step.freightSavedMinor > 0
      ? ` and save ${money(step.freightSavedMinor)} of freight`
      : step.freightSavedMinor < 0
        ? ` and add ${money(-step.freightSavedMinor)} of freight`
        : '';
  const net =
    step.netMinor < 0
      ? `${money(-step.netMinor)} less in all`
      : `${money(step.netMinor)} more in all`;
  return `${nameOf(step.ware)}: ${step.pieces} more would ${cost}${saving} (${step.step}): ${net}.`;
}

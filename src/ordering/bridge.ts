/** From the par to the order, step by step: pieces that add up to the pieces ordered, costs that add up to the total. */
import {
  costsOf,
  namedCosts,
  sumOfCosts,
  type CostAmount,
  type NamedCosts,
} from './costs/index.js';
import type { Consignment } from './supply.js';

/** One ware on its way from par to order, pieces. */
export interface BridgeWare {
  readonly par: number;
  readonly onHand: number;
  /** Enough until a delivery that is ordered at the next count. */
  readonly untilDelivery: number;
  /** Enough for as long as this order is to last. */
  readonly hold: number;
  /** Pieces ordered, at least `hold` less `onHand`. */
  readonly pieces: number;
}

/**
 * Pieces: par + spares − on hand + more from whole cartons = pieces.
 * Money, whole minor units: the costs add up to the total.
 */
export interface Bridge extends NamedCosts {
  readonly par: number;
  readonly sparesUntilDelivery: number;
  /** For the rest of the time that the order is to last. */
  readonly sparesAfter: number;
  /** Pieces there already that count towards the holding. */
  readonly onHand: number;
  readonly fromCartons: number;
  readonly pieces: number;
  readonly totalMinor: number;
  readonly costs: readonly CostAmount[];
  /** Total by piece, parts of a minor unit kept; null where nothing is ordered. */
  readonly perPieceMinor: number | null;
}

export function bridgeOf(
  wares: readonly BridgeWare[],
  consignments: readonly Consignment[],
): Bridge {
  const sum = (of: (ware: BridgeWare) => number): number =>
    wares.reduce((total, ware) => total + of(ware), 0);
  const pieces = sum((ware) => ware.pieces);
  const costs = costsOf(consignments);
  const totalMinor = sumOfCosts(costs);
  return {
    par: sum((ware) => ware.par),
    sparesUntilDelivery: sum((ware) => ware.untilDelivery - ware.par),
    sparesAfter: sum((ware) => ware.hold - ware.untilDelivery),
    onHand: sum(({ hold, onHand }) => Math.min(hold, onHand)),
    fromCartons: sum((ware) => ware.pieces - Math.max(0, ware.hold - ware.onHand)),
    pieces,
    ...namedCosts(costs),
    totalMinor,
    costs,
    perPieceMinor: pieces === 0 ? null : totalMinor / pieces,
  };
}

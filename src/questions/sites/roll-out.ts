/**
 * The roll-out: sites open on different days, so their ware is needed in waves, one a day of opening and drop. Which
 * waves share an order is worked out exactly: every way of cutting the row of waves into orders is covered by a shortest
 * path (Wagner & Whitin 1958), each order costing what the cheapest buy for its pieces costs, and holding of what comes early.
 */
import { needNow, type Buy } from '../../ordering/buy.js';
import { chooseBuy, type SolverLoader } from '../../ordering/choose-buy.js';
import { addDays, daysBetween } from '../../ordering/dates.js';
import { leadTimes } from '../../ordering/lead-time.js';
import { DAYS_A_YEAR } from '../../ordering/losses.js';
import { openingHolding } from '../../ordering/policy.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { quoteFor, type Supplier } from '../../ordering/supply.js';
import type { NamedWare } from './site-answer.js';
import { holdingOf, together, type SizedSite } from './chain.js';
import type { SparesAt } from './chain-order.js';

export interface RollOutOrder {
  readonly drop: string;
  /** Days of opening that it is for. */
  readonly openings: readonly string[];
  readonly sites: readonly string[];
  readonly parts: readonly {
    readonly supplier: string;
    readonly name: string;
    /** Order by this day, so that it is there in time with the chance below. */
    readonly orderBy: string;
    readonly late: boolean;
    readonly lines: readonly {
      readonly ware: string;
      readonly pieces: number;
      readonly cartons: number;
    }[];
  }[];
  readonly costMinor: number;
}

export interface RollOut {
  /** Chance that a delivery is there on the day before opening. */
  readonly onTime: number;
  readonly orders: readonly RollOutOrder[];
  readonly costMinor: number;
  /** Were everything ordered for the first opening of each drop, and were each opening ordered for by itself; with holding. */
  readonly atOnceMinor: number;
  readonly eachMinor: number;
  readonly proved: boolean;
  /** Sites without a day of opening: not in the calendar. */
  readonly undated: readonly string[];
}

export interface RollOutOptions {
  /** Today: what should have been ordered before is late. */
  readonly date: string;
  readonly sparesAt: SparesAt;
  readonly loadSolver: SolverLoader;
}

const ON_TIME = 0.95;
/** Within this part of the least an order counts as cheapest. */
const GAP = 0.005;
/** More openings of one drop than this are ordered for one by one or in neighbours only. */
const MOST_TOGETHER = 8;

interface Wave {
  readonly opening: string;
  readonly sites: readonly SizedSite[];
}

export async function rollOutOf(
  sites: readonly SizedSite[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
  options: RollOutOptions,
): Promise<RollOut | null> {
  const dated = sites.filter(({ site }) => site.line.opening !== null);
  if (dated.length === 0 || supply.suppliers.length === 0) return null;
  const orders: RollOutOrder[] = [];
  let [atOnceMinor, eachMinor, proved] = [0, 0, true];
  for (const drop of new Set(dated.map(({ site }) => site.line.drop))) {
    const waves = wavesOf(dated.filter(({ site }) => site.line.drop === drop));
    const made = await cutInOrders(drop, waves, ware, supply, options);
    orders.push(...made.orders);
    atOnceMinor += made.atOnceMinor;
    eachMinor += made.eachMinor;
    proved &&= made.proved;
  }
  return {
    onTime: ON_TIME,
    orders: orders.toSorted((a, b) => (firstDay(a) < firstDay(b) ? -1 : 1)),
    costMinor: orders.reduce((sum, { costMinor }) => sum + costMinor, 0),
    atOnceMinor,
    eachMinor,
    proved,
    undated: sites.filter((one) => !dated.includes(one)).map(({ site }) => site.line.id),
  };
}

const firstDay = ({ parts, openings }: RollOutOrder): string =>
  parts.reduce((first, { orderBy }) => (orderBy < first ? orderBy : first), openings[0]!);

const wavesOf = (sites: readonly SizedSite[]): Wave[] =>
  [...new Set(sites.map(({ site }) => site.line.opening!))].sort().map((opening) => ({
    opening,
    sites: sites.filter(({ site }) => site.line.opening === opening),
  }));

interface Leg {
  readonly order: RollOutOrder;
  readonly proved: boolean;
}

/** The cheapest way to cut the row of waves into orders. */
async function cutInOrders(
  drop: string,
  waves: readonly Wave[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
  options: RollOutOptions,
): Promise<{
  readonly orders: readonly RollOutOrder[];
  readonly atOnceMinor: number;
  readonly eachMinor: number;
  readonly proved: boolean;
}> {
  const legs = new Map<string, Leg>();
  const leg = async (from: number, to: number): Promise<Leg> => {
    const key = `${from} ${to}`;
    const found =
      legs.get(key) ?? (await orderFor(drop, waves.slice(from, to), ware, supply, options));
    legs.set(key, found);
    return found;
  };
  const best: { cost: number; from: number }[] = [{ cost: 0, from: 0 }];
  for (let to = 1; to <= waves.length; to += 1) {
    let found = { cost: Infinity, from: 0 };
    for (let from = Math.max(0, to - MOST_TOGETHER); from < to; from += 1) {
      const cost = best[from]!.cost + (await leg(from, to)).order.costMinor;
      if (cost < found.cost) found = { cost, from };
    }
    best.push(found);
  }
  const chosen: Leg[] = [];
  for (let to = waves.length; to > 0; to = best[to]!.from)
    chosen.unshift(await leg(best[to]!.from, to));
  const each: Leg[] = [];
  for (let at = 0; at < waves.length; at += 1) each.push(await leg(at, at + 1));
  const sum = (some: readonly Leg[]): number =>
    some.reduce((total, { order }) => total + order.costMinor, 0);
  return {
    orders: chosen.map(({ order }) => order),
    atOnceMinor: sum([await leg(0, waves.length)]),
    eachMinor: sum(each),
    proved: [...legs.values()].every((one) => one.proved),
  };
}

/** One order for several openings: it must be there for the first of them. */
async function orderFor(
  drop: string,
  waves: readonly Wave[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
  { date, sparesAt, loadSolver }: RollOutOptions,
): Promise<Leg> {
  const sites = waves.flatMap((wave) => wave.sites);
  const first = waves[0]!.opening;
  const bySupplier = (id: string): [string, number][] =>
    supply.suppliers.flatMap((supplier) =>
      quoteFor(supplier, id) === undefined
        ? []
        : [
            [supplier.id, neededOf(sites, id, supplier, supply, sparesAt, first)] as [
              string,
              number,
            ],
          ],
    );
  const needs = ware.flatMap(({ id }) => {
    const pieces = bySupplier(id);
    return pieces.every(([, count]) => count === 0)
      ? []
      : [needNow(id, Object.fromEntries(pieces.map(([one, count]) => [one, Math.max(1, count)])))];
  });
  const found = await chooseBuy(
    { suppliers: supply.suppliers, needs, rounds: 1, handlingMinor: supply.handlingMinor },
    loadSolver,
    GAP,
  );
  // Every need has a supplier that sells it.
  if (!found.ok) throw new Error(found.problems[0]!.message);
  const { value: buy } = found;
  const early = waves
    .slice(1)
    .reduce(
      (sum, wave) => sum + heldEarly(wave, ware, buy, supply, daysBetween(first, wave.opening)),
      0,
    );
  return {
    proved: buy.proved,
    order: {
      drop,
      openings: waves.map(({ opening }) => opening),
      sites: sites.map(({ site }) => site.line.id),
      parts: partsOf(buy, first, date),
      costMinor: buy.totalMinor + Math.round(early),
    },
  };
}

/** Pieces of a ware that the sites need: par and spares until the delivery of what is ordered at the next count. */
function neededOf(
  sites: readonly SizedSite[],
  id: string,
  { leadTime }: Supplier,
  supply: SupplyModel,
  sparesAt: SparesAt,
  date: string,
): number {
  const places = sites.flatMap((site) => holdingOf(site, id, supply) ?? []);
  if (places.length === 0) return 0;
  const { confidence, horizonDays, reviewDays: coverDays } = supply;
  const rules = { leadTime, coverDays, confidence, repeat: 'assured' as const, horizonDays, date };
  return (sparesAt === 'sites' ? places : [together(places)]).reduce(
    (sum, { par, rates, have }) =>
      sum + Math.max(0, openingHolding({ ...rules, par, rates }) - have),
    0,
  );
}

/** Cost of holding what a later wave needs until it opens: a share of its price. */
function heldEarly(
  { sites }: Wave,
  ware: readonly NamedWare[],
  buy: Buy,
  supply: SupplyModel,
  days: number,
): number {
  const price = (id: string): number => {
    const line = buy.lines.find((one) => one.ware === id);
    const quote = supply.suppliers.find((one) => one.id === line?.supplier);
    const sold = quote === undefined ? undefined : quoteFor(quote, id);
    return sold === undefined ? 0 : sold.prices[0]!.cartonMinor / sold.cartonPieces;
  };
  const value = ware.reduce(
    (sum, { id }) =>
      sum +
      price(id) *
        sites.reduce(
          (pieces, { row }) => pieces + Math.max(0, (row.pieces[id] ?? 0) - (row.have[id] ?? 0)),
          0,
        ),
    0,
  );
  return (value * supply.holdingPerYear * days) / DAYS_A_YEAR;
}

const partsOf = (buy: Buy, opening: string, today: string): RollOutOrder['parts'] =>
  (buy.consignments[0] ?? []).map(({ supplier, lines }) => {
    const orderBy = addDays(opening, -1 - leadDays(supplier));
    return {
      supplier: supplier.id,
      name: supplier.name,
      orderBy,
      late: orderBy < today,
      lines: lines.map(({ quote, cartons }) => ({
        ware: quote.ware,
        pieces: cartons * quote.cartonPieces,
        cartons,
      })),
    };
  });

/** Whole days in which a supplier delivers with the chance `ON_TIME`. */
function leadDays({ leadTime }: Supplier): number {
  let sum = 0;
  const all = leadTimes(leadTime);
  const found = all.find(({ weight }) => (sum += weight) >= ON_TIME - 1e-9) ?? all.at(-1)!;
  return Math.ceil(found.days);
}

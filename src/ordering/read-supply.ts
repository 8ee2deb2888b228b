/**
 * From the `supply` slice to suppliers, losses and rules without units, and everything that is wrong
 * with it at once: unknown ware, a second currency, steps out of order, a lead time past the horizon.
 */
import { nameOf } from '../quantities/name.js';
import { amountText, inMinor, type Money } from '../quantities/money.js';
import { priceMinor, type Price } from '../quantities/price.js';
import { didYouMean } from '../quantities/nearest.js';
import { DAY_MS, longestLeadDays } from './lead-time.js';
import { inUnits } from './money.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';
import type { SupplySlice } from './schema.js';
import type { CartonPrice, FreightStep, Quote, Supplier } from './supply.js';
import { type SupplyContext, type SupplyModel, SUPPLY_DEFAULTS } from './supply-model.js';

/** Packing weighs about so much over the pieces themselves; assumed, used where a quote gives no carton mass. */
const PACKING_SHARE = 0.08;

type SupplierSlice = NonNullable<SupplySlice['suppliers']>[string];
type QuoteSlice = SupplierSlice['quotes'][string];

/** Reads the slice; problems carry paths from the top of the scenario (`supply.suppliers...`). */
export function readSupply(slice: SupplySlice, context: SupplyContext): Outcome<SupplyModel> {
  const problems: Fault[] = [];
  const reader = new Reader(context, problems);
  const horizonDays =
    slice.horizon === undefined ? SUPPLY_DEFAULTS.horizonDays : slice.horizon / DAY_MS;
  const reviewDays =
    slice.review === undefined ? SUPPLY_DEFAULTS.reviewDays : slice.review / DAY_MS;
  if (reviewDays > horizonDays)
    problems.push(
      problem(
        ['supply', 'review'],
        `${reviewDays} days`,
        `is longer than the time the order plans for (${horizonDays} days)`,
        'count more often, or plan for a longer time',
      ),
    );
  if (slice.orders !== undefined && slice.orders > 1 && horizonDays / slice.orders < reviewDays)
    problems.push(
      problem(
        ['supply', 'orders'],
        slice.orders,
        `orders in ${horizonDays} days are more frequent than the counts (every ${reviewDays} days)`,
        'order less often, or count more often',
      ),
    );

  for (const field of ['onHand', 'losses'] as const)
    for (const ware of Object.keys(slice[field] ?? {}))
      reader.knownWare(ware, ['supply', field, ware]);
  for (const [saucer, cups] of Object.entries(slice.saucers?.fits ?? {})) {
    reader.knownWare(saucer, ['supply', 'saucers', 'fits', saucer]);
    cups.forEach((cup, index) =>
      reader.knownWare(cup, ['supply', 'saucers', 'fits', saucer, index]),
    );
  }
  const suppliers = Object.entries(slice.suppliers ?? {}).map(([id, supplier]) => {
    const longest = longestLeadDays(supplier.leadTime);
    if (longest > horizonDays) {
      problems.push(
        problem(
          ['supply', 'suppliers', id, 'leadTime'],
          `${Math.ceil(longest)} days`,
          `may be longer than the time the order plans for (${horizonDays} days)`,
          'set supply.horizon to at least the lead time, or leave out this supplier',
        ),
      );
    }
    return reader.supplier(id, supplier, slice.tax ?? 0);
  });
  const handlingMinor = reader.money(slice.handling, ['supply', 'handling']);
  for (const group of ['cups', 'lids'] as const) {
    for (const [id, item] of Object.entries(slice.takeaway?.[group] ?? {}))
      reader.money(item.price, ['supply', 'takeaway', group, id, 'price']);
  }
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: {
      suppliers,
      horizonDays,
      orders: slice.orders ?? null,
      reviewDays,
      promise: slice.promise ?? 'each',
      confidence: slice.confidence ?? SUPPLY_DEFAULTS.confidence,
      openDaysAWeek: slice.openDaysAWeek ?? SUPPLY_DEFAULTS.openDaysAWeek,
      rushShare: slice.rushShare ?? SUPPLY_DEFAULTS.rushShare,
      handlingMinor,
      holdingPerYear: slice.holding ?? SUPPLY_DEFAULTS.holdingPerYear,
      shareFreightBy: slice.shareFreightBy ?? 'value',
      onHand: slice.onHand ?? {},
    },
  };
}

class Reader {
  constructor(
    private readonly context: SupplyContext,
    private readonly problems: Fault[],
  ) {}

  knownWare(ware: string, path: readonly (string | number)[]): void {
    const known = this.context.ware.map(({ id }) => id);
    if (!known.includes(ware))
      this.problems.push(
        problem(path, ware, 'is not a ware of this scenario', didYouMean(ware, known)),
      );
  }

  /** Minor units; an amount in another currency is a problem, since it would need a rate of exchange. */
  money(value: Money | undefined, path: readonly (string | number)[]): number {
    if (value === undefined) return 0;
    if ('currency' in value && value.currency !== this.context.currency) {
      this.problems.push(
        problem(
          path,
          value.currency,
          `is a second currency; the scenario is in ${this.context.currency}`,
          `convert the amount to ${this.context.currency}`,
        ),
      );
    }
    return inMinor(value, this.context.staffHourMinor);
  }

  supplier(id: string, slice: SupplierSlice, tax: number): Supplier {
    const path = ['supply', 'suppliers', id];
    const freight = this.freight(slice, path);
    const quotes = Object.entries(slice.quotes).map(([ware, quote]) =>
      this.quote(ware, quote, slice, [...path, 'quotes', ware]),
    );
    if (freight.some((step) => step.perKgMinor > 0)) {
      for (const quote of quotes) {
        if (quote.cartonMassG === null)
          this.problems.push(
            problem(
              [...path, 'quotes', quote.ware, 'cartonMass'],
              undefined,
              'is missing, but this supplier charges freight by weight',
              'give the weight of a full carton, such as "6 kg", or the mass of the ware',
            ),
          );
      }
    }
    return {
      id,
      name: nameOf(id, slice),
      leadTime: slice.leadTime,
      minimumOrderMinor: this.money(slice.minimumOrder, [...path, 'minimumOrder']),
      freight,
      freeFromMinor:
        slice.freight.freeFrom === undefined
          ? null
          : this.money(slice.freight.freeFrom, [...path, 'freight', 'freeFrom']),
      taxRate: slice.tax ?? tax,
      quotes,
    };
  }

  private quote(
    ware: string,
    slice: QuoteSlice,
    supplier: SupplierSlice,
    path: readonly string[],
  ): Quote {
    this.knownWare(ware, path);
    const massG = this.context.ware.find(({ id }) => id === ware)?.massG ?? null;
    return {
      ware,
      cartonPieces: slice.carton,
      minimumCartons: slice.minimumCartons ?? 1,
      cartonMassG:
        slice.cartonMass ?? (massG === null ? null : massG * slice.carton * (1 + PACKING_SHARE)),
      prices: this.prices(slice, path),
      repeat: slice.repeat ?? supplier.repeat,
    };
  }

  private prices(slice: QuoteSlice, path: readonly string[]): readonly CartonPrice[] {
    const prices: CartonPrice[] = [
      { fromCartons: 1, cartonMinor: this.price(slice.price, slice.carton, [...path, 'price']) },
    ];
    let pieces = 1;
    slice.breaks?.forEach(({ from, price }, index) => {
      const at = [...path, 'breaks', index];
      if (from <= pieces)
        this.problems.push(
          problem(
            [...at, 'from'],
            from,
            'is not more than the quantity before it',
            'list the price breaks from the smallest quantity up',
          ),
        );
      pieces = from;
      const cartonMinor = this.price(price, slice.carton, [...at, 'price']);
      if (cartonMinor >= prices[prices.length - 1]!.cartonMinor)
        this.problems.push(
          problem(
            [...at, 'price'],
            from,
            'pieces cost no less per piece than a smaller quantity',
            'list the price breaks from the smallest quantity up, each cheaper per piece than the last',
          ),
        );
      const fromCartons = Math.ceil(from / slice.carton);
      // A break inside the same carton replaces the one before: only the later can be reached by whole cartons.
      if (prices[prices.length - 1]!.fromCartons === fromCartons) prices.pop();
      prices.push({ fromCartons, cartonMinor });
    });
    return prices;
  }

  /** Minor units of a carton, which are whole: a supplier's bill has no parts of a cent. */
  private price(price: Price, carton: number, path: readonly (string | number)[]): number {
    this.money(price, path);
    const { currency, staffHourMinor } = this.context;
    const exact = priceMinor(price, carton, carton, staffHourMinor);
    const minor = Math.round(exact);
    if (minor === 0)
      this.problems.push(problem(path, 0, 'is not a price', 'give the price of a piece'));
    else if (minor !== exact)
      this.problems.push(
        problem(
          path,
          amountText(inMinor(price, 0), currency),
          `makes a carton of ${carton} cost ${inUnits(exact, currency)} ${currency}, which has more decimals than ${currency} has`,
          `write what the supplier charges for the carton, such as "${amountText(minor, currency)} a carton"`,
        ),
      );
    return minor;
  }

  private freight(slice: SupplierSlice, path: readonly string[]): readonly FreightStep[] {
    const { steps, freeFrom: _, ...plain } = slice.freight;
    const at = [...path, 'freight'];
    if (steps === undefined) return [this.freightStep({ ...plain, from: 1 }, at)];
    if (Object.values(plain).some((value) => value !== undefined)) {
      this.problems.push(
        problem(
          at,
          Object.keys(plain).join(', '),
          'is given beside steps, which already say what freight costs',
          'put all rates into the steps',
        ),
      );
    }
    steps.forEach(({ from }, index) => {
      const before = index === 0 ? 0 : steps[index - 1]!.from;
      if (index === 0 && from !== 1)
        this.problems.push(
          problem(
            [...at, 'steps', 0, 'from'],
            from,
            'leaves smaller orders without a rate',
            'start the first step at 1 carton',
          ),
        );
      else if (from <= before)
        this.problems.push(
          problem(
            [...at, 'steps', index, 'from'],
            from,
            'does not start above the step before it',
            'list the freight steps from the fewest cartons up',
          ),
        );
    });
    return steps.map((step, index) => this.freightStep(step, [...at, 'steps', index]));
  }

  private freightStep(
    step: {
      from: number;
      name?: string | undefined;
      fixed?: Money | undefined;
      perCarton?: Money | undefined;
      perKg?: Money | undefined;
    },
    path: readonly (string | number)[],
  ): FreightStep {
    return {
      fromCartons: step.from,
      name: step.name ?? `from ${step.from} ${step.from === 1 ? 'carton' : 'cartons'}`,
      fixedMinor: this.money(step.fixed, [...path, 'fixed']),
      perCartonMinor: this.money(step.perCarton, [...path, 'perCarton']),
      perKgMinor: this.money(step.perKg, [...path, 'perKg']),
    };
  }
}

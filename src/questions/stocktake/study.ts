/** The stocktake as a study: a count is compared with the holding, uses and rules of the order. */
import { wareClass } from '../../catalogue/catalogue.js';
import type { SolverLoader } from '../../ordering/choose-buy.js';
import type { Count } from '../../ordering/counts-file.js';
import { usesACalendarDay } from '../../ordering/sheet-line.js';
import type { Outcome } from '../../quantities/flaw.js';
import {
  stocktake,
  type Stocktake,
  type StocktakeLine,
  type StocktakeWare,
} from '../../ordering/stocktake.js';
import { quoteFor } from '../../ordering/supply.js';
import { topUpOrder, type TopUp } from '../../ordering/top-up.js';
import { supplyOf } from '../order/checks.js';
import { lossesOf, type OrderStudy } from '../order/study.js';
import { meanDayOf } from '../size/year.js';
import type { Scenario } from '../../scenario/scenario.js';

export interface StocktakeOptions {
  readonly counts: readonly Count[];
  /** Pieces at the last count, by ware; for the rest what the scenario has on hand, else the holding. */
  readonly last: Readonly<Record<string, number>>;
  /** Days since the last count, above 0. */
  readonly days: number;
  /** Day of this count, `YYYY-MM-DD`. */
  readonly date: string;
}

/** Delivery where no supplier is named; assumed, from no source. */
const SOON = { law: 'constant', ms: 10 * 86_400_000 } as const;

/** The stocktake with what its order costs. */
export interface StocktakeAnswer extends Stocktake {
  readonly date: string;
  readonly currency: string;
  readonly locale: string | null;
  /** What is sure to be wanted, and what waits for an answer where a count is questioned: an order each. */
  readonly order: TopUp;
  readonly waiting: TopUp;
  /** Whether the file names no supplier at all. */
  readonly unquoted: boolean;
}

/** What has gone, what that says of the loss rates, what to order; or every problem of the counts. */
export async function stocktakeStudy(
  scenario: Scenario,
  { sheet, answer }: OrderStudy,
  { counts, last, days, date }: StocktakeOptions,
  loadSolver: SolverLoader,
): Promise<Outcome<StocktakeAnswer>> {
  const read = supplyOf(scenario);
  if (!read.ok) return read;
  const supply = read.value;
  const { uses } = meanDayOf(answer);
  const ware = sheet.lines.map((line): StocktakeWare => {
    const usesADay = usesACalendarDay(uses.find((one) => one.ware === line.ware)!.aDay, supply);
    const supplier = supply.suppliers.find(({ id }) => id === line.supplier);
    const { like } = scenario.ware[line.ware]!;
    const cls = like === undefined ? null : wareClass(like);
    return {
      ware: line.ware,
      lastCount: last[line.ware] ?? supply.onHand[line.ware] ?? line.hold,
      usesSince: usesADay * days,
      breakageRange: cls?.brokenPerThousandUses.range ?? null,
      walkOffRange: cls?.lostPerYear.range ?? null,
      policy: {
        ware: line.ware,
        par: line.par,
        rates: { ...lossesOf(scenario, line.ware), usesADay },
        leadTime: supplier?.leadTime ?? SOON,
        reviewDays: supply.reviewDays,
        coverDays: line.coverDays,
        confidence: supply.confidence,
        repeat: (supplier && quoteFor(supplier, line.ware)?.repeat) ?? 'assured',
        horizonDays: supply.horizonDays,
        date,
      },
    };
  });
  const taken = stocktake({ counts, ware, days });
  if (!taken.ok) return taken;
  const orderOf = (lines: readonly StocktakeLine[]): Promise<TopUp> =>
    topUpOrder(
      lines.map((line) => ({
        ware: line.ware,
        pieces: line.topUp,
        supplier: sheet.lines.find((one) => one.ware === line.ware)!.supplier,
      })),
      supply,
      loadSolver,
    );
  const { lines } = taken.value;
  const order = await orderOf(lines.filter(({ question }) => question === null));
  const waiting = await orderOf(lines.filter(({ question }) => question !== null));
  const { currency, locale } = sheet;
  const unquoted = supply.suppliers.length === 0;
  return { ok: true, value: { ...taken.value, date, currency, locale, order, waiting, unquoted } };
}

/** From the rows of all units to the answer about all sites. Nothing here runs a day: the same rows give the same bytes, whoever ran them. */
import { minorPerUnit } from '../../quantities/money.js';
import { nameOf } from '../../quantities/name.js';
import type { SolverLoader } from '../../ordering/choose-buy.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { compile } from '../../scenario/compile.js';
import { inOrder } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import { orderFlaws, supplyOf } from '../order/checks.js';
import { placed } from '../part-checks.js';
import type { Result } from '../result.js';
import { busiestHour, meanStayMinutes } from '../size/house-measures.js';
import type { SitesAnswer } from './answer.js';
import type { FailedSite, NamedWare, SiteAnswer, SiteFacts } from './site-answer.js';
import type { SizedSite } from './chain.js';
import { chainOrder, type SparesAt } from './chain-order.js';
import { rollOutOf } from './roll-out.js';
import { busiestStage, isSized, type UnitRow } from './row.js';
import type { Base, Site } from './site.js';
import { siteGuideOf } from './site-guide.js';
import { sparesOf } from './spares.js';
import { wareListOf } from './ware-list.js';

export interface SitesOptions {
  readonly level: number | undefined;
  /** Day of the order, `YYYY-MM-DD`. */
  readonly date: string;
  readonly sparesAt: SparesAt;
  readonly loadSolver: SolverLoader;
}

/** What suppliers of the base say, or every problem of it: known before any day is run. */
export function supplyOfBase({ opened }: Base, fileName: string): Result<SupplyModel> {
  const problems = orderFlaws(opened.scenario);
  const supply = supplyOf(opened.scenario);
  return problems.length > 0 || !supply.ok
    ? { ok: false, problems: inOrder(placed(problems, opened, fileName)) }
    : { ok: true, value: supply.value };
}

/** @param rows one for each site, in the order of the sites */
export async function sitesAnswer(
  sites: readonly Site[],
  rows: readonly UnitRow[],
  base: Base,
  supply: SupplyModel,
  { level, ...options }: SitesOptions,
): Promise<SitesAnswer> {
  const { scenario } = base.opened;
  const sized = sites.flatMap((site, at): SizedSite[] => {
    const row = rows[at]!;
    return isSized(row) ? [{ site, row }] : [];
  });
  const ware = wareOf(sites);
  const answers = sized.map(siteAnswer);
  const order = await chainOrder(sized, ware, supply, options);
  // The base's supply was checked before: what stands in the way now is a ware that nobody sells, and such ware is left out.
  if (!order.ok) throw new Error(order.problems[0]!.message);
  const perUnit = minorPerUnit(scenario.currency);
  const money = (of: (site: SiteAnswer) => number): number =>
    Math.round(answers.reduce((sum, site) => sum + of(site), 0) * perUnit) / perUnit;
  const each = (of: (site: SiteAnswer, id: string) => number): Record<string, number> =>
    Object.fromEntries(
      ware.map(({ id }) => [id, answers.reduce((sum, site) => sum + of(site, id), 0)]),
    );
  return {
    base: scenario.name,
    seed: base.seed,
    currency: scenario.currency,
    level: level ?? scenario.level,
    ware,
    sites: answers,
    failed: sites.flatMap((site, at): FailedSite[] => {
      const row = rows[at]!;
      return isSized(row) ? [] : [{ ...factsOf(site), failed: row.failed }];
    }),
    totals: {
      pieces: each(({ pieces }, id) => pieces[id] ?? 0),
      add: each(({ add }, id) => add[id] ?? 0),
      cost: money(({ cost }) => cost),
      spend: money(({ spend }) => spend),
    },
    wareList: wareListOf(sized, ware),
    spares: sparesOf(sized, ware, supply),
    order: order.value,
    rollOut: await rollOutOf(sized, ware, supply, options),
    guide: siteGuideOf(
      answers,
      ware.map(({ id }) => id),
    ),
  };
}

/** Every ware of any site, in the order of the base. */
function wareOf(sites: readonly Site[]): NamedWare[] {
  const names = new Map<string, string>();
  for (const { opened } of sites)
    for (const [id, ware] of Object.entries(opened.scenario.ware))
      if (!names.has(id)) names.set(id, nameOf(id, ware));
  return [...names].map(([id, name]) => ({ id, name }));
}

function factsOf({ line, opened: { scenario } }: Site): SiteFacts {
  const model = compile(scenario, piecesPerRackOf);
  const { id, name, drop, opening } = line;
  return {
    id,
    name,
    drop,
    opening,
    seats: scenario.seats.count,
    guestsAnHour: busiestHour(model),
    takeaway: Math.round((1 - meanStaysIn(scenario)) * 1e9) / 1e9,
    stayMinutes: meanStayMinutes(model),
  };
}

function siteAnswer({ site, row }: SizedSite): SiteAnswer {
  const { unit: _, course, ...figures } = row;
  return {
    ...factsOf(site),
    ...figures,
    add: Object.fromEntries(
      Object.entries(row.pieces).map(([id, pieces]) => [
        id,
        Math.max(0, pieces - (row.have[id] ?? 0)),
      ]),
    ),
    busiest: busiestStage(row),
    course: course ?? null,
  };
}

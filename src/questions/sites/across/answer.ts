/** From the rows of all units to what is said of alternatives, uncertain inputs and measuring over all sites. Runs no days. */
import { square } from '../../../elementary/powers.js';
import type { Share } from '../../size/answer.js';
import type { Said } from '../../compare/answer.js';
import { CONFIDENCE } from '../../compare/differences.js';
import { frameOf } from '../../compare/costs.js';
import { isFailed } from '../row.js';
import type { Base, Site } from '../site.js';
import type { Asked, Unit } from '../units.js';
import {
  chanceCheaper,
  siteDraws,
  stockSpread,
  sumOfSites,
  type SiteDraws,
  type SumOfSites,
} from './drawn.js';
import { alternativesOf } from './houses.js';
import { measuredSites, type MeasuredSites } from './measured.js';
import {
  drawDaysOf,
  type AcrossRow,
  type ComparedRow,
  type DrawnRow,
  type MeasureRow,
  type Span,
} from './rows.js';
import type { Spread } from '../../compare/spread.js';

/** A line of the result table: one house of one site. */
export interface SiteHouse {
  readonly site: string;
  readonly name: string;
  /** `base`: the site as it is. */
  readonly house: string;
  readonly said: Said | null;
  /** Whether it is what the comparison recommends there. */
  readonly best: boolean;
  /** Why the site cannot have it; null: it can. */
  readonly not: string | null;
  readonly total: Span | null;
  readonly stock: Span | null;
  /** Cost of the site's stock, as its inputs are. */
  readonly stockCost: number | null;
  /** The same over draws of the inputs. */
  readonly spread: Spread | null;
  readonly chanceCheaper: Share | null;
}

export interface AcrossAlternative {
  readonly id: string;
  readonly name: string;
  /** Something to plan for: it has no verdict. */
  readonly planFor: boolean;
  /** Number of sites by what is said there. */
  readonly counts: Readonly<Partial<Record<Said, number>>>;
  readonly bestAt: number;
  readonly at: number;
  readonly notAt: number;
  /** At all sites that can have it, together; null: none can. Errors of sites are independent, so squares add. */
  readonly total: Span | null;
  readonly stock: Span | null;
  readonly chanceCheaper: Share | null;
}

export interface AcrossAnswer {
  readonly base: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  readonly asked: Asked;
  readonly horizonYears: number;
  readonly confidence: number;
  /** Differences that hold together, over all sites. */
  readonly held: number;
  readonly sites: readonly { readonly id: string; readonly name: string }[];
  readonly table: readonly SiteHouse[];
  readonly alternatives: readonly AcrossAlternative[];
  readonly draws: SumOfSites | null;
  /** Days of each reading of a draw. */
  readonly drawDays: number;
  readonly measure: MeasuredSites | null;
  readonly failed: readonly { readonly site: string; readonly failed: string }[];
  /** Every draw, for the file of draws. */
  readonly drawn: readonly SiteDraws[];
}

/** @param rows one for each unit, in the order of the units */
export function acrossAnswer(
  sites: readonly Site[],
  units: readonly Unit[],
  rows: readonly AcrossRow[],
  base: Base,
  asked: Asked,
  { level, days }: { readonly level: number | undefined; readonly days: number | undefined },
): AcrossAnswer {
  const { scenario } = base.opened;
  const of = <T extends AcrossRow>(what: Unit['work']['what'], at: number): T[] =>
    units.flatMap((unit, index) => {
      const row = rows[index]!;
      return unit.work.what === what && unit.site === at && !isFailed(row) ? [row as T] : [];
    });
  const each = sites.map(({ line: { id, name } }, at) => ({
    id,
    name,
    compared: of<ComparedRow>('compare', at)[0] ?? null,
    draws: siteDraws(id, of<DrawnRow>('draws', at)),
    measured: of<MeasureRow>('measure', at)[0] ?? null,
  }));
  const named = asked.compare ? alternativesOf(base) : [];
  const table = each.flatMap((site) =>
    tableOf(
      site,
      named.map(({ id }) => id),
    ),
  );
  const drawn = each.map(({ draws }) => draws).filter(({ houses }) => houses.length > 0);
  return {
    base: scenario.name,
    seed: base.seed,
    currency: scenario.currency,
    level: level ?? scenario.level,
    asked,
    horizonYears: frameOf(scenario).horizonYears,
    confidence: CONFIDENCE,
    held: Math.max(0, ...each.map(({ compared }) => compared?.held ?? 0)),
    sites: each.map(({ id, name }) => ({ id, name })),
    table,
    alternatives: named.map(({ id, name }) =>
      overSites(
        id,
        name,
        table.filter(({ house }) => house === id),
        drawn,
      ),
    ),
    draws: asked.draws === 0 ? null : sumOfSites(drawn, base.seed),
    drawDays: drawDaysOf(days),
    measure: measuredSites(
      each.flatMap(({ id, measured }) => (measured === null ? [] : [{ site: id, row: measured }])),
    ),
    failed: units.flatMap(({ id }, at) => {
      const row = rows[at]!;
      return isFailed(row) ? [{ site: id, failed: row.failed }] : [];
    }),
    drawn,
  };
}

function tableOf(
  site: {
    readonly id: string;
    readonly name: string;
    readonly compared: ComparedRow | null;
    readonly draws: SiteDraws;
    readonly measured: MeasureRow | null;
  },
  alternatives: readonly string[],
): SiteHouse[] {
  const { id, name, compared, draws, measured } = site;
  const about = { site: id, name };
  return [
    {
      ...about,
      house: 'base',
      said: null,
      best: compared?.best === 'base',
      not: null,
      total: null,
      stock: null,
      stockCost: compared?.stockCost ?? measured?.now.cost ?? null,
      spread: stockSpread(draws, 'base'),
      chanceCheaper: null,
    },
    ...alternatives.flatMap((house): SiteHouse[] => {
      const found = compared?.alternatives.find((one) => one.id === house);
      const not = compared?.not.find((one) => one.id === house);
      if (found === undefined && not === undefined) return [];
      return [
        {
          ...about,
          house,
          said: found?.said ?? null,
          best: compared?.best === house,
          not: not?.why ?? null,
          total: found?.total ?? null,
          stock: found?.stock ?? null,
          stockCost: found === undefined ? null : compared!.stockCost + found.stock.difference,
          spread: stockSpread(draws, house),
          chanceCheaper: chanceCheaper([draws], house),
        },
      ];
    }),
  ];
}

function overSites(
  id: string,
  name: string,
  lines: readonly SiteHouse[],
  drawn: readonly SiteDraws[],
): AcrossAlternative {
  const at = lines.filter(({ total }) => total !== null);
  const counts: Partial<Record<Said, number>> = {};
  for (const { said } of at) if (said !== null) counts[said] = (counts[said] ?? 0) + 1;
  return {
    id,
    name,
    planFor: at.length > 0 && at.every(({ said }) => said === null),
    counts,
    bestAt: lines.filter(({ best }) => best).length,
    at: at.length,
    notAt: lines.length - at.length,
    total: sumOfSpans(at.map(({ total }) => total!)),
    stock: sumOfSpans(at.map(({ stock }) => stock!)),
    chanceCheaper: chanceCheaper(drawn, id),
  };
}

/** Sites have days of their own: their errors are independent. */
export function sumOfSpans(spans: readonly Span[]): Span | null {
  if (spans.length === 0) return null;
  const difference = spans.reduce((sum, one) => sum + one.difference, 0);
  const side = (of: (span: Span) => number): number =>
    Math.sqrt(spans.reduce((sum, span) => sum + square(of(span)), 0));
  return {
    difference,
    low: difference - side((one) => one.difference - one.low),
    high: difference + side((one) => one.high - one.difference),
  };
}

/**
 * Where a morning of measuring narrows the sum of all stocks most. What the inputs of one site leave open counts as
 * independent of the others', so squares of ranges add, as they do within a site (`measure/worth.ts`).
 */
import { square } from '../../../elementary/powers.js';
import type { StockRange } from '../../measure/answer.js';
import type { MeasureRow } from './rows.js';

export interface MeasuredSite {
  readonly site: string;
  readonly now: StockRange;
  readonly foretold: StockRange;
  /** Parts of the sheet that are worth filling in there. */
  readonly parts: readonly string[];
  /** Share by which a morning at this site alone narrows the sum of all sites: of money, and of pieces. */
  readonly narrows: number;
  readonly narrowsPieces: number;
  /** The same of money with the sites above it measured too. */
  readonly withAbove: number;
}

export interface MeasuredSites {
  readonly now: StockRange;
  /** Every site measured. */
  readonly foretold: StockRange;
  /** The site that narrows the sum most first. */
  readonly sites: readonly MeasuredSite[];
}

/** The sum of stocks whose ranges are independent. */
export function sumOfRanges(ranges: readonly StockRange[]): StockRange {
  const sum = (of: (range: StockRange) => number): number =>
    ranges.reduce((total, range) => total + of(range), 0);
  const side = (of: (range: StockRange) => number): number =>
    Math.sqrt(sum((range) => square(of(range))));
  const [cost, pieces] = [sum((range) => range.cost), sum((range) => range.pieces)];
  return {
    cost,
    costLow: cost - side((range) => range.cost - range.costLow),
    costHigh: cost + side((range) => range.costHigh - range.cost),
    pieces,
    piecesLow: pieces - side((range) => range.pieces - range.piecesLow),
    piecesHigh: pieces + side((range) => range.piecesHigh - range.pieces),
  };
}

const costWidth = ({ costLow, costHigh }: StockRange): number => costHigh - costLow;
const piecesWidth = ({ piecesLow, piecesHigh }: StockRange): number => piecesHigh - piecesLow;

/** Null where no site was read. @param rows with the id of their site */
export function measuredSites(
  rows: readonly { readonly site: string; readonly row: MeasureRow }[],
): MeasuredSites | null {
  if (rows.length === 0) return null;
  const now = sumOfRanges(rows.map(({ row }) => row.now));
  const narrowed = (
    measured: ReadonlySet<string>,
    width: (range: StockRange) => number = costWidth,
  ): number => {
    if (width(now) === 0) return 0;
    const then = sumOfRanges(
      rows.map(({ site, row }) => (measured.has(site) ? row.foretold : row.now)),
    );
    return 1 - width(then) / width(now);
  };
  const alone = rows
    .map(({ site, row: { now: own, foretold, parts } }) => ({
      site,
      now: own,
      foretold,
      parts,
      narrows: narrowed(new Set([site])),
      narrowsPieces: narrowed(new Set([site]), piecesWidth),
    }))
    .toSorted((a, b) => b.narrows - a.narrows);
  const above = new Set<string>();
  return {
    now,
    foretold: sumOfRanges(rows.map(({ row }) => row.foretold)),
    sites: alone.map((one) => ({ ...one, withAbove: narrowed(above.add(one.site)) })),
  };
}

/** The units of a study of sites, and which part has which: unit u of a study in n parts is in part u mod n + 1. */
import type { SiteTable } from './table.js';

/** What is asked about each site in place of its size. */
export interface Asked {
  /** The alternatives of the base against it as it is. */
  readonly compare: boolean;
  /** Draws of the uncertain inputs; 0: none. */
  readonly draws: number;
  /** What measuring at the site is worth. */
  readonly measure: boolean;
}

/** Sizes alone: what the order is made from. */
export const SIZES: Asked = { compare: false, draws: 0, measure: false };

export const asksMore = ({ compare, draws, measure }: Asked): boolean =>
  compare || draws > 0 || measure;

export type Work =
  | { readonly what: 'size' | 'compare' | 'measure' }
  /** Draws by number, from 1. */
  | { readonly what: 'draws'; readonly from: number; readonly to: number };

export interface Unit {
  readonly id: string;
  /** Place of its row in the table, from 0. */
  readonly site: number;
  readonly work: Work;
}

/** Draws of one unit: so many that reading the site does not tell beside running its days. */
const TOGETHER = 10;

/** Of all sites first one kind of work and then the next, so that dealing them out gives no part all of the long ones. */
export function unitsOf({ lines }: Pick<SiteTable, 'lines'>, asked: Asked = SIZES): Unit[] {
  const all = (name: string, work: Work): Unit[] =>
    lines.map(({ id }, site) => ({ id: `${id}${name}`, site, work }));
  if (!asksMore(asked)) return all('', { what: 'size' });
  const units: Unit[] = [];
  for (const what of ['compare', 'measure'] as const)
    if (asked[what]) units.push(...all(`/${what}`, { what }));
  for (let from = 1; from <= asked.draws; from += TOGETHER) {
    const to = Math.min(asked.draws, from + TOGETHER - 1);
    units.push(...all(`/${from}-${to}`, { what: 'draws', from, to }));
  }
  return units;
}

/** Dealt out in turn, so that parts take alike long even where neighbours of the table are alike. @param part from 1 */
export const unitsOfPart = <T>(units: readonly T[], part: number, of: number): T[] =>
  units.filter((_, at) => at % of === part - 1);

/** The parts of `of` that hold units which are not there, as engines take them: `3,7-9`; '' : none. */
export function missingParts(there: readonly boolean[], of: number): string {
  const missing = [...new Set(there.flatMap((so, unit) => (so ? [] : [(unit % of) + 1])))].toSorted(
    (a, b) => a - b,
  );
  const spans: [number, number][] = [];
  for (const part of missing) {
    const last = spans.at(-1);
    if (last !== undefined && last[1] === part - 1) last[1] = part;
    else spans.push([part, part]);
  }
  return spans.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(',');
}

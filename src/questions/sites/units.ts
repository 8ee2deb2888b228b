/** The units of a study of sites, and which part has which: unit u of a study in n parts is in part u mod n + 1. */
import type { SiteTable } from './table.js';

export interface Unit {
  readonly id: string;
  /** Place of its row in the table, from 0. */
  readonly site: number;
}

export const unitsOf = ({ lines }: Pick<SiteTable, 'lines'>): Unit[] =>
  lines.map(({ id }, site) => ({ id, site }));

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

/** The table of sites as rows of plain figures: CSV (RFC 4180), and a workbook with the same rows. */
import { minorDigits } from '../../quantities/money.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import type { SitesAnswer } from './answer.js';
import type { SiteAnswer } from './site-answer.js';
import { mindOf, sitesFormats } from './tell.js';
import type { ReportContext } from '../../tell/context.js';

export type Cell = string | number | null;

/** A head and a row for each site; those that cannot be sized have the reason in the last column. */
export function siteRows(answer: SitesAnswer, context: ReportContext): Cell[][] {
  const { ware, currency, sites, failed } = answer;
  const formats = sitesFormats(context);
  const digits = minorDigits(currency);
  const amount = (value: number): number => Number(value.toFixed(digits));
  const head = [
    'id',
    'name',
    'drop',
    'opening',
    'seats',
    'guests an hour',
    'takeaway, percent',
    ...ware.map(({ id }) => `${id}, pieces`),
    ...ware.map(({ id }) => `${id}, to buy`),
    'level, percent',
    'level low, percent',
    'level high, percent',
    `cost, ${currency}`,
    `to pay, ${currency}`,
    'busiest stage',
    'busiest stage, percent',
    'guests a day',
    'turned away a day',
    'mind',
  ];
  const about = (site: (typeof failed)[number] | SiteAnswer): Cell[] => [
    site.id,
    site.name,
    site.drop,
    site.opening,
    site.seats,
    figure(site.guestsAnHour, 2),
    figure(100 * site.takeaway, 1),
  ];
  return [
    head,
    ...sites.map((site) => [
      ...about(site),
      ...ware.map(({ id }) => site.pieces[id] ?? 0),
      ...ware.map(({ id }) => site.add[id] ?? 0),
      ...(site.certified === null
        ? [null, null, null]
        : [site.certified.level, site.certified.low, site.certified.high].map((share) =>
            figure(100 * share, 3),
          )),
      amount(site.cost),
      amount(site.spend),
      site.busiest?.stage ?? null,
      site.busiest === null ? null : figure(100 * site.busiest.share, 1),
      figure(site.arrived, 2),
      figure(site.left, 2),
      mindOf(site, formats).join('; '),
    ]),
    ...failed.map((site) => [
      ...about(site),
      ...Array.from({ length: 2 * ware.length + 9 }, () => null),
      site.failed,
    ]),
  ];
}

export const figure = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Lines ended by CR LF. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows
    .map((row) => `${row.map((cell) => safeCell(cell === null ? '' : String(cell))).join(',')}\r\n`)
    .join('');

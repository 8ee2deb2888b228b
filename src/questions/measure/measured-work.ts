/** Clearing rounds, loads of the dishwasher, and the ware itself. */
import type { Sheet } from '../../measuring/sheet.js';
import { FEWEST } from './fewest.js';
import { FULL } from './seen.js';
import { tooFew, type Found } from './found.js';
import { measuredTimes } from './measured-times.js';

/** Times on a clock of whole minutes: none is half a minute. */
const SHORTEST = 0.5;
const present = <T>(value: T | null): value is T => value !== null;

export const measuredWork = (sheets: readonly Sheet[], seed: string | null): Found[] => [
  ...roundsFound(sheets, seed),
  ...loadsFound(
    sheets.flatMap(({ loads }) => loads),
    seed,
  ),
  ...wareFound(sheets.flatMap(({ ware }) => ware)),
];

function roundsFound(sheets: readonly Sheet[], seed: string | null): Found[] {
  const rounds = sheets.flatMap((sheet) => sheet.rounds);
  const gaps = sheets.flatMap((sheet) =>
    sheet.rounds
      .slice(1)
      .map(({ minute }, at) => Math.max(SHORTEST, minute - sheet.rounds[at]!.minute)),
  );
  const pieces = rounds.map((one) => one.pieces).filter(present);
  return [
    measuredTimes('clearing.every', gaps, 'min', 'gaps between rounds', seed),
    measuredTimes(
      'clearing.trip',
      rounds.map((one) => one.tripSeconds).filter(present),
      's',
      'timed trips',
      seed,
    ),
    mostCarried(pieces),
  ].filter(present);
}

/** The most that was carried: rounds with fewer found no more to take. */
function mostCarried(pieces: readonly number[]): Found | null {
  const path = 'clearing.tripPieces';
  const n = pieces.length;
  if (n === 0) return null;
  if (n < FEWEST.times) return tooFew(path, n, FEWEST.times, 'trips counted');
  const most = Math.max(...pieces);
  return {
    path,
    value: most,
    range: null,
    how: `the most carried in ${n} trips`,
    n,
    mean: most,
    low: null,
    high: null,
    sd: null,
    unit: 'pieces',
    law: null,
  };
}

function loadsFound(loads: Sheet['loads'], seed: string | null): Found[] {
  const waits = loads.flatMap(({ first, started, pieces, full }) =>
    first === null || started === null || pieces === null || full === null || pieces >= FULL * full
      ? []
      : [Math.max(SHORTEST, started - first)],
  );
  const machines = [...new Set(loads.map(({ machine }) => machine))].toSorted((a, b) => a - b);
  return [
    measuredTimes('washing.partLoadWait', waits, 'min', 'waits of racks that were not full', seed),
    ...machines.flatMap((machine) =>
      (['loading', 'cycle', 'unloading'] as const).map((step) =>
        measuredTimes(
          `washing.machines[${machine - 1}].${step}`,
          loads
            .filter((one) => one.machine === machine)
            .map((one) => one[`${step}Seconds`])
            .filter(present),
          's',
          'timed loads',
          seed,
        ),
      ),
    ),
  ].filter(present);
}

function wareFound(ware: Sheet['ware']): Found[] {
  return [...new Set(ware.map(({ id }) => id))].flatMap((id) =>
    (
      [
        ['brim', 'ml'],
        ['rim', 'mm'],
      ] as const
    ).flatMap(([field, unit]): Found[] => {
      const values = ware
        .filter((one) => one.id === id)
        .map((one) => one[field])
        .filter(present);
      const n = values.length;
      const mean = Number((values.reduce((sum, one) => sum + one, 0) / n).toFixed(1));
      return n === 0
        ? []
        : [
            {
              path: `ware.${id}.${field}`,
              value: `${mean} ${unit}`,
              range: null,
              how: n === 1 ? 'measured on a piece' : `measured on ${n} pieces`,
              n,
              mean,
              low: null,
              high: null,
              sd: null,
              unit,
              law: null,
            },
          ];
    }),
  );
}

/** How full the racks went: mean share of what fills them; null where nobody wrote it down. */
export function meanFill(sheets: readonly Sheet[]): { share: number; n: number } | null {
  const fills = sheets
    .flatMap(({ loads }) => loads)
    .flatMap(({ pieces, full }) => (pieces === null || full === null ? [] : [pieces / full]));
  return fills.length === 0
    ? null
    : { share: fills.reduce((sum, one) => sum + one, 0) / fills.length, n: fills.length };
}

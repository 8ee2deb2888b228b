/** Pieces of text that several parts of the answer about sites use. */
import { inUnits } from '../../ordering/money.js';
import type { Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import type { SitesAnswer } from './answer.js';

const MOST_LISTED = 8;

/** Ids, the first few by name. */
export const listed = (ids: readonly string[], formats: Formats): string =>
  ids.length <= MOST_LISTED
    ? ids.join(', ')
    : `${ids.slice(0, MOST_LISTED).join(', ')} and ${formats.count(ids.length - MOST_LISTED)} more`;

export const moneyOf =
  ({ currency }: Pick<SitesAnswer, 'currency'>, formats: Formats) =>
  (minor: number): string =>
    formats.money(inUnits(minor, currency));

/** Name of a ware by id. */
export const wareName =
  ({ ware }: Pick<SitesAnswer, 'ware'>) =>
  (id: string): string =>
    shortName(ware.find((one) => one.id === id)?.name ?? id);

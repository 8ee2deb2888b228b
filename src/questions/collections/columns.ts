/** Columns of the files: a row a collection, and a row a vessel of each. */
import type { Collections, CollectionLine, VesselLine } from './answer.js';

export interface Column<Row> {
  readonly title: string;
  /** Money in minor units; decimals to two places; else whole numbers and text. */
  readonly as: 'money' | 'decimal' | 'plain';
  readonly of: (row: Row) => string | number | null;
}

export const collectionColumns = ({
  currency,
  horizonDays,
}: Pick<Collections, 'currency' | 'horizonDays'>): readonly Column<CollectionLine>[] => [
  { title: 'id', as: 'plain', of: ({ id }) => id },
  { title: 'name', as: 'plain', of: ({ name }) => name },
  { title: 'pieces', as: 'plain', of: ({ pieces }) => pieces },
  { title: 'ordered', as: 'plain', of: ({ ordered }) => ordered },
  { title: `order now, ${currency}`, as: 'money', of: ({ nowMinor }) => nowMinor },
  {
    title: `all orders of ${horizonDays} days, ${currency}`,
    as: 'money',
    of: ({ overMinor }) => overMinor,
  },
  { title: 'full racks a day', as: 'decimal', of: ({ fullRacksADay }) => fullRacksADay },
  { title: 'drinks alike', as: 'plain', of: ({ alike }) => alike },
  { title: 'drinks compared', as: 'plain', of: ({ compared }) => compared },
  { title: 'kinds of saucer', as: 'plain', of: ({ saucerKinds }) => saucerKinds },
  { title: 'saucers saved', as: 'plain', of: ({ saucersSaved }) => saucersSaved },
  { title: 'misfits', as: 'plain', of: ({ misfits }) => misfits },
  { title: 'hot cups on the machine', as: 'plain', of: ({ onTop }) => onTop?.pieces ?? null },
  { title: 'sold until', as: 'plain', of: ({ discontinued }) => discontinued?.until ?? null },
  {
    title: `spares, ${currency}`,
    as: 'money',
    of: ({ discontinued }) => discontinued?.sparesMinor ?? null,
  },
  {
    title: `replaced, ${currency}`,
    as: 'money',
    of: ({ discontinued }) => discontinued?.replacedMinor ?? null,
  },
];

/** A vessel with the name of its collection. */
export type VesselRow = VesselLine & { readonly collection: string };

export const vesselColumns: readonly Column<VesselRow>[] = [
  { title: 'collection', as: 'plain', of: ({ collection }) => collection },
  { title: 'vessel', as: 'plain', of: ({ name }) => name },
  { title: 'id', as: 'plain', of: ({ ware }) => ware },
  { title: 'stands for', as: 'plain', of: ({ standsFor }) => standsFor.join(', ') },
  { title: 'pieces', as: 'plain', of: ({ pieces }) => pieces },
  { title: 'in a rack', as: 'plain', of: ({ perRack }) => perRack },
  { title: 'brim, ml', as: 'decimal', of: ({ brimMl }) => brimMl },
  { title: 'filled, g', as: 'decimal', of: ({ filledG }) => filledG },
  { title: 'turning moment, N m', as: 'decimal', of: ({ momentNm }) => momentNm },
  { title: 'first sip, °C', as: 'decimal', of: ({ firstSipC }) => firstSipC },
  { title: 'sold until', as: 'plain', of: ({ until }) => until },
];

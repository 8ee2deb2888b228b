/**
 * Finding the map's columns in the heading of an export, and reading what stands in them.
 */
import { didYouMean } from '../quantities/nearest.js';
import { plainItem } from './items.js';
import type { TillFlaw } from './flaw.js';
import { shownText } from './flaw.js';
import type { Separator } from './rows.js';
import { separators } from './rows.js';

/** A column that the map names, and where in the map. */
export interface NamedColumn {
  readonly name: string;
  readonly path: readonly (string | number)[];
}

/** The place of each named column, or what is wrong; capitals and runs of spaces do not count. */
export function findColumns(
  heading: readonly string[],
  named: readonly NamedColumn[],
  separator: Separator,
): { readonly places: readonly number[]; readonly flaws: readonly TillFlaw[] } {
  const plain = heading.map(plainItem);
  const flaws: TillFlaw[] = [];
  const elsewhere =
    heading.length === 1
      ? (Object.keys(separators) as Separator[]).find(
          (name) => name !== separator && heading[0]!.includes(separators[name]),
        )
      : undefined;
  if (elsewhere !== undefined) {
    const rule = 'does not split the first row of the export into columns';
    return {
      places: [],
      flaws: [
        {
          about: 'map',
          path: ['separator'],
          value: separator,
          rule,
          remedy: `did you mean "${elsewhere}"?`,
        },
      ],
    };
  }
  const places = named.map(({ name, path }) => {
    const place = plain.indexOf(plainItem(name));
    if (place < 0) {
      flaws.push({
        about: 'map',
        path,
        value: name,
        rule: 'is not a column of the export',
        remedy: didYouMean(name, heading.map(shownText)),
      });
    } else if (plain.includes(plainItem(name), place + 1)) {
      flaws.push({
        about: 'map',
        path,
        value: name,
        rule: 'is the name of two columns of the export',
        remedy: 'rename one of them in the export',
      });
    }
    return place;
  });
  return { places, flaws };
}

/** A whole number as exports write it (`2`, `2.0`, `2,00`, `-1`), or null. */
export function readWhole(text: string): number | null {
  return /^[+-]?\d{1,9}(?:[.,]0+)?$/.test(text) ? Number.parseInt(text, 10) : null;
}

/** Why a row's width is wrong, or null: too few fields to hold a column, or filled fields beyond the heading. */
export function widthFault(
  fields: readonly string[],
  heading: readonly string[],
  needed: number,
): string | null {
  if (fields.length < needed) return 'fewer columns than the first row';
  if (
    fields.length > heading.length &&
    fields.slice(heading.length).some((field) => field.trim() !== '')
  ) {
    return 'more columns than the first row (a separator inside a field without quotation marks?)';
  }
  return null;
}

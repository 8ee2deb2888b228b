/** All parts in a folder as the rows of the study: by unit, whatever numbers of parts they were cut into. */
import { MistakeError } from '../mistakes.js';
import { partIn, partNames } from './part-store.js';

export interface Merged {
  /** Rows in the order of the units; null: no part has it. */
  readonly rows: readonly (string | null)[];
  /** Parts that were cut short or damaged, and so count as missing. */
  readonly damaged: readonly string[];
  /** Most parts that any of the files was cut into; null: there is none. */
  readonly of: number | null;
}

/**
 * @param units ids in the order of the study
 * @throws MistakeError for parts of another study, and for two rows of one unit that differ
 */
export function mergeParts(folder: string, study: string, units: readonly string[]): Merged {
  const place = new Map(units.map((id, at) => [id, at]));
  const rows: (string | null)[] = units.map(() => null);
  const from: (string | null)[] = units.map(() => null);
  const damaged: string[] = [];
  const wrong: string[] = [];
  let of: number | null = null;
  for (const name of partNames(folder)) {
    const part = partIn(folder, name);
    if (part === null || !part.ok) {
      damaged.push(name);
      continue;
    }
    if (part.head.study !== study) {
      wrong.push(
        `${name}: is of another study (made by version ${part.head.version}, from other inputs, settings or files); move it away, or use a folder of its own`,
      );
      continue;
    }
    of = Math.max(of ?? 0, part.head.of);
    for (const row of part.rows) {
      const at = place.get(unitOf(row));
      if (at === undefined) wrong.push(`${name}: has a unit that is not in this study; remove it`);
      else if (rows[at] !== null && rows[at] !== row)
        wrong.push(
          `${name}: has another answer for ${units[at]!} than ${from[at]!}; remove both and run their parts again`,
        );
      else [rows[at], from[at]] = [row, name];
    }
  }
  if (wrong.length > 0) throw new MistakeError(wrong.join('\n'));
  return { rows, damaged, of };
}

const BEFORE = '{"unit":"';

/** Every row begins with its unit: no need to read the rest of it. */
function unitOf(row: string): string {
  // Nearly all ids stand there as they are; this leaves no rubbish behind at hundreds of thousands of rows.
  const end = row.startsWith(BEFORE) ? row.indexOf('"', BEFORE.length) : -1;
  const plain = end < 0 ? '\\' : row.slice(BEFORE.length, end);
  if (!plain.includes('\\')) return plain;
  const found = /^\{"unit":("(?:[^"\\]|\\.)*")/.exec(row);
  return found === null ? '' : (JSON.parse(found[1]!) as string);
}

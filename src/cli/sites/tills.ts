/** The tills that rows of a table of sites name: each read and fitted once, however many sites have it. */
import { dirname, join } from 'node:path';
import type { Problem } from '../../scenario/problems.js';
import { tillKey, type Base } from '../../questions/sites/site.js';
import type { SiteTable } from '../../questions/sites/table.js';
import { baseWithTill } from '../../questions/sites/till.js';
import type { GivenFile } from '../../questions/settings.js';
import { readWhole } from '../files.js';
import { problemsAsMistake } from '../open-scenario.js';

const [LARGEST_TILL, LARGEST_MAP] = [200_000_000, 1_000_000];

export interface Tills {
  readonly bases: ReadonlyMap<string, Base>;
  /** All files, each once, in the order of the table: part of what the study is. */
  readonly files: readonly GivenFile[];
}

/** @throws MistakeError with everything that is wrong with any of them */
export async function tillsOf(
  { file, lines }: SiteTable,
  base: GivenFile,
  seed: string,
): Promise<Tills> {
  const read = new Map<string, GivenFile>();
  const given = async (path: string, largest: number): Promise<GivenFile> => {
    const name = join(dirname(file), path);
    const found = read.get(name) ?? { name, bytes: await readWhole(name, largest) };
    read.set(name, found);
    return found;
  };
  const bases = new Map<string, Base>();
  const problems: Problem[] = [];
  for (const { till } of lines) {
    if (till === null || bases.has(tillKey(till))) continue;
    const [sales, map] = [await given(till.file, LARGEST_TILL), await given(till.map, LARGEST_MAP)];
    const found = await baseWithTill(base, sales, map, seed);
    if (found.ok) bases.set(tillKey(till), found.value);
    else problems.push(...found.problems);
  }
  if (problems.length > 0) throw problemsAsMistake(problems);
  return { bases, files: [...read.values()] };
}

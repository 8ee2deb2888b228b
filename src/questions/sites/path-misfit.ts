/** Why a column is neither a short name nor the path of a value that sites may have of their own. */
import { didYouMean } from '../../quantities/nearest.js';
import { fill } from '../../scenario/defaults.js';
import type { Path } from '../../scenario/path.js';
import { scenarioSchema } from '../../scenario/scenario.js';
import { knownKeys } from '../../scenario/schema-walk.js';
import { unwrap } from '../../scenario/tree.js';
import { pathFlaw } from '../../scenario/patched.js';
import type { Opened } from '../question.js';
import { misfit, type Misfit } from './cell.js';
import { ABOUT, SHORT } from './columns.js';

/** What one order and one table need alike at all sites, or has a column of its own. */
const SAME: Readonly<Record<string, string>> = {
  currency: 'the order is in one currency: split the table',
  locale: 'the answer is written one way: set it in the base',
  seed: 'each site has days of its own already: use --seed',
  alternatives: 'alternatives are those of the base: write them there',
  supply: 'suppliers are those of the base: write them there',
};

/** @param path null: the name cannot be read as one */
export function pathMisfit(path: Path | null, name: string, { raw }: Opened): Misfit | null {
  const first = String(path?.[0] ?? '');
  if (Object.hasOwn(SAME, first)) return misfit('is the same for all sites', SAME[first]!);
  const flaw =
    path === null ? null : pathFlaw(path, [name], name, raw, fill(unwrap(raw).tree).tree, 'change');
  if (path !== null && flaw === null) return null;
  return path === null || path.length === 1
    ? misfit(
        'is no column of sites',
        didYouMean(name, [
          ...ABOUT,
          ...SHORT.map((one) => one.name),
          ...knownKeys(scenarioSchema, []).filter((key) => !Object.hasOwn(SAME, key)),
        ]),
      )
    : misfit('is no column of sites and no path of the scenario', flaw!.remedy);
}

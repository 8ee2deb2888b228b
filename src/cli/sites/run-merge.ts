/** The parts of a study put together: the same answer as one process gives, or the parts that are missing. */
import { missingParts } from '../../questions/sites/units.js';
import { EXIT } from '../mistakes.js';
import { complain, print } from '../print.js';
import { openStudy, sitesOfUnits, tellSites, wordOf, type SitesArguments } from '../run-sites.js';
import { mergeParts, type Merged } from './merge.js';

/** Parts that engines usually cut a study into. */
export const USUAL_PARTS = 1000;
const SECOND = 1000;

export interface MergeArguments {
  readonly folder: string;
  /** Parts in which missing ones are named; absent: as the files there are. */
  readonly of: number | undefined;
  /** Seconds to look again for: network folders may show new files late. */
  readonly wait: number;
}

/** Sets the exit code to `missing` where a part is not there, and names such parts on stdout, as engines take them. */
export async function runMerge(
  args: SitesArguments,
  { folder, of, wait }: MergeArguments,
): Promise<void> {
  const study = await openStudy(args);
  const units = study.units.map(({ id }) => id);
  const merge = (): Merged => mergeParts(folder, study.digest, units);
  let merged = merge();
  for (let left = wait; left > 0 && merged.rows.includes(null); left -= 1) {
    await new Promise((resolve) => setTimeout(resolve, SECOND));
    merged = merge();
  }
  const { rows, damaged } = merged;
  for (const name of damaged) complain(`${name}: is cut short or damaged, so it counts as missing`);
  const there = rows.filter((row) => row !== null);
  if (there.length < rows.length) {
    const parts = of ?? merged.of ?? USUAL_PARTS;
    complain(
      `${rows.length - there.length} of ${rows.length} ${wordOf(study)} are missing; run these parts of ${parts}:`,
    );
    print(
      `${missingParts(
        rows.map((row) => row !== null),
        parts,
      )}\n`,
    );
    process.exitCode = EXIT.missing;
    return;
  }
  await tellSites(study, [...sitesOfUnits(study, study.units).values()], there);
}

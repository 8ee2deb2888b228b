/** One part of a study of sites: its units run, and written as one file; done before: nothing to do. */
import { join } from 'node:path';
import { unitsOfPart } from '../../questions/sites/units.js';
import { MistakeError } from '../mistakes.js';
import { say } from '../print.js';
import { openStudy, rowsOf, sitesOfUnits, wordOf, type SitesArguments } from '../run-sites.js';
import { version } from '../version.js';
import { partName, partText } from './part-file.js';
import { makeStore, partIn, storePart } from './part-store.js';

export interface Part {
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

/** @throws MistakeError for rows that are wrong, or a file of another study in its place; StorageError where the folder fails */
export async function runPart(
  args: SitesArguments,
  { part, of }: Part,
  folder: string,
): Promise<void> {
  const study = await openStudy(args);
  const name = partName(part, of);
  makeStore(folder);
  const before = partIn(folder, name);
  if (before?.ok === true) {
    if (before.head.study !== study.digest)
      throw new MistakeError(
        `${join(folder, name)}: is of another study (made by version ${before.head.version}, from other inputs, settings or files); use a folder of its own for each study`,
      );
    say(`${name}: already done`);
    return;
  }
  const units = unitsOfPart(study.units, part, of);
  const rows = await rowsOf(study, units, sitesOfUnits(study, units), args.threads ?? 1);
  storePart(folder, name, partText({ study: study.digest, version, part, of }, rows));
  say(`${name}: ${rows.length} of ${study.units.length} ${wordOf(study)} done`);
}

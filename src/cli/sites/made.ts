/** What an answer about all sites was made from: whoever ran its parts, and on however many machines, it is the same. */
import { basename } from 'node:path';
import { commandText, type Made } from '../../questions/made.js';
import { asksMore, type Asked } from '../../questions/sites/units.js';
import type { GivenFile } from '../../questions/settings.js';
import { sha256 } from '../made.js';
import { version } from '../version.js';

/** What of the command's line changes the answer. */
interface SitesSettings {
  readonly level: number | undefined;
  readonly days: number | undefined;
  readonly seed: string | undefined;
  readonly date: string | undefined;
  readonly spares: 'sites' | 'drop';
  readonly asked: Asked;
}

export interface SitesFiles {
  readonly base: GivenFile;
  readonly table: GivenFile;
  readonly tills: readonly GivenFile[];
}

/** @param date of the order, where neither the command nor the base gives one */
export function sitesMade(
  { level, days, seed, date, spares, asked }: SitesSettings,
  { base, table, tills }: SitesFiles,
  seedOfBase: string,
  today: string | undefined,
): Made {
  const settings = Object.fromEntries(
    Object.entries({
      level,
      days,
      seed,
      ...(asksMore(asked)
        ? {
            compare: asked.compare || undefined,
            draws: asked.draws || undefined,
            measure: asked.measure || undefined,
          }
        : { date: date ?? today, spares: spares === 'sites' ? undefined : spares }),
    }).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])),
  );
  const named = { base: basename(base.name), ...settings };
  return {
    version,
    command: commandText('sites', basename(table.name), named),
    seed: seedOfBase,
    question: 'sites',
    settings,
    scenario: { file: basename(base.name), sha256: sha256(base.bytes) },
    files: [table, ...tills].map(({ name, bytes }) => ({
      name: basename(name),
      sha256: sha256(bytes),
    })),
  };
}

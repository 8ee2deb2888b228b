/** Options shared by the commands that are not yet questions of the list. */
import type { Argv } from 'yargs';
import { parsed } from './parsed.js';
import { THREADS } from './setting-options.js';
import { sizing } from '../questions/settings.js';

/** An option that every command with it describes alike. */
const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

export const OPTIONS = {
  level: {
    ...text(sizing.level.describe),
    coerce: (level?: string) =>
      level === undefined ? undefined : (parsed('level', sizing.level, level) as number),
  },
  seed: text(sizing.seed.describe),
  threads: {
    ...THREADS,
    coerce: (threads?: string) => wholeOf('threads', threads, 1, 64),
  },
  days: (least: number) =>
    ({
      ...text(sizing.days.describe),
      coerce: (days?: string) => wholeOf('days', days, least, 1_000_000),
    }) as const,
  json: { type: 'boolean', default: false, describe: 'Print the answer as one JSON object' },
} as const;

/** The scenario that a command is about. */
export const scenarioFile = (describe = 'Scenario file (YAML or JSON)') =>
  ({ type: 'string', demandOption: true, describe }) as const;

/** @param leastDays fewer are too few to choose on */
export const studyOptions = <T>(yargs: Argv<T>, leastDays: number = 1) =>
  yargs
    .option('level', OPTIONS.level)
    .option('seed', OPTIONS.seed)
    .option('days', OPTIONS.days(leastDays))
    .option('threads', OPTIONS.threads);

/** A whole number within bounds. */
export const wholeOf = (
  option: string,
  given: string | undefined,
  from: number,
  to: number,
): number | undefined =>
  given === undefined
    ? undefined
    : (parsed(option, { as: 'whole', describe: '', from, to }, given) as number);

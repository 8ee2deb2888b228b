/** Options of a command that is no question of the list and yet sizes stocks. */
import type { Argv } from 'yargs';
import { parsed } from './parsed.js';
import { THREADS } from './setting-options.js';
import { sizing } from '../questions/settings.js';

/** An option that every command with it describes alike. */
const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

const OPTIONS = {
  level: {
    ...text(sizing.level.describe),
    coerce: (level?: string) =>
      level === undefined ? undefined : (parsed('level', sizing.level, level) as number),
  },
  seed: {
    ...text(sizing.seed.describe),
    coerce: (seed?: string) =>
      seed === undefined ? undefined : (parsed('seed', sizing.seed, seed) as string),
  },
  threads: {
    ...THREADS,
    coerce: (threads?: string) => wholeOf('threads', threads, 1, 64),
  },
  days: {
    ...text(sizing.days.describe),
    coerce: (days?: string) => wholeOf('days', days, 1, 1_000_000),
  },
} as const;

export const studyOptions = <T>(yargs: Argv<T>) =>
  yargs
    .option('level', OPTIONS.level)
    .option('seed', OPTIONS.seed)
    .option('days', OPTIONS.days)
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

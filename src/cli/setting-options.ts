/** Settings of a question as options of a command, and what was typed behind them. */
import type { Argv } from 'yargs';
import type { Setting, Settings } from '../questions/settings.js';
import { parsed } from './parsed.js';

/** The option of every command that runs days. */
export const THREADS = {
  type: 'string',
  requiresArg: true,
  describe: 'Threads to run days on; the answer is the same',
} as const;
const AS_SETTING: Setting = { as: 'whole', from: 1, to: 64, describe: THREADS.describe };

export function settingOptions(yargs: Argv, settings: Settings): Argv {
  let options = yargs;
  for (const [name, { as, describe, required }] of Object.entries(settings))
    options = options.option(name, {
      type: as === 'flag' ? 'boolean' : 'string',
      describe,
      ...(as === 'flag' ? {} : { requiresArg: true }),
      ...(required === true ? { demandOption: true } : {}),
    });
  return options;
}

type Arguments = Readonly<Record<string, unknown>>;

export function wordIn(args: Arguments, name: string): string | undefined {
  const value = args[name];
  return typeof value === 'string' ? value : undefined;
}

/** Settings as typed, by name; of `files`, a path a line. */
export const typedIn = (args: Arguments, settings: Settings): Record<string, string> =>
  Object.fromEntries(
    Object.entries(settings).flatMap(([name, { as }]) =>
      args[name] === undefined || (as === 'flag' && args[name] === false)
        ? []
        : [[name, [args[name]].flat().map(String).join('\n')]],
    ),
  );

/** @throws MistakeError if it is not a number of threads */
export function threadsOf(args: Arguments): number | undefined {
  const threads = wordIn(args, 'threads');
  return threads === undefined ? undefined : Number(parsed('threads', AS_SETTING, threads));
}

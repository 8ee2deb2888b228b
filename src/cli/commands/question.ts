/** A question as a command: its settings are the options, its blocks the text. */
import type { CommandModule } from 'yargs';
import type { Question } from '../../questions/question.js';
import type { Setting } from '../../questions/settings.js';
import { parsed } from '../parsed.js';

const KIND = { flag: 'boolean' } as const;

/** Options that every question has. */
const common = {
  json: { type: 'boolean', default: false, describe: 'Print the answer as one JSON object' },
  all: { type: 'boolean', default: false, describe: 'Print the details too' },
  threads: {
    type: 'string',
    requiresArg: true,
    describe: 'Threads to run days on; the answer is the same',
  },
} as const;
const THREADS: Setting = { as: 'whole', from: 1, to: 64, describe: common.threads.describe };

export function commandOf(question: Question): CommandModule {
  return {
    command: `${question.name} <file>`,
    describe: question.describe,
    builder(yargs) {
      let options = yargs
        .positional('file', {
          type: 'string',
          demandOption: true,
          describe: 'Scenario file (YAML or JSON)',
        })
        .options(common);
      for (const [name, { as, describe, required }] of Object.entries(question.settings))
        options = options.option(name, {
          type: as === 'flag' ? KIND.flag : 'string',
          describe,
          ...(as === 'flag' ? {} : { requiresArg: true }),
          ...(required === true ? { demandOption: true } : {}),
        });
      if (question.writes === true)
        options = options.option('out', {
          type: 'string',
          requiresArg: true,
          describe: 'Folder to write files to',
        });
      return options;
    },
    async handler(args) {
      const { runQuestion } = await import('../run-question.js');
      const word = (name: string): string | undefined => {
        const value: unknown = args[name];
        return typeof value === 'string' ? value : undefined;
      };
      const threads = word('threads');
      await runQuestion(question, {
        file: String(args['file']),
        typed: Object.fromEntries(
          Object.entries(question.settings).flatMap(([name, { as }]) =>
            args[name] === undefined || (as === 'flag' && args[name] === false)
              ? []
              : [[name, String(args[name])]],
          ),
        ),
        json: args['json'] === true,
        all: args['all'] === true,
        out: word('out'),
        threads: threads === undefined ? undefined : Number(parsed('threads', THREADS, threads)),
      });
    },
  };
}

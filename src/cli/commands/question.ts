/** A question as a command: its settings are the options, its blocks the text. */
import type { Argv, CommandModule } from 'yargs';
import type { Question } from '../../questions/question.js';
import { settingOptions, THREADS, threadsOf, typedIn, wordIn } from '../setting-options.js';

/** Options that every question has. */
const common = {
  json: { type: 'boolean', default: false, describe: 'Print the answer as one JSON object' },
  all: { type: 'boolean', default: false, describe: 'Print the details too' },
} as const;

export function commandOf(question: Question): CommandModule {
  return {
    command: `${question.name} <file>`,
    describe: question.describe,
    builder(yargs) {
      let options: Argv = settingOptions(
        yargs
          .positional('file', {
            type: 'string',
            demandOption: true,
            describe: 'Scenario file (YAML or JSON)',
          })
          .options({ ...common, threads: THREADS }),
        question.settings,
      );
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
      await runQuestion(question, {
        file: String(args['file']),
        typed: typedIn(args, question.settings),
        json: args['json'] === true,
        all: args['all'] === true,
        out: wordIn(args, 'out'),
        threads: threadsOf(args),
      });
    },
  };
}

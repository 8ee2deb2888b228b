/** cuptide verify: does every number of a saved letter or answer still come out? */
import type { CommandModule } from 'yargs';
import { THREADS, threadsOf, wordIn } from '../setting-options.js';

export const verify: CommandModule = {
  command: 'verify <file>',
  describe: 'Work out a saved letter or answer again, and say which numbers do not match',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        demandOption: true,
        describe:
          'Saved letter (HTML), what size, order or another printed with --json, or a table (CSV; of an order XLSX too)',
      })
      .option('scenario', {
        type: 'string',
        requiresArg: true,
        describe: 'Scenario of an answer that does not carry it',
      })
      .option('files', {
        type: 'string',
        requiresArg: true,
        describe: 'Folder of the other files it was made from, if not that of the scenario',
      })
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print what was found as one JSON object',
      })
      .option('threads', THREADS),
  async handler(args) {
    const [{ runVerify }, { EXIT }] = await Promise.all([
      import('../verify/run-verify.js'),
      import('../mistakes.js'),
    ]);
    const same = await runVerify({
      file: String(args['file']),
      scenario: wordIn(args, 'scenario'),
      files: wordIn(args, 'files'),
      json: args['json'] === true,
      threads: threadsOf(args),
    });
    if (!same) process.exitCode = EXIT.differs;
  },
};

/** cuptide report: the answer, its pictures and its inputs as files. */
import type { CommandModule } from 'yargs';
import { size } from '../../questions/size/head.js';
import { settingOptions, THREADS, threadsOf, typedIn } from '../setting-options.js';

/** Those of the size that a letter can be made with. */
const { level, seed, days, confidence, stock, day } = size.settings;
const settings = { level, seed, days, confidence, stock, day };

export const report: CommandModule = {
  command: 'report <file>',
  describe: 'Write the answer as a letter (HTML) with its pictures (SVG) and its JSON',
  builder: (yargs) =>
    settingOptions(
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON)',
      }),
      settings,
    )
      .option('out', {
        type: 'string',
        default: 'reports',
        requiresArg: true,
        describe: 'Folder to write to',
      })
      .option('all', {
        type: 'boolean',
        default: false,
        describe: 'Print the details too',
      })
      .option('threads', THREADS),
  async handler(args) {
    const [{ writeReport }, { givenOf }] = await Promise.all([
      import('../write-report.js'),
      import('../run-question.js'),
    ]);
    const typed = typedIn(args, settings);
    await writeReport({
      file: String(args['file']),
      folder: String(args['out']),
      given: await givenOf(settings, typed),
      typed,
      all: args['all'] === true,
      threads: threadsOf(args),
    });
  },
};

/** cuptide report: the answer, its pictures and its inputs as files. */
import type { CommandModule } from 'yargs';
import { questions } from '../../questions/list.js';
import { size } from '../../questions/size/head.js';
import { allowingForInputs } from '../../questions/settings.js';
import { settingOptions, THREADS, threadsOf, typedIn } from '../setting-options.js';

/** Those of the size that a letter can be made with. */
const { level, seed, days, confidence, stock, day } = size.settings;
const settings = { level, seed, days, confidence, stock, day, ...allowingForInputs };
/** What questions need for their parts in the letter. */
const ofParts = Object.fromEntries(
  questions.flatMap(({ inReport }) => Object.entries(inReport?.settings ?? {})),
);

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
      { ...settings, ...ofParts },
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
    const [{ writeReport }, { givenOf }, { partsAsked }] = await Promise.all([
      import('../write-report.js'),
      import('../run-question.js'),
      import('../report-parts.js'),
    ]);
    const typed = typedIn(args, settings);
    await writeReport({
      file: String(args['file']),
      folder: String(args['out']),
      given: await givenOf(settings, typed),
      typed,
      all: args['all'] === true,
      threads: threadsOf(args),
      parts: await partsAsked((one) => givenOf(one, typedIn(args, one))),
    });
  },
};

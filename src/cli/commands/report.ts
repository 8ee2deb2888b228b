/** cuptide report: the answer, its pictures and its inputs as files. */
import type { CommandModule } from 'yargs';
import { backtest } from '../../questions/backtest/head.js';
import { size } from '../../questions/size/head.js';
import { allowingForInputs, type GivenFile } from '../../questions/settings.js';
import { settingOptions, THREADS, threadsOf, typedIn } from '../setting-options.js';

/** Those of the size that a letter can be made with. */
const { level, seed, days, confidence, stock, day } = size.settings;
const settings = { level, seed, days, confidence, stock, day, ...allowingForInputs };
/** Recorded days to try the stock on: both or neither. */
const { till, map } = backtest.settings;
const recorded = { till: { ...till, required: false }, map: { ...map, required: false } };

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
      { ...settings, ...recorded },
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
    const [{ writeReport }, { givenOf }, { MistakeError }] = await Promise.all([
      import('../write-report.js'),
      import('../run-question.js'),
      import('../mistakes.js'),
    ]);
    const typed = typedIn(args, settings);
    const days = await givenOf(recorded, typedIn(args, recorded));
    const [tillFile, mapFile] = [
      days['till'] as GivenFile | undefined,
      days['map'] as GivenFile | undefined,
    ];
    if ((tillFile === undefined) !== (mapFile === undefined))
      throw new MistakeError(
        tillFile === undefined
          ? '--map is given without --till; give the export of the till too'
          : '--till is given without --map; give the map that says what its columns mean',
      );
    await writeReport({
      file: String(args['file']),
      folder: String(args['out']),
      given: await givenOf(settings, typed),
      typed,
      all: args['all'] === true,
      threads: threadsOf(args),
      recorded:
        tillFile === undefined || mapFile === undefined
          ? undefined
          : { till: tillFile, map: mapFile },
    });
  },
};

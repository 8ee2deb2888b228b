/** cuptide compare: the alternatives of a scenario side by side, under the same guests. */
import type { CommandModule } from 'yargs';
import type { CompareArguments } from '../run-compare.js';
import { OPTIONS, scenarioFile, studyOptions, wholeOf } from '../study-options.js';

export const compare: CommandModule<object, CompareArguments> = {
  command: 'compare <file>',
  describe:
    'More ware, another machine or another habit: the alternatives of a scenario side by side',
  builder: (yargs) =>
    studyOptions(
      yargs.positional(
        'file',
        scenarioFile(
          'Scenario file (YAML or JSON); without alternatives the usual questions are tried',
        ),
      ),
      100,
    )
      .option('map', {
        type: 'boolean',
        default: false,
        describe: 'Add the trade-off map: machines, their class, clearing rounds, racks',
      })
      .option('moves', {
        type: 'boolean',
        default: false,
        describe: 'Add what moves the order: each input over its range',
      })
      .option('uncertainty', {
        type: 'string',
        requiresArg: true,
        describe: 'Draws of all inputs from their ranges together, such as 40',
        coerce: (draws?: string) => wholeOf('uncertainty', draws, 10, 10_000),
      })
      .option('equal-guests', {
        type: 'boolean',
        default: false,
        describe: 'Seat every guest in every alternative, so that all serve the same ones',
      })
      .option('all', {
        type: 'boolean',
        default: false,
        describe: 'Print the details too',
      })
      .option('json', OPTIONS.json)
      .option('out', {
        type: 'string',
        describe: 'Folder to write the summary and its pictures to',
        requiresArg: true,
      }) as never,
  async handler(args) {
    const { runCompare } = await import('../run-compare.js');
    await runCompare(args);
  },
};

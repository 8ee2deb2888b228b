/** cuptide compare: the alternatives of a scenario side by side, under the same guests. */
import type { CommandModule } from 'yargs';
import type { CompareArguments } from '../run-compare.js';
import { inside } from '../study-options.js';

export const compare: CommandModule<object, CompareArguments> = {
  command: 'compare <file>',
  describe:
    'More ware, another machine or another habit: the alternatives of a scenario side by side',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON) with alternatives',
      })
      .option('level', {
        type: 'number',
        describe: 'Share of rushes in which nothing may run out, such as 0.95',
        coerce: (level?: number) =>
          inside(
            'level',
            level,
            (value) => value > 0 && value < 1,
            'a share between 0 and 1, such as 0.95',
          ),
      })
      .option('seed', {
        type: 'string',
        describe: 'Word or number that the random days are drawn from',
        requiresArg: true,
      })
      .option('days', {
        type: 'number',
        describe: 'Days each alternative is chosen on, instead of as many as it takes',
        coerce: (days?: number) =>
          inside(
            'days',
            days,
            (value) => Number.isInteger(value) && value >= 100 && value <= 1_000_000,
            'a whole number from 100 to 1,000,000',
          ),
      })
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
        type: 'number',
        describe: 'Draws of all inputs from their ranges together, such as 40',
        coerce: (draws?: number) =>
          inside(
            'uncertainty',
            draws,
            (value) => Number.isInteger(value) && value >= 10 && value <= 10_000,
            'a whole number from 10 to 10,000',
          ),
      })
      .option('seats', {
        type: 'string',
        describe: 'Add a planning table for these sizes, guests growing with seats: 20,40,60,80',
        requiresArg: true,
      })
      .option('equal-guests', {
        type: 'boolean',
        default: false,
        describe: 'Seat every guest in every alternative, so that all serve the same ones',
      })
      .option('threads', {
        type: 'number',
        describe: 'Threads to run days on; the answer is the same',
        coerce: (threads?: number) =>
          inside(
            'threads',
            threads,
            (value) => Number.isInteger(value) && value >= 1 && value <= 64,
            'a whole number from 1 to 64',
          ),
      })
      .option('all', {
        type: 'boolean',
        default: false,
        describe: 'Print the details too',
      })
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print the comparison as one JSON object',
      })
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

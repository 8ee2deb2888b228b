/** cuptide new: a commented scenario file from a few answers, asked on a terminal or given as options. */
import type { CommandModule } from 'yargs';
import type { Given } from '../write-starter.js';

export const starter: CommandModule<object, Given> = {
  command: 'new <file>',
  describe: 'Write a commented scenario to start from',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'File to write; never overwritten',
      })
      .option('name', { type: 'string', requiresArg: true, describe: 'Name of the café' })
      .option('seats', { type: 'number', requiresArg: true, describe: 'Seats in the house' })
      .option('guests', {
        type: 'number',
        requiresArg: true,
        describe: 'Guests in the busiest hour, those who take away included',
      })
      .option('from', {
        type: 'string',
        requiresArg: true,
        describe: 'Opening time, such as 07:00',
      })
      .option('to', { type: 'string', requiresArg: true, describe: 'Closing time, such as 11:00' })
      .option('stay', {
        type: 'string',
        requiresArg: true,
        describe: 'Share of guests who stay in, such as "40 %"',
      })
      .option('menu', {
        type: 'string',
        requiresArg: true,
        describe: 'Drinks, with commas between',
      })
      .option('currency', { type: 'string', requiresArg: true, describe: 'ISO code, such as EUR' })
      .option('staff-hour', {
        type: 'string',
        requiresArg: true,
        describe: 'What an hour of staff costs, such as 22.50',
      }) as never,
  async handler(args) {
    const { writeStarter } = await import('../write-starter.js');
    await writeStarter(args);
  },
};

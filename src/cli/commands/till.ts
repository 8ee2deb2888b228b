/** cuptide till: a scenario whose demand is fitted to a till export. */
import type { CommandModule } from 'yargs';
import { till as head } from '../../questions/till/head.js';
import { settingOptions, typedIn } from '../setting-options.js';

interface Arguments {
  readonly file: string;
  readonly out?: string;
  readonly picture?: string;
  readonly all: boolean;
}

export const till: CommandModule<object, Arguments> = {
  command: `${head.name} <file>`,
  describe: head.describe,
  builder: (yargs) =>
    settingOptions(
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Export of the till (CSV)',
      }),
      head.settings,
    )
      .option('out', {
        type: 'string',
        requiresArg: true,
        describe: 'File for the new scenario; without it, what was found is printed alone',
      })
      .option('picture', {
        type: 'string',
        requiresArg: true,
        describe: 'Also draw observed against fitted parties (SVG file)',
      })
      .option('all', {
        type: 'boolean',
        default: false,
        describe: 'Print the details too',
      }) as never,
  async handler(args) {
    const { runTill } = await import('../run-till.js');
    await runTill({ ...args, typed: typedIn({ ...args }, head.settings) });
  },
};

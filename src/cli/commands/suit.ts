/** cuptide suit: which vessel for which drink and guest. */
import type { CommandModule } from 'yargs';

interface Arguments {
  readonly file: string;
  readonly json: boolean;
  readonly seed?: string;
  readonly out?: string;
}

export const suit: CommandModule<object, Arguments> = {
  command: 'suit <file>',
  describe: 'Check strength, grip, heat and fit of the vessels, and which could go',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON)',
      })
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print the answer as one JSON object',
      })
      .option('seed', {
        type: 'string',
        requiresArg: true,
        describe: 'Word or number that the random days are drawn from',
      })
      .option('out', {
        type: 'string',
        requiresArg: true,
        describe: 'Folder to write the pictures to (SVG)',
      }) as never,
  async handler(args) {
    const { runSuit } = await import('../run-suit.js');
    await runSuit(args);
  },
};

/** cuptide suit: which vessel for which drink and guest. */
import type { CommandModule } from 'yargs';
import { OPTIONS, scenarioFile } from '../study-options.js';

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
      .positional('file', scenarioFile())
      .option('json', OPTIONS.json)
      .option('seed', OPTIONS.seed)
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

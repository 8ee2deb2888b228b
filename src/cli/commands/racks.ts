/** cuptide racks: how many pieces a rack takes, from their shapes, and washing as the rush has it. */
import type { RacksArguments } from '../run-racks.js';
import type { CommandModule } from 'yargs';
import { OPTIONS, scenarioFile } from '../study-options.js';

export const racks: CommandModule<object, RacksArguments> = {
  command: 'racks <file>',
  describe: 'Pieces a rack from the shape of the ware, drawings, and washing in the rush',
  builder: (yargs) =>
    yargs
      .positional('file', scenarioFile())
      .option('ware', { type: 'string', requiresArg: true, describe: 'One ware alone' })
      .option('json', OPTIONS.json)
      .option('seed', OPTIONS.seed)
      .option('lift-from', {
        type: 'string',
        requiresArg: true,
        describe: 'Height a loaded rack is lifted from, such as "90 cm"',
      })
      .option('lift-to', {
        type: 'string',
        requiresArg: true,
        describe: 'Height it is lifted to, such as "45 cm"',
      })
      .option('reach', {
        type: 'string',
        requiresArg: true,
        describe: 'Hands ahead of the ankles, such as "40 cm"',
      })
      .option('out', {
        type: 'string',
        requiresArg: true,
        describe: 'Folder to write the drawings and the chart to (SVG)',
      }) as never,
  async handler(args) {
    const { runRacks } = await import('../run-racks.js');
    await runRacks(args);
  },
};

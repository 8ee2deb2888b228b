/** cuptide order: what to buy so that the par still holds before the next delivery. */
import type { OrderArguments } from '../run-order.js';
import type { CommandModule } from 'yargs';
import { studyOptions } from '../study-options.js';

export const order: CommandModule<object, OrderArguments> = {
  command: 'order <file>',
  describe: 'From par to an order sheet: spares, cartons, freight, reorder points',
  builder: (yargs) =>
    studyOptions(
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON)',
      }),
      'sizing',
    )
      .option('date', {
        type: 'string',
        requiresArg: true,
        describe: 'Day of the order, YYYY-MM-DD; else that of the scenario, else today',
      })
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print the sheet as one JSON object',
      })
      .option('out', {
        type: 'string',
        requiresArg: true,
        describe: 'Folder to write the sheet to (CSV, XLSX, page, pictures)',
      }) as never,
  async handler(args) {
    const { runOrder } = await import('../run-order.js');
    await runOrder(args);
  },
};

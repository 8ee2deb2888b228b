/** cuptide stocktake: a count of what is there, the loss rates seen, and the top-up order. */
import type { StocktakeArguments } from '../run-stocktake.js';
import type { CommandModule } from 'yargs';
import { OPTIONS, scenarioFile, studyOptions } from '../study-options.js';

export const stocktake: CommandModule<object, StocktakeArguments> = {
  command: 'stocktake <file>',
  describe: 'From a count of what is there to loss rates and a top-up order',
  builder: (yargs) =>
    studyOptions(yargs.positional('file', scenarioFile()))
      .option('counts', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'Count as CSV: ware, counted, and if known broken, retired, delivered',
      })
      .option('since', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'Day of the last count, or of the first delivery, YYYY-MM-DD',
      })
      .option('last', {
        type: 'string',
        requiresArg: true,
        describe:
          'Pieces at that count, such as cup=60,saucer=48; else those on hand in the scenario, else the holding',
      })
      .option('date', {
        type: 'string',
        requiresArg: true,
        describe: 'Day of this count, YYYY-MM-DD; else today',
      })
      .option('json', OPTIONS.json) as never,
  async handler(args) {
    const { runStocktake } = await import('../run-stocktake.js');
    await runStocktake(args);
  },
};

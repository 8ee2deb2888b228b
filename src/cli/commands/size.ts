/** cuptide size: the stock a café needs, or how safe a given stock is. Prints; writes no files. */
import type { CommandModule } from 'yargs';
import { studyOptions } from '../study-options.js';
import type { StudyArguments } from '../run-study.js';

interface Arguments extends StudyArguments {
  readonly json: boolean;
  readonly peaks: boolean;
}

export const size: CommandModule<object, Arguments> = {
  command: 'size <file>',
  describe: 'How many pieces of each ware the café needs, and how sure that is',
  builder: (yargs) =>
    studyOptions(
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON)',
      }),
    )
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print the answer as one JSON object',
      })
      .option('peaks', {
        type: 'boolean',
        default: false,
        describe: 'With --json: add the peaks of every day chosen on',
      }) as never,
  async handler(args) {
    const { runStudy } = await import('../run-study.js');
    const { answer, opened } = await runStudy(args, { peaks: args.peaks });
    if (args.json) {
      process.stdout.write(`${JSON.stringify(answer)}\n`);
      return;
    }
    const [{ answerText }, { contextOf }, { piecesPerRackOf }, { version }] = await Promise.all([
      import('../../questions/size/text.js'),
      import('../../tell/context-of.js'),
      import('../../scenario/rack-geometry.js'),
      import('../version.js'),
    ]);
    process.stdout.write(
      answerText(answer, contextOf(opened.scenario, opened.inputs, version, piecesPerRackOf)),
    );
  },
};

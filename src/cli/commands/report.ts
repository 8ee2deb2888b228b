/** cuptide report: the answer, its pictures and its inputs as files. */
import type { CommandModule } from 'yargs';
import { studyOptions } from '../study-options.js';
import type { GivenOptions } from '../../letter/live.js';
import type { RunStudy, StudyArguments } from '../run-study.js';

interface Arguments extends StudyArguments {
  readonly out: string;
}

const DAYS_WATCHED = 300;

export const report: CommandModule<object, Arguments> = {
  command: 'report <file>',
  describe: 'Write the answer as a letter (HTML) with its pictures (SVG) and its JSON',
  builder: (yargs) =>
    studyOptions(
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Scenario file (YAML or JSON)',
      }),
    ).option('out', {
      type: 'string',
      default: 'reports',
      requiresArg: true,
      describe: 'Folder to write to',
    }) as never,
  async handler(args) {
    const [{ runStudy }, { writeReport }, { inThisThread }] = await Promise.all([
      import('../run-study.js'),
      import('../write-report.js'),
      import('../../cafe/runner.js'),
    ]);
    const run = await runStudy(args, { watch: DAYS_WATCHED });
    const { files, text } = await writeReport(
      args.file,
      args.out,
      givenOptions(args, run),
      run,
      inThisThread(),
    );
    process.stdout.write(`${text}\nWritten:\n${files.map((file) => `  ${file}\n`).join('')}`);
  },
};

/** What the page must ask for to give the same answer. */
function givenOptions(
  { level, seed, days, stock }: Arguments,
  { answer, listed }: RunStudy,
): GivenOptions {
  return {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    ...(stock === undefined
      ? {}
      : { stock: Object.fromEntries(answer.stock.map(({ ware, pieces }) => [ware, pieces])) }),
    ...(listed === null ? {} : { listed }),
  };
}

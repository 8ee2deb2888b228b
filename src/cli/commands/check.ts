/** cuptide check: is this scenario file sound? */
import type { CommandModule } from 'yargs';

interface Arguments {
  readonly file?: string;
  readonly schema: boolean;
}

export const check: CommandModule<object, Arguments> = {
  command: 'check [file]',
  describe: 'Check a scenario file and list every problem it has',
  builder: (yargs) =>
    yargs
      .positional('file', { type: 'string', describe: 'Scenario file (YAML or JSON)' })
      .option('schema', {
        type: 'boolean',
        default: false,
        describe: 'Print the JSON Schema of scenario files instead, for editors',
      }) as never,
  async handler({ file, schema }) {
    if (schema) {
      const { describedSchema } = await import('../described-schema.js');
      process.stdout.write(`${JSON.stringify(describedSchema(), null, 2)}\n`);
      return;
    }
    if (file === undefined) {
      const { MistakeError } = await import('../mistakes.js');
      throw new MistakeError('Name a scenario file, or give --schema.');
    }
    const [
      { openScenario, problemsAsMistake },
      { partProblems },
      { piecesPerRackOf },
      { say },
      { together },
    ] = await Promise.all([
      import('../open-scenario.js'),
      import('../../questions/part-checks.js'),
      import('../../scenario/rack-geometry.js'),
      import('../print.js'),
      import('../../quantities/warned.js'),
    ]);
    const opened = await openScenario(file);
    const problems = partProblems(opened, file, { piecesPerRack: piecesPerRackOf });
    if (problems.length > 0) throw problemsAsMistake(problems);
    const { scenario, inputs, warnings } = opened;
    const count = (basis: string): number => inputs.filter((input) => input.basis === basis).length;
    for (const { message, path } of together(warnings))
      say(`warning${path === '' ? '' : ` (${path})`}: ${message}`);
    say(
      `${file}: no mistakes found. ${scenario.name}: ${Object.keys(scenario.ware).length} kinds of ware, ${Object.keys(scenario.menu).length} drinks, ` +
        `${inputs.length} values (${count('measured')} measured, ${count('published')} published, ${count('practice')} common practice, ${count('assumed')} assumed).`,
    );
  },
};

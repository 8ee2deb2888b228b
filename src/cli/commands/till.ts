/** cuptide till: a scenario whose demand is fitted to a till export. */
import type { CommandModule } from 'yargs';
import type { ChartSpec } from '../../tell/charts/style.js';
import type { TillFit } from '../../till/fit-till.js';

interface Arguments {
  readonly file: string;
  readonly map: string;
  readonly scenario: string;
  readonly out: string;
  readonly picture?: string;
}

const LARGEST_MAP = 1_000_000;

export const till: CommandModule<object, Arguments> = {
  command: 'till <file>',
  describe: 'Fit guests and menu to a till export and write a scenario with them',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'Export of the till (CSV)',
      })
      .option('map', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'What the columns mean and which days to fit (YAML)',
      })
      .option('scenario', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'Scenario that everything else comes from',
      })
      .option('out', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'File for the new scenario',
      })
      .option('picture', {
        type: 'string',
        requiresArg: true,
        describe: 'Also draw observed against fitted parties (SVG file)',
      }) as never,
  async handler({ file, map: mapFile, scenario: baseFile, out, picture }) {
    const [
      { createReadStream },
      { basename },
      files,
      opening,
      { readTillMap, tillProblem },
      { readTill },
      { fitTill },
      applying,
      { tillSummary },
      { readScenario },
      { MistakeError },
      { print },
    ] = await Promise.all([
      import('node:fs'),
      import('node:path'),
      import('../files.js'),
      import('../open-scenario.js'),
      import('../../questions/till/read-map.js'),
      import('../../till/read-till.js'),
      import('../../till/fit-till.js'),
      import('../../till/apply-till.js'),
      import('../../till/summary.js'),
      import('../../scenario/read-scenario.js'),
      import('../mistakes.js'),
      import('../print.js'),
    ]);
    for (const target of [out, ...(picture === undefined ? [] : [picture])])
      await files.tryOutput(target, 'file');
    const read = readTillMap(await files.readWhole(mapFile, LARGEST_MAP), mapFile);
    if (!read.ok) throw opening.problemsAsMistake(read.problems);
    const stop = (flaws: readonly Parameters<typeof tillProblem>[0][]) =>
      opening.problemsAsMistake(
        flaws.map((flaw) =>
          tillProblem(
            flaw,
            flaw.about === 'map' ? mapFile : flaw.about === 'base' ? baseFile : file,
            flaw.about === 'map' ? read.positionOf : flaw.about === 'base' ? base.positionOf : null,
          ),
        ),
      );
    const base = await opening.openScenario(baseFile);
    const baseText = Buffer.from(await files.readWhole(baseFile, LARGEST_MAP)).toString('utf8');
    const unknown = applying.unknownDrinks(read.map.groups, baseText);
    if (unknown.length > 0) throw stop(unknown);
    await files.sizeOf(file);
    const tally = await readTill(createReadStream(file), read.map);
    if (!tally.ok) throw stop(tally.flaws);
    const fit = fitTill(tally.value, read.map, basename(file));
    if (!fit.ok) throw stop(fit.flaws);
    const applied = applying.applyTill(baseText, fit.value);
    if (!applied.ok) throw stop(applied.flaws);
    const made = readScenario(applied.value.text, out, {});
    if (!made.ok)
      throw new MistakeError(
        `The fitted scenario does not fit the rest of ${baseFile}:\n${opening.problemsAsMistake(made.problems).message}`,
      );
    const drawing =
      picture === undefined ? [] : [{ path: picture, content: await drawTill(fit.value) }];
    const written = [{ path: out, content: applied.value.text }, ...drawing];
    await files.writeAll(written);
    print(
      `${tillSummary(fit.value)}${applied.value.notes.map((note) => `${note}\n`).join('')}\nWritten: ${written.map(({ path }) => path).join(', ')}\n`,
    );
  },
};

async function drawTill(fit: TillFit): Promise<string> {
  const [{ tillChart }, { renderSvg, standaloneSvg }] = await Promise.all([
    import('../../till/chart.js'),
    import('../../tell/render-svg.js'),
  ]);
  return standaloneSvg(await renderSvg(tillChart(fit) as unknown as ChartSpec));
}

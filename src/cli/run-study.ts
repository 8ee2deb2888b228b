/** A scenario file and options → a study, with a progress bar and as many threads as pay. */
import type { ListedDay } from '../cafe/listed-day.js';
import { readListedDays } from '../scenario/listed-day-schema.js';
import { scenarioStudy } from '../questions/size/scenario-study.js';
import type { Study } from '../questions/size/study.js';
import { readWhole } from './files.js';
import { openScenario, problemsAsMistake, type OpenScenario } from './open-scenario.js';
import { daysBar } from './progress.js';
import { parseStock } from './study-options.js';
import { threadedRunner } from './workers.js';

export interface StudyArguments {
  readonly file: string;
  readonly level?: number | undefined;
  readonly seed?: string | undefined;
  readonly days?: number | undefined;
  readonly stock?: string | undefined;
  readonly day?: string | undefined;
  readonly threads?: number | undefined;
}

const LARGEST_LISTED = 200_000_000;
/** Fewer days than this are run before a helper is warm: its programs and ours would be made ready at the same time, on the same cores. */
const WORTH_PREPARING = 4000;

export interface RunStudy extends Study {
  readonly opened: OpenScenario;
  readonly listed: readonly ListedDay[] | null;
}

export async function runStudy(
  args: StudyArguments,
  extra: { readonly peaks?: boolean; readonly watch?: number } = {},
): Promise<RunStudy> {
  const bar = await daysBar('running days');
  const runner = threadedRunner((days) => bar.add(days), args.threads);
  try {
    const opened = await openScenario(args.file);
    const { scenario } = opened;
    const stock =
      args.stock === undefined ? undefined : parseStock(args.stock, Object.keys(scenario.ware));
    const listed =
      args.day === undefined ? undefined : await listedDays(args.day, Object.keys(scenario.menu));
    if (
      stock === undefined &&
      listed === undefined &&
      (args.days ?? WORTH_PREPARING) >= WORTH_PREPARING
    )
      runner.prepare();
    const result = await scenarioStudy(opened, runner, {
      ...(args.level === undefined ? {} : { level: args.level }),
      ...(args.seed === undefined ? {} : { seed: args.seed }),
      ...(args.days === undefined ? {} : { days: args.days }),
      ...(stock === undefined ? {} : { stock }),
      ...(listed === undefined ? {} : { listed }),
      ...extra,
    });
    return { ...result, opened, listed: listed ?? null };
  } finally {
    bar.end();
    await runner.close();
  }
}

async function listedDays(path: string, menu: readonly string[]): Promise<readonly ListedDay[]> {
  const result = readListedDays(await readWhole(path, LARGEST_LISTED), path, menu);
  if (!result.ok) throw problemsAsMistake(result.problems);
  return result.days;
}

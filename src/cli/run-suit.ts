/** Suiting from a file: the answer printed, its pictures written where asked. */
import { basename, extname, join } from 'node:path';
import { suitCharts } from '../questions/suit/charts.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { placed } from '../questions/part-checks.js';
import { inOrder } from '../scenario/problems.js';
import { suitStudy } from '../questions/suit/study.js';
import type { SuitAnswer } from '../suiting/answer.js';
import { suitText } from '../suiting/text.js';
import { writeAll } from './files.js';
import { openScenario, problemsAsMistake } from './open-scenario.js';
import { daysBar } from './progress.js';
import { threadedRunner } from './workers.js';

interface Arguments {
  readonly file: string;
  readonly json: boolean;
  readonly seed?: string;
  readonly out?: string;
}

export async function runSuit({ file, json, seed, out }: Arguments): Promise<void> {
  const opened = await openScenario(file);
  const { scenario, inputs } = opened;
  const bar = await daysBar('running days');
  const runner = threadedRunner((days) => bar.add(days));
  let answer: SuitAnswer;
  try {
    answer = await suitStudy(scenario, inputs, runner, seed === undefined ? {} : { seed });
  } finally {
    bar.end();
    await runner.close();
  }
  if (answer.problems.length > 0)
    throw problemsAsMistake(inOrder(placed(answer.problems, opened, file)));
  const written =
    out === undefined
      ? []
      : await pictures(answer, scenario.locale ?? 'en', join(out, basename(file, extname(file))));
  process.stdout.write(
    json
      ? `${JSON.stringify(answer)}\n`
      : `${suitText(answer)}${written.length === 0 ? '' : `\nWritten: ${written.join(', ')}\n`}`,
  );
}

async function pictures(answer: SuitAnswer, locale: string, stem: string): Promise<string[]> {
  const files = await Promise.all(
    suitCharts(answer, locale).map(async ({ id, spec }) => ({
      path: `${stem}.${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );
  await writeAll(files);
  return files.map(({ path }) => path);
}

/** Suiting from a file: the answer printed, its pictures written where asked. */
import { basename, extname, join } from 'node:path';
import { suitCharts } from '../questions/suit/charts.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { placed } from '../questions/part-checks.js';
import { inOrder } from '../scenario/problems.js';
import { suitStudy } from '../questions/suit/study.js';
import type { SuitAnswer } from '../suiting/answer.js';
import { suitText } from '../suiting/text.js';
import { tryOutput, writeAll } from './files.js';
import { openScenario, problemsAsMistake } from './open-scenario.js';
import { printAnswer } from './print.js';
import { withRunner } from './with-runner.js';

interface Arguments {
  readonly file: string;
  readonly json: boolean;
  readonly seed?: string;
  readonly out?: string;
}

export async function runSuit({ file, json, seed, out }: Arguments): Promise<void> {
  const opened = await openScenario(file);
  if (out !== undefined) await tryOutput(out, 'folder');
  const { scenario, inputs } = opened;
  const answer = await withRunner('running days', undefined, (runner) =>
    suitStudy(scenario, inputs, runner, seed === undefined ? {} : { seed }),
  );
  if (answer.problems.length > 0)
    throw problemsAsMistake(inOrder(placed(answer.problems, opened, file)));
  const written =
    out === undefined
      ? []
      : await pictures(answer, scenario.locale ?? 'en', join(out, basename(file, extname(file))));
  printAnswer(json ? answer : null, () => suitText(answer), written);
}

async function pictures(
  answer: SuitAnswer,
  locale: string,
  stem: string,
): Promise<{ path: string }[]> {
  const files = await Promise.all(
    suitCharts(answer, locale).map(async ({ id, spec }) => ({
      path: `${stem}.${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );
  await writeAll(files);
  return files;
}

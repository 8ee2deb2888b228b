/** A till export from a file: the scenario fitted to it, its picture, and what was found. */
import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import { askTill } from '../questions/till/ask.js';
import { till } from '../questions/till/head.js';
import type { Given } from '../questions/settings.js';
import type { ChartSpec } from '../tell/charts/style.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { writeText } from '../tell/write-text.js';
import { tillChart } from '../till/chart.js';
import { sizeOf, tryOutput, writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';
import { givenOf } from './run-question.js';
import { widthOf } from './terminal.js';

export interface TillArguments {
  readonly file: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly out: string;
  readonly picture?: string;
  readonly all: boolean;
}

/** @throws MistakeError with everything that is wrong; nothing is written then */
export async function runTill({ file, typed, out, picture, all }: TillArguments): Promise<void> {
  const given: Given<typeof till.settings> = await givenOf(till.settings, typed);
  await sizeOf(file);
  await tryOutput(out, 'file');
  if (picture !== undefined) {
    await tryOutput(picture, 'file', 'picture');
    if (resolve(picture) === resolve(out))
      throw new MistakeError('--picture and --out name the same file; name two');
  }
  const reply = await askTill({
    map: given.map!,
    scenario: given.scenario!,
    sales: { name: file, open: () => createReadStream(file) },
    outName: out,
  });
  if (!reply.ok) throw problemsAsMistake(reply.problems);
  const { fit, text, blocks } = reply.value;
  const drawing =
    picture === undefined
      ? []
      : [
          {
            path: picture,
            content: standaloneSvg(await renderSvg(tillChart(fit) as unknown as ChartSpec)),
          },
        ];
  const written = [{ path: out, content: text }, ...drawing];
  await writeAll(written);
  process.stdout.write(
    `${writeText(blocks, { width: widthOf(), all })}\nWritten:\n${written.map(({ path }) => `  ${path}\n`).join('')}`,
  );
}

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
import { keepInputs, sizeOf, tryOutput, writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { problemsAsMistake } from './open-scenario.js';
import { givenOf } from './run-question.js';
import { widthOf } from './terminal.js';

export interface TillArguments {
  readonly file: string;
  readonly typed: Readonly<Record<string, string>>;
  /** None: what was found is printed, and no scenario written. */
  readonly out?: string;
  readonly picture?: string;
  readonly all: boolean;
}

/** @throws MistakeError with everything that is wrong; nothing is written then */
export async function runTill({ file, typed, out, picture, all }: TillArguments): Promise<void> {
  const given: Given<typeof till.settings> = await givenOf(till.settings, typed);
  await sizeOf(file);
  if (out !== undefined) await tryOutput(out, 'file');
  if (picture !== undefined) {
    await tryOutput(picture, 'file', '--picture');
    if (out !== undefined && resolve(picture) === resolve(out))
      throw new MistakeError('--picture and --out name the same file; name two');
  }
  keepInputs(
    [out, picture].filter((one) => one !== undefined),
    [file, ...Object.values(typed)],
  );
  const reply = await askTill({
    map: given.map!,
    scenario: given.scenario!,
    sales: { name: file, open: () => createReadStream(file) },
    holidays: given.holidays,
    outName: out ?? 'the new scenario',
  });
  if (!reply.ok) throw problemsAsMistake(reply.problems);
  const { kinds, text, blocks } = reply.value;
  const drawing =
    picture === undefined
      ? []
      : [
          {
            path: picture,
            content: standaloneSvg(
              await renderSvg(tillChart(kinds.fit, kinds) as unknown as ChartSpec),
            ),
          },
        ];
  const written = [...(out === undefined ? [] : [{ path: out, content: text }]), ...drawing];
  await writeAll(written);
  const files =
    written.length === 0
      ? 'Nothing is written; --out FILE writes the scenario with this demand.\n'
      : `Written:\n${written.map(({ path }) => `  ${path}\n`).join('')}`;
  process.stdout.write(`${writeText(blocks, { width: widthOf(), all })}\n${files}`);
}

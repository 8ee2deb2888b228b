/** The letter's part on recorded days: how the stock would have done, and its files. */
import { ask } from '../questions/backtest/ask.js';
import { backtest } from '../questions/backtest/head.js';
import { say } from '../questions/backtest/words.js';
import type { Asking } from '../questions/question.js';
import type { Given, GivenFile, sizing } from '../questions/settings.js';
import { paragraphs } from '../tell/block.js';
import { drawnCharts } from '../tell/drawn-chart.js';
import { formatsFor } from '../tell/format.js';
import { writeHtml } from '../tell/write-html.js';
import { madeOf, withMade } from './made.js';
import { problemsAsMistake } from './open-scenario.js';
import { today } from './run-question.js';
import { loadSolver } from './solver.js';
import { withRunner } from './with-runner.js';

interface RecordedPart {
  readonly html: string;
  readonly files: readonly { readonly ending: string; readonly content: string }[];
}

/** A till whose recorded days a stock is tried on. */
export interface RecordedFiles {
  readonly till: GivenFile;
  readonly map: GivenFile;
}

interface RecordedAsking extends Pick<Asking, 'opened' | 'fileName' | 'context'> {
  readonly text: string;
  readonly recorded: RecordedFiles | undefined;
  readonly given: Given<typeof sizing>;
  readonly threads: number | undefined;
}

/** Nothing where no till is given. @throws MistakeError with everything that is wrong with till or map */
export async function recordedPart({
  opened,
  fileName,
  context,
  text,
  recorded,
  given: { level, seed, days },
  threads,
}: RecordedAsking): Promise<RecordedPart> {
  if (recorded === undefined) return { html: '', files: [] };
  const reply = await withRunner('trying recorded days', threads, (runner) =>
    ask(
      { opened, fileName, text, runner, context, today: today(), loadSolver },
      { ...recorded, level, seed, days },
    ),
  );
  if (!reply.ok) throw problemsAsMistake(reply.problems);
  const { json, blocks, files } = reply.value;
  const typed = {
    till: recorded.till.name,
    map: recorded.map.name,
    ...(level === undefined ? {} : { level: String(level) }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days: String(days) }),
  };
  const made = madeOf({
    question: 'backtest',
    settings: backtest.settings,
    typed,
    given: { ...recorded },
    file: fileName,
    text,
    seed: opened.scenario.seed,
  });
  const html = await writeHtml([...blocks, paragraphs([say.letter(made.command)], 'small')], {
    draw: drawnCharts,
    formats: formatsFor(context),
  });
  const pictures = (await files?.(drawnCharts, () => Promise.resolve(''))) ?? [];
  return {
    html,
    files: [
      {
        ending: 'backtest.json',
        content: `${JSON.stringify(withMade(json as object, made), null, 1)}\n`,
      },
      ...pictures.map(({ ending, content }) => ({ ending, content: String(content) })),
    ],
  };
}

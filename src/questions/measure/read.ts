/** Filled sheets read against their house: measured inputs, what stays, what looks odd, and the new scenario. */
import type { Runner } from '../../cafe/runner.js';
import { compile } from '../../scenario/compile.js';
import { EditRefused, type Edit } from '../../scenario/edit.js';
import { editScenario } from '../../scenario/edit-scenario.js';
import { problem } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import type { QuickOptions } from '../compare/quick.js';
import type { Opened } from '../question.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import type { Measured, SheetReading } from './answer.js';
import { dirtyNotes } from './dirty.js';
import type { SheetFacts } from './facts.js';
import { givenSheets } from './given-sheets.js';
import { measuredInputs, replacedSheets } from './inputs.js';
import { notesOf } from './notes.js';
import { rangeOf, rangeWith, swingsOf, widthOf } from './worth.js';
import { say } from './words.js';

export interface ReadAsking {
  /** A morning each, or several. */
  readonly files: readonly GivenFile[];
  readonly opened: Opened;
  /** The scenario as text; what is new goes into it. */
  readonly text: string;
  readonly facts: SheetFacts;
  readonly today: string;
  readonly runner: Runner;
  readonly options: QuickOptions;
}

export interface ReadReply {
  readonly reading: SheetReading;
  /** The scenario with what was measured in it. */
  readonly text: string;
}

export async function readFilled(asking: ReadAsking): Promise<Result<ReadReply>> {
  const { files, opened, text, facts, today, runner, options } = asking;
  const { scenario, inputs } = opened;
  const given = await givenSheets(files, facts, today);
  if (!given.ok) return given;
  const sheets = given.value;
  const found = measuredInputs(sheets, scenario, inputs, options.seed);
  const { measured, kept, differences } = found;
  const edits = measuredEdits(measured);
  const made = changed(text, edits, files.map(({ name }) => name).join(' and '));
  if (!made.ok) return made;
  const before = await swingsOf(opened, runner, options);
  const after = await swingsOf(made.value.opened, runner, options);
  const [was, is] = [rangeWith(before, []), rangeWith(after, [])];
  return {
    ok: true,
    value: {
      text: made.value.text,
      reading: {
        scenario: scenario.name,
        date: sheets.at(-1)!.date,
        dates: sheets.map(({ date }) => date),
        compared: differences?.compared ?? null,
        differ: differences?.differ ?? [],
        measured,
        kept,
        notes: [
          ...replacedSheets(inputs, found).map(say.replaced),
          ...notesOf(sheets, scenario),
          ...dirtyNotes(
            sheets.flatMap(({ dirty }) => dirty),
            compile(made.value.opened.scenario, piecesPerRackOf),
            facts.fromMinute,
            options.seed,
          ),
        ],
        before: was,
        after: is,
        factor: widthOf(was) === 0 ? 1 : widthOf(is) / widthOf(was),
        another: rangeOf(after, ({ path }) =>
          measured.some((one) => one.path === path)
            ? Math.sqrt(sheets.length / (sheets.length + 1))
            : 1,
        ),
        currency: scenario.currency,
        days: options.days,
      },
    },
  };
}

/** What was measured as changes of the scenario. */
export const measuredEdits = (measured: readonly Measured[]): Edit[] =>
  measured.map(({ at, value, range, source }) => ({
    kind: 'set',
    path: at,
    value,
    basis: 'measured',
    range,
    source,
  }));

function changed(
  text: string,
  edits: readonly Edit[],
  fileName: string,
): Result<{ text: string; opened: Opened }> {
  const name = `scenario with ${fileName} (not written)`;
  let edited: string;
  try {
    edited = editScenario(text, edits);
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    return {
      ok: false,
      problems: error.flaws.map((flaw) => problem(flaw, name, { line: 0, column: 0 })),
    };
  }
  const opened = readScenario(edited, name, { piecesPerRack: piecesPerRackOf });
  return opened.ok ? { ok: true, value: { text: edited, opened } } : opened;
}

/** A filled sheet read against its house: measured inputs, what stays, what looks odd, and the new scenario. */
import { readSheet } from '../../measuring/read-sheet.js';
import { SLOT_MINUTES, clockText, type Sheet } from '../../measuring/sheet.js';
import type { Runner } from '../../cafe/runner.js';
import { compile } from '../../scenario/compile.js';
import { EditRefused, type Edit } from '../../scenario/edit.js';
import { editScenario } from '../../scenario/edit-scenario.js';
import { inOrder, problem, type Problem } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import type { QuickOptions } from '../compare/quick.js';
import type { Opened } from '../question.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import type { SheetReading } from './answer.js';
import { dirtyNotes } from './dirty.js';
import type { SheetFacts } from './facts.js';
import { expectedParties } from './foretold.js';
import { measuredInputs } from './inputs.js';
import { meanFill } from './measured-work.js';
import { asCsv } from './workbook.js';
import { rangeWith, swingsOf, widthOf } from './worth.js';

/** Seats taken that differ from the counts by more guests than this and this share are worth a look. */
const ODD_GUESTS = 4;
const ODD_SHARE = 0.25;
/** A morning this many times busier or quieter than expected is no usual one. */
const UNUSUAL = 1.5;

export interface ReadAsking {
  readonly file: GivenFile;
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
  const { file, opened, text, facts, today, runner, options } = asking;
  const { scenario, inputs } = opened;
  const filled = await asCsv(file);
  if (!filled.ok) return filled;
  const sheet = sheetOf(filled.value, facts, today);
  if (!sheet.ok) return sheet;
  const { measured, kept } = measuredInputs(sheet.value, scenario, inputs, options.seed);
  const edits = measured.map(({ at, value, range, source }): Edit => ({
    kind: 'set',
    path: at,
    value,
    basis: 'measured',
    range,
    source,
  }));
  const made = changed(text, edits, file.name);
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
        date: sheet.value.date,
        measured,
        kept,
        notes: [
          ...notesOf(sheet.value, opened),
          ...dirtyNotes(
            sheet.value,
            compile(made.value.opened.scenario, piecesPerRackOf),
            facts.fromMinute,
            options.seed,
          ),
        ],
        before: was,
        after: is,
        factor: widthOf(was) === 0 ? 1 : widthOf(is) / widthOf(was),
        currency: scenario.currency,
        days: options.days,
      },
    },
  };
}

export function sheetOf(file: GivenFile, facts: SheetFacts, today: string): Result<Sheet> {
  const at = (row: number, column: string, value: string, rule: string, remedy: string): Problem =>
    problem({ path: column === '' ? [] : [column], value, rule, remedy }, file.name, {
      line: row,
      column: 0,
    });
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(file.bytes);
  } catch {
    return {
      ok: false,
      problems: [
        at(1, '', '', 'is not text in UTF-8', 'save the sheet as XLSX, or as CSV in UTF-8'),
      ],
    };
  }
  const read = readSheet(text, {
    ...facts,
    ware: facts.ware.map(({ id }) => id),
    today,
  });
  return read.ok
    ? read
    : {
        ok: false,
        problems: inOrder(
          read.flaws.map(({ row, column, value, rule, remedy }) =>
            at(row, column, value, rule, remedy),
          ),
        ),
      };
}

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

/** What does not fit together, though each part may be right. */
function notesOf(sheet: Sheet, { scenario }: Opened): string[] {
  const notes: string[] = [];
  const model = compile(scenario, piecesPerRackOf);
  const parties = sheet.tally.reduce(
    (sum, { came, away }) => sum + [...came, ...away].reduce((all, one) => all + one, 0),
    0,
  );
  const hours = (sheet.tally.length * SLOT_MINUTES * 60_000) / model.closingMs;
  const expected = expectedParties(model);
  if (parties > 0 && hours > 0.9 && (parties > expected * UNUSUAL || parties * UNUSUAL < expected))
    notes.push(
      `${parties} parties came; the scenario expects ${Math.round(expected)} on a mean day. One morning does not say which is right: ask the till.`,
    );
  let inside = sheet.before.reduce((sum, count, size) => sum + count * (size + 1), 0);
  for (const { minute, came, went, seats } of sheet.tally) {
    if (seats !== null && Math.abs(seats - inside) > Math.max(ODD_GUESTS, ODD_SHARE * inside)) {
      notes.push(
        `At ${clockText(minute)} ${seats} seats were taken, but the counts leave ${inside} guests. Check the tally around then.`,
      );
      break;
    }
    came.forEach((count, size) => (inside += (count - went[size]!) * (size + 1)));
  }
  const fill = meanFill(sheet);
  if (fill !== null)
    notes.push(
      `Racks went ${Math.round(100 * fill.share)} % full on average (${fill.n} loads). The rush works this out from its rules; it is not an input.`,
    );
  return notes;
}

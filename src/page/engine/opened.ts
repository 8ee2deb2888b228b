/** The scenario that is asked about, read; what is wrong with it is said. */
import type { Answer } from '../../questions/size/answer.js';
import { contextOf } from '../../tell/context-of.js';
import type { ReportContext } from '../../tell/context.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { EditRefused, type Edit } from '../../scenario/edit.js';
import { editScenario } from '../../scenario/edit-scenario.js';
import { problem, type Problem } from '../../scenario/problems.js';
import { readScenario, type ReadResult } from '../../scenario/read-scenario.js';
import type { Asked, Mistake, Reply } from '../messages.js';

export type Opened = Extract<ReadResult, { ok: true }>;
export type Say = (reply: Reply) => void;

export function opened({ text, fileName }: Asked, say: Say): Opened | null {
  const read = readScenario(text, fileName, { piecesPerRack: piecesPerRackOf });
  if (read.ok) return read;
  say({ kind: 'mistakes', mistakes: read.problems.map(mistakeOf) });
  return null;
}

/** A change that was refused stands nowhere in the file yet. */
const nowhere = { line: 0, column: 0 } as const;

interface Changed {
  readonly read: Opened | null;
  readonly text: string;
  readonly mistakes: readonly Mistake[];
}

/**
 * The scenario after the changes: all of them if they hold together, else each that holds by itself, so that
 * one refused takes no other along. `read` is null where none holds.
 */
export function afterChanges(asked: Asked, edits: readonly (readonly Edit[])[]): Changed {
  const [text, read, mistakes] = triedOn(asked, edits.flat());
  if (read !== null || edits.length < 2) return { text, read, mistakes };
  return edits.reduce<Changed>(
    (so, ofBox) => {
      const [next, then, wrong] = triedOn({ ...asked, text: so.text }, ofBox);
      return then === null
        ? { ...so, mistakes: [...so.mistakes, ...wrong] }
        : { ...so, text: next, read: then };
    },
    { text: asked.text, read: null, mistakes: [] },
  );
}

function triedOn(asked: Asked, edits: readonly Edit[]): [string, Opened | null, Mistake[]] {
  const mistakes: Mistake[] = [];
  const note: Say = (reply) => {
    if (reply.kind === 'mistakes') mistakes.push(...reply.mistakes);
  };
  const text = changed(asked.text, edits, note);
  const read = text === null ? null : opened({ ...asked, text }, note);
  return [read === null ? asked.text : text!, read, mistakes];
}

/** The text after the changes; null where one was refused. */
function changed(text: string, edits: readonly Edit[], say: Say): string | null {
  if (edits.length === 0) return text;
  try {
    return editScenario(text, edits);
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    say({
      kind: 'mistakes',
      mistakes: error.flaws.map((flaw) => mistakeOf(problem(flaw, '', nowhere))),
    });
    return null;
  }
}

export const mistakeOf = ({ path, line, message }: Problem): Mistake => ({ path, line, message });

/** @param answer what is reported: where there are several kinds of day, that of its tightest */
export function contextFor(
  read: Opened,
  { look }: Asked,
  version: string,
  answer: Pick<Answer, 'tightestKind'> = {},
): ReportContext {
  const context = contextOf(
    read.scenario,
    read.inputs,
    version,
    piecesPerRackOf,
    look.units,
    answer.tightestKind,
  );
  return { ...context, ...(look.locale === null ? {} : { locale: look.locale }) };
}

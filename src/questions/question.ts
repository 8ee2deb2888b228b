/**
 * A question: what it can be asked with, and how it is answered. Each has a folder; `list.ts` has a line for each.
 * The command line and the page know questions only by this interface.
 */
import type { SolverLoader } from '../ordering/choose-buy.js';
import type { Runner } from '../cafe/runner.js';
import type { Edit } from '../scenario/edit.js';
import type { ReadResult } from '../scenario/read-scenario.js';
import type { Scenario } from '../scenario/scenario.js';
import type { Block } from '../tell/block.js';
import type { ReportContext } from '../tell/context.js';
import type { Draw } from '../tell/write-html.js';
import type { FillIn } from './fill-in.js';
import type { Made } from './made.js';
import type { Result } from './result.js';
import type { Answer } from './size/answer.js';
import type { StudyOptions } from './size/study.js';
import type { Given, Settings, Value } from './settings.js';

export type Opened = Extract<ReadResult, { ok: true }>;

/** The light part, from which help and controls are made; nothing of the answer is loaded with it. */
export interface Head {
  readonly name: string;
  /** One line of help. */
  readonly describe: string;
  readonly settings: Settings;
  /** Writes files where a folder is given. */
  readonly writes?: boolean;
  /** Files that the scenario names, to be read from its folder. */
  readonly beside?: (scenario: Scenario) => readonly string[];
  /** It has no command: the letter alone asks it. */
  readonly only?: 'letter';
  /** What the letter offers of it; absent: the letter does not ask it. */
  readonly offers?: readonly Offer[];
  /** Its reply has a workbook, which the letter saves. */
  readonly workbook?: boolean;
  /** Its part in the letter of a report; absent: it has none. */
  readonly inReport?: ReportPart;
}

/** A part that the letter of a report has where its files are given. */
export interface ReportPart {
  /** Those of its settings that the report takes for it. */
  readonly settings: Settings;
  /** What to do where one of these alone is missing: there is no part without it. */
  readonly missing: Readonly<Record<string, string>>;
  /** What is being done, beside the bar of long work. */
  readonly working: string;
  /** The line under the part. @param command asks the question by itself */
  readonly foot: (command: string) => string;
}

/** A part of an answer that the letter works out when its reader asks for it. */
export interface Offer {
  /** Unlike that of any other offer. */
  readonly id: string;
  /** The line that unfolds it; absent: pages to print, which have a place of their own. */
  readonly title?: string;
  /** Whether it means anything for this house; absent: it always does. */
  readonly applies?: (scenario: Scenario) => boolean;
  /** Labels of the settings that have a box, by name. */
  readonly boxes?: Readonly<Record<string, string>>;
  /** It is a table to fill in; the setting that takes its file. */
  readonly fillIn?: string;
}

/** The letter that asks. */
export interface FromLetter {
  /** Id of what was unfolded. */
  readonly offer: string;
  /** What the letter's own answer was asked with. */
  readonly options: StudyOptions;
  /** Put what the file says into the boxes; nothing is worked out yet. */
  readonly fill?: boolean;
  /** That answer, where it is certified. */
  readonly answer?: Answer | undefined;
}

/** What a question is asked about and with. */
export interface Asking {
  readonly opened: Opened;
  /** Names the file in problems. */
  readonly fileName: string;
  /** The file as text, for questions that make a new one from it. */
  readonly text?: string;
  readonly runner: Runner;
  readonly context: ReportContext;
  /** Files of the scenario's folder that the head asked for, by name. */
  readonly beside?: Readonly<Record<string, Uint8Array>>;
  /** Today, `YYYY-MM-DD`. */
  readonly today: string;
  /** Null where there is none: the order is then good, but not proved to cost least. */
  readonly loadSolver: SolverLoader;
  /** Absent on the command line. */
  readonly letter?: FromLetter;
  /** Shows what is known while the rest is worked out; each time takes the place of the last. Absent on the command line. */
  readonly interim?: (blocks: readonly Block[]) => Promise<void>;
}

export interface OutFile {
  /** Put behind the scenario's name: `order.csv`. */
  readonly ending: string;
  readonly content: string | Uint8Array;
  /** Never takes the place of a file that is there. */
  readonly fresh?: boolean;
}

/** An answer, reported once, with all that can be made of it. */
export interface Reply<J = unknown> {
  /** What `--json` prints. */
  readonly json: J;
  readonly blocks: readonly Block[];
  /** Pages to print in place of the blocks: HTML, escaped. */
  readonly pages?: readonly string[];
  /** @param made what the answer was made from, where it is to say so */
  readonly workbook?: (made?: Made) => Promise<OutFile>;
  /** Its figures as CSV, which the letter saves. */
  readonly figures?: OutFile;
  /** A table for the letter's reader to fill in. */
  readonly form?: FillIn;
  /** Changes of the scenario that it comes to; the letter makes them. */
  readonly edits?: readonly Edit[];
  /** Ending under which the JSON is written beside the other files. */
  readonly jsonFile?: string;
  /**
   * Made only where asked for.
   * @param typefaces gives the style sheet that carries the typefaces, for what must fit its page everywhere
   * @param made what the answer was made from, for files that say so
   * @throws Error if a picture cannot be drawn
   */
  readonly files?: (
    draw: Draw,
    typefaces: () => Promise<string>,
    made?: Made,
  ) => Promise<readonly OutFile[]>;
  /** Settings that nobody gave and that the answer rests on, as they would be typed. */
  readonly filledIn?: Readonly<Record<string, string>>;
}

export type Ask<H extends Head, J = unknown> = (
  asking: Asking,
  given: Given<H['settings']>,
) => Promise<Result<Reply<J>>>;

export interface Question extends Head {
  /** @param given values that `parseSetting` gave for these settings */
  readonly ask: (
    asking: Asking,
    given: Readonly<Record<string, Value | undefined>>,
  ) => Promise<Result<Reply>>;
}

/** A line of the list: the head at once, the rest when it is asked. */
export const question = <H extends Head>(
  head: H,
  load: () => Promise<{ readonly ask: Ask<H> }>,
): Question => ({
  ...head,
  // The settings' kinds say what types the values have; `parseSetting` gave them those.
  ask: async (asking, given) => (await load()).ask(asking, given as Given<H['settings']>),
});

/**
 * A question: what it can be asked with, and how it is answered. Each has a folder; `list.ts` has a line for each.
 * The command line and the page know questions only by this interface.
 */
import type { SolverLoader } from '../ordering/choose-buy.js';
import type { Runner } from '../cafe/runner.js';
import type { ReadResult } from '../scenario/read-scenario.js';
import type { Scenario } from '../scenario/scenario.js';
import type { Block } from '../tell/block.js';
import type { ReportContext } from '../tell/context.js';
import type { Draw } from '../tell/write-html.js';
import type { Result } from './result.js';
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
  /** Whether the page offers it for this house; always if it does not say. */
  readonly applies?: (scenario: Scenario) => boolean;
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
}

export interface OutFile {
  /** Put behind the scenario's name: `order.csv`. */
  readonly ending: string;
  readonly content: string | Uint8Array;
  /** Never takes the place of a file that is there. */
  readonly fresh?: boolean;
}

/** An answer, reported once, with all that can be made of it. */
export interface Reply {
  /** What `--json` prints. */
  readonly json: unknown;
  readonly blocks: readonly Block[];
  /**
   * Made only where asked for.
   * @param typefaces gives the style sheet that carries the typefaces, for what must fit its page everywhere
   * @throws Error if a picture cannot be drawn
   */
  readonly files?: (draw: Draw, typefaces: () => Promise<string>) => Promise<readonly OutFile[]>;
}

export type Ask<H extends Head> = (
  asking: Asking,
  given: Given<H['settings']>,
) => Promise<Result<Reply>>;

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

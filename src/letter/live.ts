/**
 * What turns the letter into a page that runs the study again: its script, the engine as packed text and
 * what it was made from. Without it the same letter is plain text and pictures.
 */
import type { Glance } from '../questions/size/house-measures.js';
import type { ListedDay } from '../cafe/listed-day.js';
import type { Answer, HabitsAnswer } from '../questions/size/answer.js';
import type { Made } from '../questions/made.js';
import type { RiskCurve } from '../questions/size/charts/risk-against-stock.js';

export interface LivePage {
  /** The first script, made safe to stand in a script element; it starts the page's own. */
  readonly script: string;
  /** The page's script, deflated, as text that can stand in a script element (`page/packed-text.ts`). */
  readonly page: string;
  /** `sha256-…` of both scripts, for the content security policy. */
  readonly scriptHashes: readonly string[];
  /** The engine's program, deflated, in the same way. */
  readonly engine: string;
  readonly given: Given;
}

/** What the page starts from. */
export interface Given {
  readonly version: string;
  /** Null: the blank letter. */
  readonly scenario: GivenScenario | null;
  /** Scenarios to begin from, by name. */
  readonly templates: readonly Template[];
  /** How the reader had it when the letter was saved. */
  readonly reader?: string;
  readonly look?: { readonly units: 'metric' | 'us'; readonly locale: string | null };
  readonly sender?: { readonly name: string; readonly logo: string | null };
}

export interface GivenScenario {
  readonly fileName: string;
  readonly text: string;
  readonly options: GivenOptions;
  /** The answer that the letter was written from, and its curves of risk, so that it can be written in other units. */
  readonly answer: Answer;
  readonly curves: readonly RiskCurve[];
  /** How far the answer moves as habits vary, where that was worked out with it. */
  readonly habits?: HabitsAnswer;
  /** Where the letter is as a command made it. */
  readonly made?: Made;
  /** Tables that the scenario names, as text by name. */
  readonly beside?: Readonly<Record<string, string>>;
  /** Counts that were typed and not read when the letter was saved. */
  readonly counts?: Counts;
}

/** Counts typed in a sheet and not read yet. */
export interface Counts {
  readonly offer: string;
  readonly typed: Readonly<Record<string, string>>;
  /** Rows added, by part. */
  readonly more: Readonly<Record<string, number>>;
}

/** What was asked on the command's line beside the file. */
export interface GivenOptions {
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
  /** With which the level is to be held. */
  readonly confidence?: number;
  readonly stock?: Readonly<Record<string, number>>;
  /** Days that were listed in place of drawn ones. */
  readonly listed?: readonly ListedDay[];
}

export interface Template {
  readonly fileName: string;
  readonly name: string;
  readonly text: string;
  /** For its small picture; null where the file does not read. */
  readonly glance: Glance | null;
}

/** Data for a script element: no sign in it can end the element or open a comment. */
export const scriptData = (data: unknown): string =>
  JSON.stringify(data)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');

/** Nothing is fetched; only the page's own scripts run, and workers that it makes from its own text. */
export const policyOf = (live: LivePage | null): string =>
  `default-src 'none'; font-src data:; ${live === null ? '' : `script-src ${live.scriptHashes.map((hash) => `'${hash}'`).join(' ')}; worker-src blob:; `}style-src 'unsafe-inline'; img-src data:${live === null ? '' : ' blob:'}; base-uri 'none'; form-action 'none'`;

/** The scripts at the end of the body. */
export const liveScripts = ({ script, page, engine, given }: LivePage): string =>
  `<script type="application/json" id="given">${scriptData(given)}</script>
<script type="text/plain" id="page">${page}</script>
<script type="text/plain" id="engine">${engine}</script>
<script>${script}</script>`;

/** A place in the letter that the page's script fills; nothing where there is none. */
export const island = (live: LivePage | null, name: string): string =>
  live === null ? '' : `<div data-island="${name}"></div>`;

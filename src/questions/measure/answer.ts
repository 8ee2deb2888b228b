/** What a morning's sheet is worth, and what a filled one says, as data. */
import type { LawFit } from '../../measuring/fit-law.js';
import type { PartId } from '../../measuring/sheet.js';
import type { Path } from '../../scenario/path.js';

/** Cost and pieces of the stock with an input at the ends of its range, all else as it is. */
export interface Swing {
  readonly path: string;
  readonly basis: string;
  /** No range was given: read a fifth off either way. */
  readonly fifthOff: boolean;
  readonly cost: readonly [number, number];
  readonly pieces: readonly [number, number];
  /** Share of its range that one morning leaves, by the parts that can measure it. */
  readonly leaves: Readonly<Partial<Record<PartId, number>>>;
  /** The same of two mornings. */
  readonly leavesTwo: Readonly<Partial<Record<PartId, number>>>;
}

/** How far the stock may be off for the inputs: their swings as independent errors, squares added. */
export interface StockRange {
  readonly cost: number;
  readonly costLow: number;
  readonly costHigh: number;
  readonly pieces: number;
  readonly piecesLow: number;
  readonly piecesHigh: number;
}

export interface PartWorth {
  readonly part: PartId;
  /** Share of the stock's range that goes if this part alone is filled in. */
  readonly narrows: number;
  readonly inputs: readonly string[];
  /** Minutes of somebody's attention: our own estimate. */
  readonly minutes: number;
}

export interface MeasurePlan {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  readonly days: number;
  readonly now: StockRange;
  /** After a morning with all parts kept. */
  readonly foretold: StockRange;
  /** Width of the range then over width now. */
  readonly factor: number;
  /** The same after a second morning. */
  readonly foretoldTwo: StockRange;
  readonly factorTwo: number;
  /** In order of worth. */
  readonly parts: readonly PartWorth[];
  /** Parts that hardly narrow the answer of this house. */
  readonly left: readonly PartId[];
  readonly swings: readonly Swing[];
}

export interface CountedShare {
  /** Guests in the party, as a column has it; '' for a share that is an input itself. */
  readonly size: string;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly before: number;
}

/** An input as a sheet has it. */
export interface Measured {
  readonly path: string;
  readonly at: Path;
  readonly value: unknown;
  readonly range: readonly [unknown, unknown] | null;
  readonly source: string;
  /** What was counted or timed. */
  readonly n: number;
  /** Mean and 95 % interval in `unit`, and the standard deviation; null where there is none. */
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly sd: number | null;
  readonly unit: 'min' | 's' | 'share' | 'guests' | 'pieces' | 'ml' | 'mm';
  /** Shares counted, each with its exact 95 % interval and what the scenario had; of sizes one for each column. */
  readonly shares?: readonly CountedShare[];
  /** Times, and the laws tried on them. */
  readonly law: { readonly fit: LawFit; readonly times: readonly number[] } | null;
}

export interface Kept {
  readonly path: string;
  readonly why: string;
}

/** An input that mornings do not agree on, by more than chance. */
export interface Difference {
  readonly path: string;
  readonly unit: Measured['unit'];
  /** Chance of as much where the truth is one. */
  readonly p: number;
  readonly mornings: readonly { readonly date: string; readonly mean: number }[];
}

export interface SheetReading {
  readonly scenario: string;
  /** Day of the sheet; of several, the last. */
  readonly date: string;
  readonly dates: readonly string[];
  /** Inputs that two mornings or more give, each tested; null: one morning. */
  readonly compared: number | null;
  readonly differ: readonly Difference[];
  readonly measured: readonly Measured[];
  readonly kept: readonly Kept[];
  readonly notes: readonly string[];
  readonly before: StockRange;
  readonly after: StockRange;
  readonly factor: number;
  /** The range that one more such morning should leave. */
  readonly another: StockRange;
  readonly currency: string;
  readonly days: number;
}

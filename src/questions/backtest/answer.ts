/** How a stock fitted to earlier days would have done on later ones, as data. */
export interface RecordedDay {
  readonly date: string;
  readonly parties: number;
  /** Share of the runs of this day in which nothing ran out. */
  readonly safe: number;
  /** What ran out in most of the others, and when it first did in the middle of them; null where nothing did. */
  readonly ware: string | null;
  readonly minute: number | null;
}

export interface Origin {
  /** Days fitted, all of them before the days tried. */
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly partiesADay: number;
  readonly dayFactor: number;
  readonly stock: readonly {
    readonly ware: string;
    readonly name: string;
    readonly pieces: number;
  }[];
  readonly tried: readonly RecordedDay[];
}

export type CauseName = 'drift' | 'spread' | 'weekdays' | 'shape';

export interface Cause {
  readonly cause: CauseName;
  readonly p: number;
  /** Whether it stands after all causes tested are allowed for (S. Holm, Scandinavian Journal of Statistics 6, 1979). */
  readonly found: boolean;
}

export interface Backtest {
  readonly scenario: string;
  readonly file: string;
  readonly kind: string;
  readonly seed: string;
  readonly level: number;
  /** Days the stock of each origin is chosen on, and runs of each recorded day. */
  readonly days: number;
  readonly draws: number;
  readonly origins: readonly Origin[];
  readonly tried: number;
  /** Share of recorded days that were safe, runs of a day counting as parts of it. */
  readonly safe: { readonly share: number; readonly low: number; readonly high: number };
  /** Days that are worth so many independent ones. */
  readonly effectiveDays: number;
  readonly verdict: 'held' | 'tooOptimistic' | 'notKnown';
  readonly causes: readonly Cause[];
  /** Parties a day of the days tried over those fitted. */
  readonly busier: number;
  readonly trend: { readonly shareAWeek: number; readonly p: number } | null;
  /** The stock, times this, would have held the level on these days. */
  readonly factor: number;
  /** Day factor over all days, and the upper end of its interval. */
  readonly dayFactor: { readonly cv: number; readonly high: number };
}

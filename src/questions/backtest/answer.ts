/** How a stock fitted to earlier days would have done on later ones, as data. */
export interface RecordedDay {
  readonly date: string;
  /** Its kind of day; '' where there is one kind. */
  readonly kind: string;
  readonly parties: number;
  /** Parties of a day of its kind, from the days before. */
  readonly expected: number;
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

export type CauseName = 'drift' | 'season' | 'spread' | 'weekdays' | 'shape';

export type Verdict = 'held' | 'tooOptimistic' | 'notKnown';

/** Days of one kind: the promise is made for each. */
export interface KindTried {
  readonly kind: string;
  readonly days: number;
  readonly safe: { readonly share: number; readonly low: number; readonly high: number };
  readonly verdict: Verdict;
  /** The stock, times this, would have held the level on these days. */
  readonly factor: number;
}

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
  readonly verdict: Verdict;
  /** By kind of day; empty where there is one kind. */
  readonly kinds: readonly KindTried[];
  /** Kinds that the map names and that are counted with the others, with their days in the export. */
  readonly joined: readonly { readonly kind: string; readonly days: number }[];
  readonly causes: readonly Cause[];
  /** Parties a day of the days tried over those fitted first, kind by kind. */
  readonly busier: number;
  readonly trend: { readonly shareAWeek: number; readonly p: number } | null;
  /** Month, 0 for January, that is the busiest, as a multiple of the mean; null with too few weeks to tell. */
  readonly season: { readonly month: number; readonly times: number; readonly p: number } | null;
  /** The stock, times this, would have held the level on these days. */
  readonly factor: number;
  /** Day factor over all days of the commonest kind, and the upper end of its interval. */
  readonly dayFactor: { readonly cv: number; readonly high: number };
}

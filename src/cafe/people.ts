/** People who do one thing at a time: makers, clearers, hands. `null` people: as many as are needed. */
const AS_MANY_AS_NEEDED = 1_000_000_000;

export class People {
  free = 0;
  /** Person-milliseconds of work between opening and closing. */
  busyMs = 0;

  constructor(
    readonly count: number | null,
    private readonly closingMs: number,
  ) {}

  open(): void {
    this.free = this.count ?? AS_MANY_AS_NEEDED;
    this.busyMs = 0;
  }

  /** Take one person from `now` for `ms`; release with `release` when the time is over. */
  hold(now: number, ms: number): void {
    this.free -= 1;
    this.busyMs += overlap(now, now + ms, this.closingMs);
  }

  release(): void {
    this.free += 1;
  }

  /** People at work now. */
  get working(): number {
    return (this.count ?? AS_MANY_AS_NEEDED) - this.free;
  }
}

/** Milliseconds of [from, to) that lie before closing. */
export function overlap(from: number, to: number, closingMs: number): number {
  if (from >= closingMs) return 0;
  return (to < closingMs ? to : closingMs) - from;
}

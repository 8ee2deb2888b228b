/** Seats held quarter hour by quarter hour, from opening to closing. */
const QUARTER_MS = 900_000;

export class SeatQuarters {
  /** Seat-milliseconds by quarter hour; the last may be shorter. */
  private readonly held: Float64Array;
  private taken = 0;
  private since = 0;

  constructor(private readonly closingMs: number) {
    this.held = new Float64Array(Math.ceil(closingMs / QUARTER_MS));
  }

  open(): void {
    this.held.fill(0);
    this.taken = this.since = 0;
  }

  /** So many seats more (or fewer, below 0) are held from `now` on. */
  change(now: number, seats: number): void {
    const until = Math.min(now, this.closingMs);
    if (this.taken > 0) {
      for (let from = this.since; from < until;) {
        const quarter = Math.floor(from / QUARTER_MS);
        const to = Math.min(until, (quarter + 1) * QUARTER_MS);
        this.held[quarter] = this.held[quarter]! + this.taken * (to - from);
        from = to;
      }
    }
    this.since = until;
    this.taken += seats;
  }

  /** Mean seats held in the quarter hour in which most were, once the day is over. */
  fullest(): number {
    this.change(this.closingMs, 0);
    let most = 0;
    for (let quarter = 0; quarter < this.held.length; quarter += 1) {
      const length = Math.min(QUARTER_MS, this.closingMs - quarter * QUARTER_MS);
      most = Math.max(most, this.held[quarter]! / length);
    }
    return most;
  }
}

/** The moments of a day in columns: how much of everything is where. */

/** What is counted at a moment beside the pieces. */
export interface MomentRow {
  readonly drinksWaiting: number;
  readonly partiesWaiting: number;
  readonly makersBusy: number;
  readonly foodRacksWaiting: number;
}

export class Moments {
  readonly times: number[] = [];
  private readonly rows: MomentRow[] = [];
  private columns = new Int32Array(1 << 16);

  /** @param cells places of all ware */
  constructor(private readonly cells: number) {}

  /** Whether the same was counted at the last moment. */
  isLast(row: MomentRow): boolean {
    const last = this.rows.at(-1);
    return (
      last !== undefined &&
      last.drinksWaiting === row.drinksWaiting &&
      last.partiesWaiting === row.partiesWaiting &&
      last.makersBusy === row.makersBusy &&
      last.foodRacksWaiting === row.foodRacksWaiting
    );
  }

  add(now: number, row: MomentRow, counts: Int32Array): void {
    const start = this.rows.length * this.cells;
    this.rows.push(row);
    this.times.push(now);
    if (start + this.cells > this.columns.length) {
      const longer = new Int32Array(this.columns.length * 2 + this.cells);
      longer.set(this.columns);
      this.columns = longer;
    }
    this.columns.set(counts, start);
  }

  column(of: keyof MomentRow): Uint16Array {
    return Uint16Array.from(this.rows, (row) => row[of]);
  }

  /** Pieces by moment, ware and place. */
  counts(): Int32Array {
    return this.columns.slice(0, this.rows.length * this.cells);
  }
}

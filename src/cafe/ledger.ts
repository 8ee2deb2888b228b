/**
 * The ledger: how many pieces of each ware are at each place.
 *
 * Its one verb is to move pieces from a place to a place; nothing else changes a count, so nothing can
 * be lost. Peaks, minutes at each place and pictures are all read off its moves.
 */
import type { Observer } from './observer.js';
import { PLACE_COUNT, SHELF } from './places.js';

/** Pieces on the shelf when the stock is unlimited: more than any day takes. */
export const PLENTY = 1_000_000_000;

export class Ledger {
  /** Pieces by ware and place: counts[ware × PLACE_COUNT + place]. */
  readonly counts: Int32Array;
  /** Fewest pieces ever on the shelf, by ware. */
  readonly fewest: Int32Array;
  /** Pieces taken from the shelf, by ware. */
  readonly uses: Float64Array;
  /** Piece-milliseconds by ware and place, kept as Σ leaving moments − Σ entering moments. */
  private readonly spent: Float64Array;
  /** The present moment, ms; the floor sets it. */
  now = 0;
  /** Whoever is notified of what happens on the floor; null in usual runs. */
  observer: Observer | null = null;
  private readonly stock: Int32Array;

  constructor(readonly ware: number) {
    this.counts = new Int32Array(ware * PLACE_COUNT);
    this.spent = new Float64Array(ware * PLACE_COUNT);
    this.fewest = new Int32Array(ware);
    this.uses = new Float64Array(ware);
    this.stock = new Int32Array(ware);
  }

  /** Open the day: all pieces clean on the shelf. `stock` null: unlimited. */
  open(stock: ArrayLike<number> | null): void {
    this.counts.fill(0);
    this.spent.fill(0);
    this.uses.fill(0);
    this.now = 0;
    for (let ware = 0; ware < this.ware; ware += 1) {
      const pieces = stock === null ? PLENTY : stock[ware]!;
      this.stock[ware] = pieces;
      this.counts[ware * PLACE_COUNT + SHELF] = pieces;
      this.fewest[ware] = pieces;
    }
  }

  /** Move `pieces` of a ware from a place to a place. */
  move(ware: number, from: number, to: number, pieces: number): void {
    const row = ware * PLACE_COUNT;
    const left = (this.counts[row + from] = this.counts[row + from]! - pieces);
    this.counts[row + to] = this.counts[row + to]! + pieces;
    const moments = pieces * this.now;
    this.spent[row + from] = this.spent[row + from]! + moments;
    this.spent[row + to] = this.spent[row + to]! - moments;
    if (from === SHELF) {
      this.uses[ware] = this.uses[ware]! + pieces;
      if (left < this.fewest[ware]!) this.fewest[ware] = left;
    }
    this.observer?.moved(ware, from, to, pieces);
  }

  /** Pieces of a ware on the shelf. */
  shelf(ware: number): number {
    return this.counts[ware * PLACE_COUNT + SHELF]!;
  }

  /** Pieces of any ware at a place. */
  at(place: number): number {
    let pieces = 0;
    for (let cell = place; cell < this.counts.length; cell += PLACE_COUNT)
      pieces += this.counts[cell]!;
    return pieces;
  }

  /** The largest number of pieces of a ware that was ever off the shelf. */
  peak(ware: number): number {
    return this.stock[ware]! - this.fewest[ware]!;
  }

  /** Piece-milliseconds spent at a place up to now, pieces still there included. */
  pieceMs(ware: number, place: number): number {
    const cell = ware * PLACE_COUNT + place;
    const opening = place === SHELF ? 0 : this.counts[cell]! * this.now;
    return this.spent[cell]! + opening;
  }
}

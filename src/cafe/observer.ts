/**
 * Somebody to whom the floor reports what happens, while it happens: every move of the ledger, and what
 * parties, clearers, racks and machines are about. Override what you want to know; read, and change nothing.
 *
 * The ledger has at most one (`ledger.observer`), and usual runs have none, so that a stage only looks at an empty field.
 */
import type { Machine } from './washing/machines.js';

export class Observer {
  /** Pieces of a ware went from a place to a place. */
  moved(_ware: number, _from: number, _to: number, _pieces: number): void {}

  /** A party that stays in has sat down. */
  seated(_party: number): void {}
  /** A drink came to a table; `wares` are the pieces it stands in, none for a takeaway cup. */
  served(_party: number, _drink: number, _wares: Int32Array): void {}
  /** The guests of a party have left. */
  left(_party: number): void {}
  /** The next piece of a party that has left, in the order served, was picked up. */
  pickedUp(_party: number): void {}
  /** A drink lacked a piece of a ware. */
  short(_ware: number): void {}

  /** A clearer set out with these pieces, or has put them on the bench. */
  tripBegan(_clearer: number, _wares: Int32Array): void {}
  tripEnded(_clearer: number): void {}

  /** A piece went into a rack; the first opens it. */
  racked(_rack: number, _ware: number): void {}
  /** A rack is full, or a piece did not fit; a part rack is closed by going into a machine. */
  rackClosed(_rack: number): void {}
  /** A machine took a load, went on to its next stage, gave its racks back, stopped, or may start again. */
  machine(_number: number, _machine: Machine): void {}
}

import type { Floor } from '../../src/cafe/floor.js';
import { Observer } from '../../src/cafe/observer.js';

/** Calls `see` with every move of the ledger, from now on. */
export function watchMoves(
  floor: Floor,
  see: (ware: number, to: number, pieces: number) => void,
): void {
  floor.ledger.observer = new (class extends Observer {
    override moved(ware: number, _from: number, to: number, pieces: number): void {
      see(ware, to, pieces);
    }
  })();
}

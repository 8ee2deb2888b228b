/**
 * Pieces on their way back to the shelf: dried, polished where the ware asks for it, and taken to the machine
 * top or the reserve where the shelf is two places.
 */
import { RANKS } from '../engine/calendar.js';
import type { Flow } from './flow.js';
import { DRYING, POLISHING, SHELF } from './places.js';
import type { Polishing } from './polishing.js';
import type { Storage } from './storage.js';

export class Returning {
  constructor(
    private readonly wares: number,
    private readonly polishing: Polishing,
    private readonly storage: Storage | null,
    private readonly flow: Flow,
  ) {}

  /** What dries at one moment comes back together, before anyone is served from it. A lot is pieces × number of ware + ware. */
  dried(payload: number): void {
    const { calendar, ledger } = this.flow;
    const key = calendar.time * RANKS + calendar.rank;
    let lot = payload;
    for (;;) {
      const ware = lot % this.wares;
      const pieces = (lot - ware) / this.wares;
      if (this.polishing.polishes(ware)) {
        ledger.move(ware, DRYING, POLISHING, pieces);
        this.polishing.join(lot);
      } else {
        ledger.move(ware, DRYING, SHELF, pieces);
        this.storage?.returned(ware, pieces);
      }
      if (calendar.nextKey() !== key) break;
      calendar.take();
      lot = calendar.payload;
    }
    this.flow.shelfFuller();
  }

  /** A lot has been polished. */
  polished(lot: number): void {
    this.polishing.done(lot);
    this.storage?.returned(lot % this.wares, Math.floor(lot / this.wares));
    this.flow.handFree();
  }
}

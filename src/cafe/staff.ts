/** Who works in the house: makers, clearers, and the hands at the dishwasher, which may be either of these. */
import type { CafeModel } from './model.js';
import { People } from './people.js';

export class Staff {
  readonly makers: People;
  readonly clearers: People;
  readonly hands: People;
  readonly handsAreMakers: boolean;
  readonly handsAreClearers: boolean;

  constructor({ makers, clearing, washing, closingMs }: CafeModel) {
    const { hands } = washing;
    this.makers = new People(makers, closingMs);
    this.clearers = new People(clearing.clearers, closingMs);
    this.handsAreMakers = hands === 'makers';
    this.handsAreClearers = hands === 'clearers';
    if (hands === 'makers') this.hands = this.makers;
    else this.hands = hands === 'clearers' ? this.clearers : new People(hands, closingMs);
  }

  /** A new day: everybody is free. */
  open(): void {
    for (const people of [this.makers, this.clearers, this.hands]) people.open();
  }
}

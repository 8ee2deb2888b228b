/**
 * Settings, numbered: each drink's wanted setting and its fall-backs in one table.
 *
 * Setting 0 is the empty one, a takeaway cup.
 */
import type { CafeModel, Setting } from './model.js';

export const TAKEAWAY_CUP = 0;

export class Settings {
  /** The pieces of setting s are pieces[start[s]] .. pieces[start[s + 1] - 1], in the order taken. */
  readonly pieces: Int32Array;
  readonly start: Int32Array;
  /** By drink on the menu: its wanted setting. */
  readonly wanted: Int32Array;
  /** By drink on the menu: its fall-backs in order. */
  readonly fallBacks: readonly Int32Array[];

  constructor(model: CafeModel) {
    const all: Setting[] = [[]];
    const number = (setting: Setting): number =>
      setting.length === 0 ? TAKEAWAY_CUP : all.push(setting) - 1;
    this.wanted = Int32Array.from(model.menu, (drink) => number(drink.setting));
    this.fallBacks = model.menu.map((drink) => Int32Array.from(drink.fallBacks, number));
    this.pieces = Int32Array.from(all.flat());
    this.start = new Int32Array(all.length + 1);
    all.forEach((setting, index) => {
      this.start[index + 1] = this.start[index]! + setting.length;
    });
  }

  /** The pieces of a setting, in the order taken. */
  of(setting: number): Int32Array {
    return this.pieces.subarray(this.start[setting], this.start[setting + 1]);
  }
}

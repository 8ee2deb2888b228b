/**
 * Changes that stand in no text yet, by the box they came from. Of each box the newest counts: it takes the place
 * of an older one, also of one that an engine is working on.
 */
import type { Edit } from '../scenario/edit.js';

type Changes = ReadonlyMap<string, readonly Edit[]>;

const none: Changes = new Map();

export class Untaken {
  private waiting = none;
  private underWay = none;

  has(box: string): boolean {
    return this.waiting.has(box) || this.underWay.has(box);
  }

  /**
   * @param edits none: the box says again what the text says
   * @returns whether an engine is working on an older change of the box, which is to be given up
   */
  put(box: string, edits: readonly Edit[]): boolean {
    const isOlderUnderWay = this.underWay.has(box);
    this.underWay = without(this.underWay, box);
    this.waiting = new Map([
      ...without(this.waiting, box),
      ...(edits.length === 0 ? [] : [[box, edits] as const]),
    ]);
    return isOlderUnderWay;
  }

  /** What is to be worked on now, each box's changes by themselves. */
  take(): readonly (readonly Edit[])[] {
    [this.underWay, this.waiting] = [this.waiting, none];
    return [...this.underWay.values()];
  }

  /** What was worked on stands in the text, or was refused. */
  settle(): void {
    this.underWay = none;
  }

  /** What was worked on was given up: it waits again, ahead of what came later. */
  back(): void {
    this.waiting = new Map([...this.underWay, ...this.waiting]);
    this.underWay = none;
  }

  drop(): void {
    [this.waiting, this.underWay] = [none, none];
  }
}

const without = (changes: Changes, box: string): Changes =>
  new Map([...changes].filter(([one]) => one !== box));

/** A queue of whole numbers, first in first out; nothing is allocated once it has grown to the day's needs. */
import { grown } from './day.js';

export class Fifo {
  private items = new Int32Array(64);
  private head = 0;
  private tail = 0;

  get size(): number {
    return this.tail - this.head;
  }

  clear(): void {
    this.head = this.tail = 0;
  }

  push(item: number): void {
    if (this.tail === this.items.length) this.makeRoom();
    this.items[this.tail] = item;
    this.tail += 1;
  }

  /** The first item, which leaves the queue. Only while `size` is above 0. */
  shift(): number {
    const item = this.items[this.head]!;
    this.head += 1;
    return item;
  }

  private makeRoom(): void {
    this.items.copyWithin(0, this.head, this.tail);
    this.tail -= this.head;
    this.head = 0;
    if (this.tail > this.items.length / 2)
      this.items = grown(this.items, new Int32Array(this.items.length * 2));
  }
}

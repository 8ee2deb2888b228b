/**
 * The event calendar: what happens next.
 *
 * An event is a moment (whole milliseconds), a rank and a number that means something to the model.
 * Events come out by moment, then by rank (lower first), then in the order in which they were
 * scheduled. An event may be scheduled for the present moment with any rank, also a lower one than the
 * event under way: it then comes next.
 *
 * A ring of buckets, each a list in order; one lap of the ring is longer than most events lie ahead, so
 * that scheduling and taking cost a few steps whatever the number of events. Nothing is allocated once
 * the arrays have grown to the day's needs. After R. Brown, "Calendar queues", CACM 31(10), 1988.
 */

/** Ranks run from 0 to RANKS - 1. */
export const RANKS = 32;

const NONE = -1;

export class Calendar {
  /** Moment of the event last taken, ms. */
  time = 0;
  /** Rank of the event last taken. */
  rank = 0;
  /** Number carried by the event last taken. */
  payload = 0;
  /** Events waiting. */
  size = 0;

  /** By entry: what it is ordered by; its moment and rank again, as reading them is quicker than taking the key apart. */
  private keys = new Float64Array(0);
  private times = new Float64Array(0);
  private ranks = new Uint8Array(0);
  private payloads = new Int32Array(0);
  private nexts = new Int32Array(0);
  private free = NONE;
  private readonly heads: Int32Array;
  private readonly mask: number;
  private readonly perBucket: number;
  private readonly bucketKeys: number;
  /** Number of the bucket under the hand, counted from time 0 without wrapping. */
  private bucket = 0;

  /**
   * @param bucketMs  width of a bucket in ms; about the usual time between events
   * @param buckets   buckets in the ring, a power of two
   */
  constructor(bucketMs = 16384, buckets = 2048) {
    if (buckets < 2 || (buckets & (buckets - 1)) !== 0)
      throw new RangeError(`buckets: ${buckets} is not a power of two; use one, such as 4096`);
    if (!(bucketMs > 0))
      throw new RangeError(`bucketMs: ${bucketMs} is not a positive number of milliseconds`);
    this.bucketKeys = bucketMs * RANKS;
    this.perBucket = 1 / this.bucketKeys;
    this.mask = buckets - 1;
    this.heads = new Int32Array(buckets).fill(NONE);
    this.grow(256);
  }

  /** Forget everything and go back to time 0. */
  clear(): void {
    if (this.size > 0) {
      this.heads.fill(NONE);
      this.linkFree(0);
    }
    this.size = 0;
    this.time = 0;
    this.rank = 0;
    this.bucket = 0;
  }

  /** Put an event in. `time` must be a whole number, not before the event last taken. */
  schedule(time: number, rank: number, payload: number): void {
    if (this.free === NONE) this.grow(this.keys.length * 2);
    const entry = this.free;
    this.free = this.nexts[entry]!;
    const key = time * RANKS + rank;
    this.keys[entry] = key;
    this.times[entry] = time;
    this.ranks[entry] = rank;
    this.payloads[entry] = payload;
    this.size += 1;
    // Moments may pass 2³¹ on long runs; buckets of seconds do not within a lifetime.
    const bucket = (key * this.perBucket) | 0;
    if (bucket < this.bucket) this.bucket = bucket;
    this.link(entry, bucket & this.mask);
  }

  /** Put an entry in its place in the list of its bucket, after those with the same key. */
  private link(entry: number, slot: number): void {
    const { nexts, keys } = this;
    const key = keys[entry]!;
    let at = this.heads[slot]!;
    if (at === NONE || keys[at]! > key) {
      nexts[entry] = at;
      this.heads[slot] = entry;
      return;
    }
    let next = nexts[at]!;
    while (next !== NONE && keys[next]! <= key) {
      at = next;
      next = nexts[at]!;
    }
    nexts[entry] = next;
    nexts[at] = entry;
  }

  /** Key (moment × RANKS + rank) of the next event; Infinity when there is none. */
  nextKey(): number {
    if (this.size === 0) return Infinity;
    return this.seek(Infinity) ? this.keys[this.heads[this.bucket & this.mask]!]! : Infinity;
  }

  /** Take the next event into `time`, `rank` and `payload`; false when there is none. */
  take(): boolean {
    return this.takeBefore(Infinity);
  }

  /** Take the next event if its key is below `limit`, so that a sorted list of arrivals need not be scheduled. */
  takeBefore(limit: number): boolean {
    if (this.size === 0 || !this.seek(limit)) return false;
    const slot = this.bucket & this.mask;
    const entry = this.heads[slot]!;
    const key = this.keys[entry]!;
    if (key >= limit) return false;
    this.heads[slot] = this.nexts[entry]!;
    this.nexts[entry] = this.free;
    this.free = entry;
    this.size -= 1;
    this.time = this.times[entry]!;
    this.rank = this.ranks[entry]!;
    this.payload = this.payloads[entry]!;
    return true;
  }

  /** Turn the ring to the bucket of the next event; false if it surely lies at or beyond `limit`. */
  private seek(limit: number): boolean {
    const { heads, keys, mask, bucketKeys } = this;
    let { bucket } = this;
    // First key that no longer belongs to the bucket under the hand.
    let end = (bucket + 1) * bucketKeys;
    for (let lap = mask; lap >= 0; lap -= 1) {
      const head = heads[bucket & mask]!;
      if (head !== NONE && keys[head]! < end) {
        this.bucket = bucket;
        return true;
      }
      if (end >= limit) {
        this.bucket = bucket;
        return false;
      }
      bucket += 1;
      end += bucketKeys;
    }
    this.jump();
    return true;
  }

  /** A whole lap is empty: look at every bucket and go to the earliest event. */
  private jump(): void {
    let least = Infinity;
    for (const head of this.heads) {
      if (head !== NONE && this.keys[head]! < least) least = this.keys[head]!;
    }
    this.bucket = Math.floor(least * this.perBucket);
  }

  private grow(to: number): void {
    const from = this.keys.length;
    this.keys = grown(this.keys, new Float64Array(to));
    this.times = grown(this.times, new Float64Array(to));
    this.ranks = grown(this.ranks, new Uint8Array(to));
    this.payloads = grown(this.payloads, new Int32Array(to));
    this.nexts = grown(this.nexts, new Int32Array(to));
    this.linkFree(from);
  }

  /** Entries from `from` on become the free list. */
  private linkFree(from: number): void {
    for (let entry = from; entry < this.nexts.length; entry += 1) this.nexts[entry] = entry + 1;
    this.nexts[this.nexts.length - 1] = NONE;
    this.free = from;
  }
}

/** `larger` with the contents of `from` at its start. */
function grown<T extends Float64Array | Int32Array | Uint8Array>(from: T, larger: T): T {
  larger.set(from);
  return larger;
}

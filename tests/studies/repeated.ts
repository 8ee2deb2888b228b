/** An interval drawn again and again, where the truth is known. */
import type { Stream } from '../../src/engine/streams.js';

/** An interval; null: it has no end there. */
export interface Found {
  readonly low: number | null;
  readonly high: number | null;
}

/** Name, truth, one drawing. */
export type Known = readonly [string, number, (stream: Stream) => Found];

export const normal = (stream: Stream): number =>
  Math.sqrt(-2 * Math.log(stream.uniform())) * Math.cos(2 * Math.PI * stream.uniform());

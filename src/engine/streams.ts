/**
 * Streams of random numbers: one for each purpose, a substream for each day.
 *
 * The words of the seed go through seedrandom once for each purpose; from that key and the number of
 * the day a small generator is set, so that any day can be drawn on its own, in any order, by any
 * worker. The generator is xoshiro128++ 1.0 (D. Blackman and S. Vigna, "Scrambled linear pseudorandom
 * number generators", ACM TOMS 47(4), 2021): seedrandom's own generators are objects that take
 * microseconds to set up, and a day sets up a dozen.
 */
import seedrandom from 'seedrandom';
import { exp } from '../elementary/exp.js';
import { log } from '../elementary/log.js';
import { height, inside, TAIL, width } from './ziggurat.js';

const { imul } = Math;

/** The finaliser of MurmurHash3 (A. Appleby, public domain): every bit of the input moves every bit out. */
function scatter(word: number): number {
  let h = word | 0;
  h = imul(h ^ (h >>> 16), 0x85ebca6b);
  h = imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** What a purpose's stream is made from: two words drawn from the seed and the purpose's name. */
export interface StreamKey {
  readonly first: number;
  readonly second: number;
}

/** The key of the stream for `purpose` under `seed`; different words give unrelated streams. */
export function streamKey(seed: string, purpose: string): StreamKey {
  const words = seedrandom.alea(`${purpose}\u0000${seed}`);
  return { first: words.int32(), second: words.int32() };
}

export class Stream {
  /** In a typed array, as 32-bit words in object fields would be boxed. */
  private readonly state = new Int32Array(4);

  constructor(private readonly key: StreamKey = { first: 0, second: 0 }) {
    this.toDay(0);
  }

  /** Go to the start of the substream of a day (any whole number). */
  toDay(day: number): this {
    const { first, second } = this.key;
    const low = day | 0;
    const high = Math.floor(day / 4294967296) | 0;
    for (let word = 0; word < 4; word += 1) {
      const spread = imul(word + 1, 0x9e3779b9);
      this.state[word] = scatter(scatter(scatter(low + spread) ^ first ^ high) + second + spread);
    }
    return this;
  }

  /** Set the four words of the state directly, as the generator's published test values do. */
  setState(a: number, b: number, c: number, d: number): this {
    this.state.set([a, b, c, d]);
    return this;
  }

  /** The next 32 random bits, as a signed whole number. */
  bits(): number {
    const s = this.state;
    const s0 = s[0]!;
    const s3 = s[3]!;
    let s1 = s[1]!;
    let s2 = s[2]!;
    const sum = (s0 + s3) | 0;
    const result = (((sum << 7) | (sum >>> 25)) + s0) | 0;
    const t = s1 << 9;
    s2 ^= s0;
    const n3 = s3 ^ s1;
    s1 ^= s2;
    s[0] = s0 ^ n3;
    s[1] = s1;
    s[2] = s2 ^ t;
    s[3] = (n3 << 11) | (n3 >>> 21);
    return result;
  }

  /** A share strictly between 0 and 1, in steps of 2⁻³². */
  uniform(): number {
    return ((this.bits() >>> 0) + 0.5) * 2.3283064365386963e-10;
  }

  /** Exponential with mean 1, by inversion: one uniform a draw. */
  exponential(): number {
    return -log(this.uniform());
  }

  /** Exponential with mean 1, by ziggurat: quicker, for models that do not compare alternatives. */
  quickExponential(): number {
    const bits = this.bits() >>> 0;
    const layer = bits & 255;
    return bits < inside[layer]! ? bits * width[layer]! : this.outsideLayer(bits, layer);
  }

  private outsideLayer(firstBits: number, firstLayer: number): number {
    let bits = firstBits;
    let layer = firstLayer;
    for (;;) {
      if (layer === 0) return TAIL + this.exponential();
      const at = bits * width[layer]!;
      if (height[layer]! + this.uniform() * (height[layer - 1]! - height[layer]!) < exp(-at))
        return at;
      bits = this.bits() >>> 0;
      layer = bits & 255;
      if (bits < inside[layer]!) return bits * width[layer]!;
    }
  }
}

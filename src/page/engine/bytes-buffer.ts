/**
 * Stands in for Node's `Buffer` where the engine reads tables: what csv-parse asks of it, over text in UTF-8. The build
 * hands it to that library alone; its own stand-in for browsers is three times as large as the reader.
 */
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

export class Buffer extends Uint8Array {
  static override from(of: string | ArrayLike<number> | Iterable<number>): Buffer {
    const bytes = typeof of === 'string' ? encoder.encode(of) : Array.from(of);
    const buffer = new Buffer(bytes.length);
    buffer.set(bytes);
    return buffer;
  }

  static allocUnsafe(size: number): Buffer {
    return new Buffer(size);
  }

  static isBuffer(one: unknown): one is Buffer {
    return one instanceof Buffer;
  }

  static concat(parts: readonly Buffer[]): Buffer {
    return Buffer.from(parts.flatMap((part) => [...part]));
  }

  /** Which comes first, byte by byte. */
  static compare(one: Uint8Array, other: Uint8Array): number {
    const at = one.findIndex((byte, place) => byte !== other[place]);
    if (at < 0 || at >= other.length) return Math.sign(one.length - other.length);
    return Math.sign(one[at]! - other[at]!);
  }

  /** Against a part of another. */
  compare(other: Uint8Array, from = 0, to = other.length): number {
    return Buffer.compare(this, other.subarray(from, to));
  }

  copy(to: Uint8Array, at = 0, from = 0, end = this.length): number {
    const part = this.subarray(from, Math.min(end, from + to.length - at));
    to.set(part, at);
    return part.length;
  }

  override toString(_encoding = 'utf8', from = 0, to = this.length): string {
    return decoder.decode(this.subarray(from, to));
  }
}

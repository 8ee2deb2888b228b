/**
 * Bytes as text: eleven printable characters for nine bytes, a twelfth shorter than base64. The characters are those
 * from the space to ~ without <, which could end a script element; `cli/build.mjs` writes them.
 */

const [FIRST, LEFT_OUT, BASE] = [32, 60, 94];
const [BYTES, SIGNS] = [9, 11];

/** The value of a character, 0 to 93. */
const valueOf = (code: number): number => code - FIRST - (code > LEFT_OUT ? 1 : 0);

/** The bytes that a text stands for. */
export function bytesOfText(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(Math.floor((text.length * BYTES) / SIGNS));
  for (let from = 0, at = 0; from < text.length; from += SIGNS, at += BYTES) {
    // A group is a number of 72 bits: more than a number here can hold, so it is kept in three of 24.
    let [high, middle, low] = [0, 0, 0];
    for (let i = from; i < from + SIGNS; i += 1) {
      // A group that is not whole is filled up with the highest value, so that its bytes are not rounded down.
      low = low * BASE + (i < text.length ? valueOf(text.charCodeAt(i)) : BASE - 1);
      middle = middle * BASE + (low >>> 24);
      high = (high * BASE + (middle >>> 24)) & 0xffffff;
      low &= 0xffffff;
      middle &= 0xffffff;
    }
    for (let i = 0; i < BYTES && at + i < bytes.length; i += 1)
      bytes[at + i] = (i < 3 ? high : i < 6 ? middle : low) >>> (16 - 8 * (i % 3));
  }
  return bytes;
}

/** The text that packed text stands for. @throws TypeError where the browser cannot inflate */
export const inflated = (packed: string): Promise<string> =>
  new Response(
    new Blob([bytesOfText(packed)]).stream().pipeThrough(new DecompressionStream('deflate-raw')),
  ).text();

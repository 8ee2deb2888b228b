/**
 * Bytes as text: five printable characters for four bytes, a sixteenth shorter than base64. The characters are those
 * from ( to ~ without < and \, which could end a script element or need an escape; `cli/build.mjs` writes them.
 */

const FIRST = 40;
const LEFT_OUT = [60, 92];

/** The value of a character, 0 to 84. */
const valueOf = (code: number): number =>
  code - FIRST - LEFT_OUT.reduce((sum, one) => sum + (code > one ? 1 : 0), 0);

/** The bytes that a text stands for; of a last group of n + 1 characters, n bytes. */
export function bytesOfText(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(Math.floor((text.length * 4) / 5));
  let at = 0;
  for (let i = 0; i < text.length; i += 5) {
    let group = 0;
    // A group that is not whole is filled up with the highest value, so that its bytes are not rounded down.
    for (let j = i; j < i + 5; j += 1)
      group = group * 85 + (j < text.length ? valueOf(text.charCodeAt(j)) : 84);
    for (let place = 0x1000000; place >= 1 && at < bytes.length; place /= 256, at += 1)
      bytes[at] = Math.floor(group / place) & 255;
  }
  return bytes;
}

/** The text that packed text stands for. @throws TypeError where the browser cannot inflate */
export const inflated = (packed: string): Promise<string> =>
  new Response(
    new Blob([bytesOfText(packed)]).stream().pipeThrough(new DecompressionStream('deflate-raw')),
  ).text();

/** The packed programs: what the build writes is what the page reads. */
import { describe, expect, it } from 'vitest';
import { textOfBytes } from '../../src/cli/packed-text.mjs';
import { bytesOfText } from '../../src/page/packed-text.js';

describe('bytes as text', () => {
  it('come back as they were, whatever is left over at the end, and never end a script', () => {
    for (let length = 0; length <= 20; length += 1)
      for (const fill of [() => 0, () => 255, () => 128, (i: number) => (i * 151 + 77) % 256]) {
        const bytes = Uint8Array.from({ length }, (_, i) => fill(i));
        const text = textOfBytes(bytes);
        expect(text).toMatch(/^[ -;=-~]*$/);
        expect(bytesOfText(text)).toEqual(bytes);
      }
  });

  it('take eleven characters for nine bytes', () => {
    expect(textOfBytes(new Uint8Array(900))).toHaveLength(1100);
  });
});

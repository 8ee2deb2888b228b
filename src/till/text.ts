/**
 * The bytes of an export, made plain while they stream: UTF-8, no byte order mark, lines ended by \n.
 */
import { ReadingEnds } from './flaw.js';

export type Encoding = 'utf-8' | 'windows-1252' | 'utf-16';

/** Where an export comes from: text or bytes in pieces of any size. */
export type TillSource = AsyncIterable<string | Uint8Array>;

/**
 * The export as UTF-8 bytes.
 *
 * The CSV reader counts a \r\n inside quotes as two lines, so line ends are made \n here, where a pair
 * may be torn by the end of a piece.
 */
export async function* plainBytes(
  source: TillSource,
  encoding: Encoding,
): AsyncGenerator<Uint8Array> {
  const decoder = new TextDecoder(encoding === 'utf-16' ? 'utf-16le' : encoding, { fatal: true });
  const encoder = new TextEncoder();
  let start = true;
  let held = '';
  let lines = 1;

  const plain = (text: string, last = false): Uint8Array => {
    let whole = held + text;
    held = '';
    if (start && whole !== '') {
      start = false;
      if (whole.startsWith('\uFEFF')) whole = whole.slice(1);
    }
    if (!last && whole.endsWith('\r')) {
      held = '\r';
      whole = whole.slice(0, -1);
    }
    whole = whole.replace(/\r\n?/g, '\n');
    for (let at = whole.indexOf('\n'); at >= 0; at = whole.indexOf('\n', at + 1)) lines += 1;
    return encoder.encode(whole);
  };

  const decode = (bytes?: Uint8Array): string => {
    try {
      return bytes ? decoder.decode(bytes, { stream: true }) : decoder.decode();
    } catch {
      throw new ReadingEnds({
        about: 'export',
        path: [],
        value: undefined,
        rule: `is not text in ${encoding.toUpperCase()} (from about line ${lines})`,
        remedy: 'save it as UTF-8, or state encoding: windows-1252 or encoding: utf-16 in the map',
        line: lines,
      });
    }
  };

  for await (const piece of source) {
    const bytes = plain(typeof piece === 'string' ? piece : decode(piece));
    if (bytes.length > 0) yield bytes;
  }
  const rest = plain(decode(), true);
  if (rest.length > 0) yield rest;
}

// Bytes as text that may stand in a script element; read by src/page/packed-text.ts.

const BASE = 94n;
const GROUP = 9;
const SIGNS_OF_GROUP = 11;

/** The printable characters without <. */
const SIGNS = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).filter(
  (sign) => sign !== '<',
);

/** Eleven characters for nine bytes; for the n bytes that may be left over, n + 1, or n + 2 from five on. */
export function textOfBytes(bytes) {
  const groups = [];
  for (let i = 0; i < bytes.length; i += GROUP) {
    const part = Buffer.alloc(GROUP);
    part.set(bytes.subarray(i, i + GROUP));
    let group = BigInt(`0x${part.toString('hex')}`);
    const signs = [];
    for (let j = 0; j < SIGNS_OF_GROUP; j += 1) {
      signs.unshift(SIGNS[Number(group % BASE)]);
      group /= BASE;
    }
    const left = Math.min(GROUP, bytes.length - i);
    groups.push(signs.slice(0, Math.ceil((left * SIGNS_OF_GROUP) / GROUP)).join(''));
  }
  return groups.join('');
}

// Bytes as text that may stand in a script element; read by src/page/packed-text.ts.

const SIGNS = Array.from({ length: 87 }, (_, i) => String.fromCharCode(40 + i)).filter(
  (sign) => sign !== '<' && sign !== '\\',
);

/** Five characters for four bytes; for the n bytes that may be left over, n + 1. */
export function textOfBytes(bytes) {
  const groups = [];
  for (let i = 0; i < bytes.length; i += 4) {
    let group = 0;
    for (let j = i; j < i + 4; j += 1) group = group * 256 + (bytes[j] ?? 0);
    const signs = [];
    for (let j = 0; j < 5; j += 1) {
      signs.unshift(SIGNS[group % 85]);
      group = Math.floor(group / 85);
    }
    groups.push(signs.slice(0, Math.min(4, bytes.length - i) + 1).join(''));
  }
  return groups.join('');
}

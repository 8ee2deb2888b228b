/** Lists and maps as people write them, without the brackets of the file: "cup, saucer", "mug, teaspoon or takeaway". */

const isList = (kind: string): boolean => kind === 'list' || kind === 'numbers';
const isMap = (kind: string): boolean => kind === 'map' || kind === 'partySize';

/** `[[mug, teaspoon], takeaway]` → mug, teaspoon or takeaway; null where an item is more than a list of words. */
function alternativesIn(inner: string): string | null {
  const items = inner.match(/\[[^[\]{}]*\]|[^[\]{},]+/g)?.map((one) => one.trim()) ?? [];
  const plain = items.filter((one) => one !== '').map((one) => one.replace(/^\[|\]$/g, '').trim());
  return plain.some((one) => one === '' || /\bor\b/.test(one)) ? null : plain.join(' or ');
}

/** What a box shows of a value that the file holds on one line. */
export function withoutBrackets(written: string, kind: string, last: string): string {
  const list = isList(kind) ? /^\[(.*)\]$/s.exec(written) : null;
  const map = isMap(kind) ? /^\{(.*)\}$/s.exec(written) : null;
  const inner = (list ?? map)?.[1]?.trim();
  if (inner === undefined || inner === '') return written;
  if (!/[[\]{}"']/.test(inner)) return last === 'fallBacks' ? written : inner;
  return list !== null && last === 'fallBacks' && !/[{}"']/.test(inner)
    ? (alternativesIn(inner) ?? written)
    : written;
}

/** The line of the file for what was typed so. */
export function withBrackets(typed: string, kind: string, last: string): string {
  if (/^[{[]/.test(typed)) return typed;
  if (last === 'fallBacks')
    return `[${typed
      .split(/\s+or\s+/)
      .map((one) => one.trim())
      .map((one) => (one === 'takeaway' ? one : `[${one}]`))
      .join(', ')}]`;
  if (isList(kind)) return `[${typed}]`;
  return isMap(kind) && typed.includes(':') ? `{ ${typed} }` : typed;
}

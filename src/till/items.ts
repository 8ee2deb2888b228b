/**
 * Which till items are which drinks.
 *
 * Names are compared without regard to capitals and runs of spaces; `*` stands for any letters. What is
 * ignored comes first, then whole names, then names with `*` in the order of the map. An item that
 * none of them names is food or goods: no drink, and no error.
 */

/** Drinks of the base scenario that one or more items stand for; more than one where the till does not tell them apart. */
export interface DrinkGroup {
  readonly drinks: readonly string[];
  /** Names (or counted columns) of the map that stand for them. */
  readonly items: readonly string[];
}

export function plainItem(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** Does an item's plain name fit a name that may hold `*`? Walks the parts between stars from left to right. */
function fits(item: string, pattern: string): boolean {
  const parts = pattern.split('*');
  if (parts.length === 1) return item === pattern;
  const first = parts[0]!;
  const last = parts[parts.length - 1]!;
  if (item.length < first.length + last.length || !item.startsWith(first) || !item.endsWith(last))
    return false;
  let at = first.length;
  for (const part of parts.slice(1, -1)) {
    const found = item.indexOf(part, at);
    if (found < 0) return false;
    at = found + part.length;
  }
  return at <= item.length - last.length;
}

/** Join the map's lines that stand for the same drinks. */
export function groupDrinks(
  lines: readonly (readonly [item: string, drinks: readonly string[]])[],
): DrinkGroup[] {
  const groups = new Map<string, { drinks: readonly string[]; items: string[] }>();
  for (const [item, drinks] of lines) {
    const key = JSON.stringify([...drinks].sort());
    const group = groups.get(key);
    if (group) group.items.push(item);
    else groups.set(key, { drinks, items: [item] });
  }
  return [...groups.values()];
}

export type ItemKind = number | 'ignored' | 'other';

/** A function from an item's name to the number of its group, `ignored`, or `other`. */
export function itemReader(
  groups: readonly DrinkGroup[],
  ignored: readonly string[],
): (item: string) => ItemKind {
  const named = groups.flatMap((group, kind) =>
    group.items.map((item) => ({ pattern: plainItem(item), kind })),
  );
  const left = ignored.map(plainItem);
  // Tills repeat few names; the cap keeps an export of made-up names from filling memory.
  const known = new Map<string, ItemKind>();
  return (item) => {
    const seen = known.get(item);
    if (seen !== undefined) return seen;
    const name = plainItem(item);
    const kind: ItemKind = left.some((pattern) => fits(name, pattern))
      ? 'ignored'
      : (named.find(({ pattern }) => pattern === name)?.kind ??
        named.find(({ pattern }) => fits(name, pattern))?.kind ??
        'other');
    if (known.size < 5000) known.set(item, kind);
    return kind;
  };
}

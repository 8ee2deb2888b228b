/** Saucers and spoons against the cups and glasses that they go with. */
import type { Scenario } from '../../scenario/scenario.js';

const SERVED_WITH = new Set(['saucer', 'spoon']);
const VESSELS = new Set(['cup', 'glass']);

/** Pieces of a saucer or spoon for each cup or glass that is served with it; null for other ware, or where none is. */
export function saucersACup(
  { ware, menu }: Scenario,
  stock: readonly { readonly ware: string; readonly pieces: number }[],
  id: string,
): number | null {
  if (!SERVED_WITH.has(ware[id]?.shape ?? '')) return null;
  const settings = Object.values(menu)
    .map(({ setting }) => setting)
    .filter((setting) => setting.includes(id));
  const cups = new Set(settings.flat().filter((one) => VESSELS.has(ware[one]?.shape ?? '')));
  const pieces = (of: (one: string) => boolean): number =>
    stock.reduce((sum, line) => sum + (of(line.ware) ? line.pieces : 0), 0);
  const all = pieces((one) => cups.has(one));
  return all === 0 ? null : pieces((one) => one === id) / all;
}

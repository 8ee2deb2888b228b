/** What the build works out beforehand: how many pieces of each class of ware an open rack takes. */
import { wareClassIds } from '../catalogue/catalogue.js';
import { countKey, floorPieces } from '../racking/open-search.js';
import { fill } from './defaults.js';
import { rackOf, vesselOf } from './rack-geometry.js';
import { scenarioSchema } from './scenario.js';

/** By `countKey`; classes without a shape of their own are left out. */
export function countsOfClasses(ids: readonly string[] = wareClassIds()): Record<string, number> {
  const ware = Object.fromEntries(ids.map((id) => [id, { like: id, price: '1 EUR' }]));
  const filled = scenarioSchema.pick({ ware: true }).parse({
    ware: (fill({ ware }).tree as { readonly ware: unknown }).ware,
  });
  const rack = rackOf('open', undefined)!;
  return Object.fromEntries(
    Object.values(filled.ware).flatMap((one): [string, number][] => {
      const vessel = vesselOf(one);
      return vessel === null
        ? []
        : [[countKey(vessel, rack, 'best'), floorPieces(vessel, rack, 'best')]];
    }),
  );
}

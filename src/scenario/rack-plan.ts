/** The plan of racks with fewest loads: for each family that names no rack, the kind that takes most of its mix. */
import { rackKindIds } from '../catalogue/catalogue.js';
import { familyOf, rackFill, type PiecesPerRack } from './pieces-per-rack.js';
import type { Scenario } from './scenario.js';
import { meanMenu } from './shares-by-time.js';

/** The scenario with a rack for every family, where it asks for the plan with fewest loads; else as it is. */
export function withRackPlan(scenario: Scenario, piecesPerRack?: PiecesPerRack): Scenario {
  const { racks } = scenario;
  if (racks?.plan !== 'fewestLoads') return scenario;
  const menu = meanMenu(scenario);
  const usesOf = (ware: string): number =>
    Object.values(menu).reduce(
      (sum, { share, setting }) => sum + share * setting.filter((piece) => piece === ware).length,
      0,
    );
  const families = new Map<string, string[]>();
  for (const [id, ware] of Object.entries(scenario.ware)) {
    const family = familyOf(id, ware);
    families.set(family, [...(families.get(family) ?? []), id]);
  }
  const planned = [...families].flatMap(([family, ids]) => {
    if (racks.families !== undefined && Object.hasOwn(racks.families, family)) return [];
    const racksFor = (kind: string): number =>
      ids.reduce((sum, id) => {
        const pieces = rackFill(scenario.ware[id]!, kind, racks, piecesPerRack)?.pieces ?? 0;
        return sum + (pieces < 1 ? Infinity : Math.max(usesOf(id), 1e-9) / pieces);
      }, 0);
    // Given counts say nothing of other racks: such a family stays in the usual one.
    if (ids.every((id) => scenario.ware[id]!.perRack !== undefined)) return [];
    const best = rackKindIds()
      .map((kind) => ({ kind, racks: racksFor(kind) }))
      .reduce((a, b) => (b.racks < a.racks ? b : a));
    return best.racks === Infinity ? [] : [[family, best.kind] as const];
  });
  return {
    ...scenario,
    racks: { ...racks, families: { ...racks.families, ...Object.fromEntries(planned) } },
  };
}

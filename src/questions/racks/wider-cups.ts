/** The same drinks in wider cups, and what the rim alone costs. */
import { onEveryKind } from '../../scenario/kinds.js';
import type { Answer } from '../size/answer.js';
import { familyOf, rackFill, rackKindOf, type Ware } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, vesselOf } from '../../scenario/rack-geometry.js';
import { withRackPlan } from '../../scenario/rack-plan.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { TwoShapes } from './answer.js';

const WIDER_BY_MM = 10;

/** The same drinks in wider cups: what the rim alone costs. Null where no cup's shape is known, or no rack takes the wider ones. */
export async function twoShapes(
  scenario: Scenario,
  now: Answer,
  sized: (changed: Scenario) => Promise<Answer>,
): Promise<TwoShapes | null> {
  const cups = Object.entries(scenario.ware).flatMap(([id, ware]) =>
    ware.shape === 'cup' && vesselOf(ware) !== null ? [id] : [],
  );
  const [asTheyAre, wider] = [0, WIDER_BY_MM].map((byMm) =>
    refitted(widened(scenario, cups, byMm)),
  );
  if (cups.length === 0 || asTheyAre == null || wider == null) return null;
  const onAllDays = ({ ware, racks }: Scenario): Scenario =>
    onEveryKind(scenario, (one) => ({ ...one, ware, ...(racks === undefined ? {} : { racks }) }));
  const shape = async (
    changed: Scenario,
    known: Answer | null,
  ): Promise<TwoShapes['shapes'][number]> => {
    const answer = known ?? (await sized(onAllDays(changed)));
    const kindOf = (id: string): string =>
      rackKindOf(changed.racks, familyOf(id, changed.ware[id]!));
    const perRack = Object.fromEntries(
      cups.map((id) => [
        id,
        rackFill(changed.ware[id]!, kindOf(id), changed.racks, piecesPerRackOf)?.pieces ?? 0,
      ]),
    );
    return {
      wider: changed === wider,
      pieces: answer.stock
        .filter(({ ware }) => cups.includes(ware))
        .reduce((sum, { pieces }) => sum + pieces, 0),
      cost: answer.cost,
      racksADay: answer.loads.racksADay,
      fullRacksADay: answer.uses
        .filter(({ ware }) => cups.includes(ware))
        .reduce((sum, { ware, aDay }) => sum + aDay / perRack[ware]!, 0),
      handlingMinutes: answer.loads.handlingMinutes,
      perRack,
      racks: Object.fromEntries(cups.map((id) => [id, kindOf(id)])),
    };
  };
  const asGiven = cups.every((id) => scenario.ware[id]!.perRack === undefined);
  return {
    widerByMm: WIDER_BY_MM,
    shapes: [await shape(asTheyAre, asGiven ? now : null), await shape(wider, null)],
  };
}

/** Every cup some millimetres wider; pieces a rack follow from the shape, also where the file gives them. */
function widened(scenario: Scenario, cups: readonly string[], byMm: number): Scenario {
  const ware = Object.entries(scenario.ware).map(([id, one]): [string, Ware] => {
    if (!cups.includes(id)) return [id, one];
    const { perRack: _, ...rest } = one;
    return [
      id,
      {
        ...rest,
        rim: one.rim! + byMm,
        ...(one.rimAcross === undefined ? {} : { rimAcross: one.rimAcross + byMm }),
      },
    ];
  });
  return { ...scenario, ware: Object.fromEntries(ware) };
}

/** The scenario with another rack, the one with fewest loads, for families of which some ware does not go in theirs; null: none takes it. */
function refitted(scenario: Scenario): Scenario | null {
  const families = [
    ...new Set(Object.entries(scenario.ware).map(([id, ware]) => familyOf(id, ware))),
  ];
  const goesIn = ({ ware, racks }: Scenario, family: string): boolean =>
    Object.entries(ware).every(
      ([id, one]) =>
        familyOf(id, one) !== family ||
        (rackFill(one, rackKindOf(racks, family), racks, piecesPerRackOf)?.pieces ?? 0) > 0,
    );
  const kept = families
    .filter((family) => goesIn(scenario, family))
    .map((family) => [family, rackKindOf(scenario.racks, family)] as const);
  if (kept.length === families.length) return scenario;
  const changed = withRackPlan(
    {
      ...scenario,
      racks: { ...scenario.racks, plan: 'fewestLoads', families: Object.fromEntries(kept) },
    },
    piecesPerRackOf,
  );
  return families.every((family) => goesIn(changed, family)) ? changed : null;
}

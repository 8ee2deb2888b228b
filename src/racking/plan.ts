/**
 * Which ware goes in which kind of rack, and what may share one.
 */
import { piecesPerRack } from './layout.js';
import type { LoadingRule } from './open-rack.js';
import { fitProblems } from './problems.js';
import type { Fault } from '../quantities/flaw.js';
import { extendersFor } from './rack.js';
import type { Rack } from './rack.js';
import type { Vessel } from './vessel.js';

export interface RackedWare {
  readonly id: string;
  readonly vessel: Vessel;
  /** China, glass, cutlery …: only ware of one group shares a rack, since glass is washed apart from china. */
  readonly group: string;
  /** Pieces of it in the mix to be washed; shares of a day's use do as well. */
  readonly pieces: number;
  /** The rack it must go in, by id; absent: whichever makes fewest loads. */
  readonly rack?: string | undefined;
}

export interface PlanLine {
  readonly ware: string;
  readonly rack: string;
  readonly perRack: number;
  /** Ware with the same family may share a rack. */
  readonly family: string;
  readonly extenders: number;
}

export interface PlanFamily {
  readonly family: string;
  readonly rack: string;
  readonly ware: readonly string[];
  /** Racks that the mix fills, and the whole racks it takes. */
  readonly fills: number;
  readonly loads: number;
}

export interface RackPlan {
  readonly lines: readonly PlanLine[];
  readonly families: readonly PlanFamily[];
  /** Whole racks for the mix, and what they would be if part racks of all families could be joined. */
  readonly loads: number;
  readonly fills: number;
  /** False where the search was cut short and a plan with fewer loads may exist. */
  readonly fewest: boolean;
  readonly problems: readonly Fault[];
}

/** Same group, and the same number of extenders: a tall piece and a low one do not share a rack that is built up. */
export const mayShare = (a: RackedWare, b: RackedWare, rack: Rack): boolean =>
  familyOf(a, rack) === familyOf(b, rack);

const familyOf = (ware: RackedWare, rack: Rack): string => {
  const extenders = extendersFor(ware.vessel.heightMm, rack);
  return `${rack.id}/${ware.group}${extenders > 0 ? `/${extenders} up` : ''}`;
};

/**
 * Share of one rack that a mixed load takes: by area in an open rack (a piece takes one part in as many as fill
 * it), by whole compartments, slots or floor otherwise. More than 1: it does not fit; null: some piece does
 * not go in, or may not be with the others.
 */
export function mixedShare(
  ware: readonly RackedWare[],
  rack: Rack,
  rule: LoadingRule = 'best',
): number | null {
  const first = ware[0];
  if (first === undefined) return 0;
  let share = 0;
  for (const one of ware) {
    const perRack = piecesPerRack(one.vessel, rack, rule);
    if (perRack === 0 || !mayShare(one, first, rack)) return null;
    share += one.pieces / perRack;
  }
  return share;
}

const STEPS = 50_000;
const wholeRacks = (fills: number): number => Math.ceil(fills - 1e-9);

interface Choice {
  readonly rack: Rack;
  readonly perRack: number;
  readonly family: string;
}

/**
 * The rack for every ware that makes fewest whole loads of the mix; then, least filled racks in all; then, fewest
 * kinds of rack. Ware that no rack takes is left out and reported in `problems`.
 */
export function rackPlan(
  wares: readonly RackedWare[],
  racks: readonly Rack[],
  rule: LoadingRule = 'best',
): RackPlan {
  const problems: Fault[] = [
    ...fitProblems(
      wares.map((ware) => ware.vessel),
      racks,
      (vessel, rack) => piecesPerRack(vessel, rack, rule),
    ),
  ];
  const choices = wares.map((ware, i) => {
    const asked = ware.rack === undefined ? racks : racks.filter((rack) => rack.id === ware.rack);
    const fitting = asked
      .map((rack): Choice => ({
        rack,
        perRack: piecesPerRack(ware.vessel, rack, rule),
        family: familyOf(ware, rack),
      }))
      .filter((choice) => choice.perRack > 0)
      .sort((a, b) => b.perRack - a.perRack);
    if (fitting.length === 0 && ware.rack !== undefined)
      problems.push(givenRack(i, ware.rack, asked.length > 0));
    return fitting;
  });
  const placed = wares.map((_, i) => i).filter((i) => choices[i]!.length > 0);
  const { chosen, fewest } = fewestLoads(
    placed.map((i) => choices[i]!),
    placed.map((i) => wares[i]!.pieces),
  );
  const lines = placed.map((i, at): PlanLine => {
    const { rack, perRack, family } = chosen[at]!;
    return {
      ware: wares[i]!.id,
      rack: rack.id,
      perRack,
      family,
      extenders: extendersFor(wares[i]!.vessel.heightMm, rack),
    };
  });
  const families = [...new Set(lines.map((line) => line.family))].map((family): PlanFamily => {
    const members = lines.filter((line) => line.family === family);
    const fills = members.reduce(
      (sum, line) => sum + wares.find((ware) => ware.id === line.ware)!.pieces / line.perRack,
      0,
    );
    return {
      family,
      rack: members[0]!.rack,
      ware: members.map((line) => line.ware),
      fills,
      loads: wholeRacks(fills),
    };
  });
  return {
    lines,
    families,
    loads: families.reduce((sum, family) => sum + family.loads, 0),
    fills: families.reduce((sum, family) => sum + family.fills, 0),
    fewest,
    problems,
  };
}

const givenRack = (i: number, rack: string, known: boolean): Fault => {
  const rule = known ? 'the piece does not go in it' : 'no rack has that id';
  const remedy = known
    ? 'Give another rack, or none for whichever makes fewest loads.'
    : 'Give the id of a rack that is owned.';
  return {
    path: ['wares', i, 'rack'],
    value: rack,
    rule,
    remedy,
    message: `"wares.${i}.rack" is "${rack}", but ${rule}. ${remedy}`,
  };
};

/** Branch and bound over the choices; whole loads so far never fall as ware is added, which is the bound. */
function fewestLoads(
  choices: readonly (readonly Choice[])[],
  pieces: readonly number[],
): { readonly chosen: readonly Choice[]; readonly fewest: boolean } {
  let chosen: readonly Choice[] = choices.map((list) => list[0]!);
  let best = worth(chosen, pieces);
  let steps = 0;
  const extend = (taken: readonly Choice[]): void => {
    steps += 1;
    if (steps > STEPS) return;
    const value = worth(taken, pieces);
    if (value[0] > best[0]) return;
    if (taken.length === choices.length) {
      if (comesBefore(value, best)) [chosen, best] = [taken, value];
      return;
    }
    for (const choice of choices[taken.length]!) extend([...taken, choice]);
  };
  extend([]);
  return { chosen, fewest: steps <= STEPS };
}

type Worth = readonly [loads: number, fills: number, kinds: number];

function worth(taken: readonly Choice[], pieces: readonly number[]): Worth {
  const fills = new Map<string, number>();
  taken.forEach((choice, i) =>
    fills.set(choice.family, (fills.get(choice.family) ?? 0) + pieces[i]! / choice.perRack),
  );
  const all = [...fills.values()];
  return [
    all.reduce((sum, f) => sum + wholeRacks(f), 0),
    all.reduce((sum, f) => sum + f, 0),
    new Set(taken.map((choice) => choice.rack.id)).size,
  ];
}

const comesBefore = (a: Worth, b: Worth): boolean => {
  if (a[0] !== b[0]) return a[0] < b[0];
  if (Math.abs(a[1] - b[1]) > 1e-9) return a[1] < b[1];
  return a[2] < b[2];
};

/**
 * How to make a drink taste the same in the house and to take away.
 *
 * Each remedy changes one thing on one side so that the two strengths become equal, exactly, and says
 * what that costs in coffee. Whether it can be done — a cup that exists, a whole shot at most, an
 * extraction that a shot really reaches — is stated beside it, never hidden by leaving it out.
 */
import { FACTS } from './facts.js';
import { brewFromExtraction, isLevel } from './strength.js';
import { brimFor, fillFor, pour, pourFaults } from './pour.js';
import type { Side, Space } from './model.js';

export type SideName = 'house' | 'takeaway';
export type RemedyKind = 'vessel' | 'paper' | 'fill' | 'share' | 'ratio' | 'dose';

/** A vessel or paper cup that is to be had. */
export interface OnHand {
  readonly id: string;
  readonly space: Space;
}

export interface Remedy {
  readonly kind: RemedyKind;
  readonly side: SideName;
  /** Equally strong, or — where that cannot be had — just within the tolerance. */
  readonly target: 'equal' | 'within';
  /** What to change and to what: brim in ml, shares 0..1, dose and yield in g. */
  readonly set: {
    readonly brimMl?: number;
    readonly fill?: number;
    readonly shotShare?: number;
    readonly doseG?: number;
    readonly yieldG?: number;
    readonly extraction?: number;
  };
  readonly from: number;
  readonly to: number;
  readonly unit: 'ml' | 'share' | 'g' | 'g a g';
  readonly feasible: boolean;
  /** Why not, or what to mind. */
  readonly note: string;
  /** Vessels or papers of this file that come within the tolerance, nearest first. */
  readonly onHand: readonly { readonly id: string; readonly ratio: number }[];
  /** Takeaway over house afterwards. */
  readonly ratioAfter: number;
  readonly coffeeGADrink: number;
  readonly milkMlADrink: number;
  readonly coffeeKgAWeek: number | null;
  /** In minor units of the currency; positive costs more. */
  readonly coffeeCostAWeekMinor: number | null;
  readonly milkCostAWeekMinor: number | null;
}

export interface RemedyContext {
  readonly tolerance: number;
  readonly vessels: readonly OnHand[];
  readonly papers: readonly OnHand[];
  readonly drinksAWeek: { readonly house: number; readonly takeaway: number } | null;
  readonly coffeePerKgMinor: number | null;
  readonly milkPerLitreMinor: number | null;
  /** Whether what is left of a shared shot goes into another drink. */
  readonly restIsUsed: boolean;
}

/** A side with its pour stated as a share of the brim, so that another vessel is filled alike. */
export function filledAlike(side: Side): Side {
  return { ...side, recipe: { ...side.recipe, fill: pour(side).fill, pouredMl: null } };
}

/** The side with one remedy applied. */
export function withRemedy(side: Side, set: Remedy['set']): Side {
  const { brew } = side.recipe;
  const changed =
    set.doseG !== undefined || set.yieldG !== undefined || set.extraction !== undefined;
  return {
    space: { ...side.space, brimMl: set.brimMl ?? side.space.brimMl },
    recipe: {
      ...side.recipe,
      fill: set.fill ?? side.recipe.fill,
      shotShare: set.shotShare ?? side.recipe.shotShare,
      brew: changed
        ? brewFromExtraction(
            set.doseG ?? brew.doseG,
            set.yieldG ?? brew.yieldG,
            set.extraction ?? brew.extraction,
          )
        : brew,
    },
  };
}

/** Takeaway strength over house strength. */
export function strengthRatio(house: Side, takeaway: Side): number {
  return pour(takeaway).solidsPer100Ml / pour(house).solidsPer100Ml;
}

/**
 * Every single change that makes the two sides equally strong, feasible ones first, the easiest
 * first among them. A change that goes too far to be made is tried again to the near edge of the
 * tolerance, and reported as that where it then can be made. Empty for drinks that nothing tops up: their
 * strength is the shot's own.
 */
export function remediesFor(
  houseAsMade: Side,
  takeawayAsMade: Side,
  context: RemedyContext,
): Remedy[] {
  const house = filledAlike(houseAsMade);
  const takeaway = filledAlike(takeawayAsMade);
  if (house.recipe.topUp === 'nothing' || takeaway.recipe.topUp === 'nothing') return [];
  const before = strengthRatio(house, takeaway);
  const edge = before > 1 ? 1 + context.tolerance : 1 - context.tolerance;
  const both = { house, takeaway };
  const remedies = (['house', 'takeaway'] as const).flatMap((side) =>
    KINDS.filter((kind) => kind !== (side === 'house' ? 'paper' : 'vessel')).map((kind): Remedy => {
      const equal = remedy(kind, side, 'equal', 1, before, both, context);
      if (equal.feasible) return equal;
      const within = remedy(kind, side, 'within', edge, before, both, context);
      return within.feasible ? within : equal;
    }),
  );
  return remedies.sort(
    (a, b) =>
      Number(b.feasible) - Number(a.feasible) ||
      easeOf(a) - easeOf(b) ||
      a.coffeeGADrink - b.coffeeGADrink,
  );
}

/** Part of a double that a single is. */
export const SINGLE = 0.5;

/** From the easiest change to the hardest; a part of a shot is hard to pour the same each time. */
const EASE: readonly RemedyKind[] = ['paper', 'dose', 'vessel', 'fill', 'ratio', 'share'];

/** A single for a double, or the reverse, comes right after another paper cup. */
const easeOf = ({ kind, to }: Remedy): number =>
  kind === 'share' && (to === SINGLE || to === 1) ? 0.5 : EASE.indexOf(kind);

const KINDS: readonly RemedyKind[] = ['vessel', 'paper', 'fill', 'share', 'ratio', 'dose'];

/** The change of one kind on one side that brings takeaway over house from `before` to `wanted`. */
function remedy(
  kind: RemedyKind,
  name: SideName,
  target: Remedy['target'],
  wanted: number,
  before: number,
  both: { readonly house: Side; readonly takeaway: Side },
  context: RemedyContext,
): Remedy {
  const side = both[name];
  const ratioWith = (changed: Side): number =>
    name === 'house' ? strengthRatio(changed, both.takeaway) : strengthRatio(both.house, changed);
  // This side must become so many times as strong.
  const times = name === 'house' ? before / wanted : wanted / before;
  const now = pour(side);
  const { brew, shotShare } = side.recipe;
  // A single or a whole double is poured more easily than any other part of a shot.
  const whole = [SINGLE, 1].find(
    (share) =>
      share !== shotShare &&
      isLevel(ratioWith(withRemedy(side, { shotShare: share })), context.tolerance),
  );
  const plan = ((): Pick<Remedy, 'set' | 'from' | 'to' | 'unit'> & {
    readonly limit: string;
    readonly onHand?: Remedy['onHand'];
  } => {
    switch (kind) {
      case 'vessel':
      case 'paper': {
        const brimMl = brimFor(side, now.servedMl / times);
        const onHand = candidates(
          name === 'house' ? context.vessels : context.papers,
          side,
          ratioWith,
          context.tolerance,
        );
        return {
          set: { brimMl },
          from: side.space.brimMl,
          to: brimMl,
          unit: 'ml',
          limit: onHand.length > 0 ? '' : 'the file lists none of about that size',
          onHand,
        };
      }
      case 'fill': {
        const fill = fillFor(side, now.servedMl / times);
        return {
          set: { fill },
          from: now.fill,
          to: fill,
          unit: 'share',
          limit: fillLimit(fill, name),
        };
      }
      case 'share': {
        const share = whole ?? shotShare * times;
        return {
          set: { shotShare: share },
          from: shotShare,
          to: share,
          unit: 'share',
          limit: share > 1 + 1e-9 ? 'that is more than one whole shot' : '',
        };
      }
      case 'ratio':
        return {
          set: { yieldG: brew.yieldG * times, extraction: brew.extraction * times },
          from: brew.yieldG / brew.doseG,
          to: (brew.yieldG * times) / brew.doseG,
          unit: 'g a g',
          limit: ratioLimit(brew.extraction * times),
        };
      case 'dose':
        return {
          set: { doseG: brew.doseG * times, yieldG: brew.yieldG * times },
          from: brew.doseG,
          to: brew.doseG * times,
          unit: 'g',
          limit: doseLimit(brew.doseG * times),
        };
    }
  })();
  const after = withRemedy(side, plan.set);
  const faults = pourFaults(after);
  const then = pour(after);
  const behind = (s: Side): number =>
    s.recipe.brew.doseG * (context.restIsUsed ? s.recipe.shotShare : 1);
  const coffeeGADrink = behind(after) - behind(side);
  const drinks = context.drinksAWeek?.[name] ?? null;
  const milkMlADrink = then.coldMilkMl - now.coldMilkMl;
  const coffeeKgAWeek = drinks === null ? null : (coffeeGADrink * drinks) / 1000;
  return {
    kind,
    side: name,
    target: kind === 'share' && whole !== undefined ? 'within' : target,
    set: plan.set,
    from: plan.from,
    to: plan.to,
    unit: plan.unit,
    feasible: faults.length === 0 && plan.limit === '',
    note: plan.limit !== '' ? plan.limit : (faults[0]?.rule ?? ''),
    onHand: plan.onHand ?? [],
    ratioAfter: ratioWith(after),
    coffeeGADrink,
    milkMlADrink,
    coffeeKgAWeek,
    coffeeCostAWeekMinor:
      coffeeKgAWeek === null || context.coffeePerKgMinor === null
        ? null
        : Math.round(coffeeKgAWeek * context.coffeePerKgMinor),
    milkCostAWeekMinor:
      drinks === null || context.milkPerLitreMinor === null
        ? null
        : Math.round((milkMlADrink / 1000) * drinks * context.milkPerLitreMinor),
  };
}

/** Those to be had in which this side, filled alike, comes within the tolerance; nearest first. */
function candidates(
  stock: readonly OnHand[],
  side: Side,
  ratioWith: (changed: Side) => number,
  tolerance: number,
): Remedy['onHand'] {
  return stock
    .map(({ id, space }) => ({ id, side: { ...side, space } }))
    .filter((option) => pourFaults(option.side).length === 0)
    .map((option) => ({ id: option.id, ratio: ratioWith(option.side) }))
    .filter((option) => isLevel(option.ratio, tolerance))
    .sort((a, b) => Math.abs(a.ratio - 1) - Math.abs(b.ratio - 1));
}

function fillLimit(fill: number, name: SideName): string {
  const highest = name === 'house' ? FACTS.fillCeramic.range[1] : FACTS.fillPaper.range[1];
  if (fill > highest + 1e-9) return `more than ${percent(highest)} of the brim spills on the way`;
  if (fill < FACTS.leanestFill.value - 1e-9)
    return `the cup looks short below ${percent(FACTS.leanestFill.value)} of the brim`;
  return '';
}

function ratioLimit(extraction: number): string {
  const [low, high] = [0.16, FACTS.extraction.range[1]];
  if (extraction < low - 1e-9 || extraction > high + 1e-9)
    return `it needs an extraction of ${percent(extraction)}, and shots run from ${percent(low)} to ${percent(high)}`;
  return '';
}

function doseLimit(doseG: number): string {
  if (doseG > 25) return 'a double basket does not hold that much (about 25 g, common practice)';
  if (doseG < 6) return 'a single basket needs more (about 6 g, common practice)';
  return '';
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * Fewer types: vessels that could take each other's drinks, and what pooling them would save.
 *
 * A stock split over types needs more pieces than one that is shared, because peaks of the types do not
 * fall together. How many more is not a rule but a result: the caller's own simulation sizes both menus.
 */
import { isMisfit, type SaucerFit } from '../racking/saucer-fit.js';
import { fillFor, pour, pourFaults } from './pour.js';
import { FACTS } from './facts.js';
import { isLevel } from './strength.js';
import type { RackFit, Side, SuitDrink, SuitWare } from './model.js';
import type { DrinkPlan } from './reads.js';

export interface MovedDrink {
  readonly drink: string;
  /** Strength in the other vessel over strength now, filled to the same share. */
  readonly ratio: number;
  /** As it is: level at the same share. Fill line: level when the same liquid is poured to a line. */
  readonly how: 'as it is' | 'fill line';
  /** Share of the kept vessel's brim to which it is then filled. */
  readonly fill: number;
}

export interface MergeCandidate {
  readonly keep: string;
  readonly drop: string;
  readonly moved: readonly MovedDrink[];
  /** The kept vessel on the saucers of the dropped one; empty where none is used. */
  readonly saucers: readonly SaucerFit[];
  /** Pieces a rack; null where no layout was given. */
  readonly rack: { readonly keep: number; readonly drop: number } | null;
  readonly mind: readonly string[];
}

export interface MergeInput {
  readonly plans: readonly DrinkPlan[];
  readonly ware: readonly SuitWare[];
  readonly menu: readonly SuitDrink[];
  readonly parity: number;
  readonly racks: Readonly<Record<string, RackFit>>;
  /** Every cup and glass on every saucer. */
  readonly saucerFits: readonly SaucerFit[];
}

/** Saucers that stand under a vessel in any setting of the menu. */
export function saucersUnder(
  vessel: string,
  menu: readonly SuitDrink[],
  ware: readonly SuitWare[],
): SuitWare[] {
  const settings = menu
    .flatMap((drink) => [drink.setting, ...drink.fallBacks])
    .filter((setting) => setting.includes(vessel));
  return ware.filter(
    (piece) => piece.shape === 'saucer' && settings.some((setting) => setting.includes(piece.id)),
  );
}

/**
 * Pairs of vessels of one shape of which one could go: every drink of the dropped vessel keeps its
 * strength within the tolerance in the kept one — filled alike, or to a line that does not look short —
 * the kept foot sits in the same saucers, and a rack takes no fewer. A drink whose recipe is not known
 * rules its vessel out, since nothing can be said of it.
 */
export function mergeCandidates(input: MergeInput): MergeCandidate[] {
  const vessels = input.ware.filter(
    (ware) => (ware.shape === 'cup' || ware.shape === 'glass') && ware.brimMl !== null,
  );
  const candidates: MergeCandidate[] = [];
  for (const drop of vessels) {
    const drinks = input.menu.filter((drink) => drink.setting.includes(drop.id));
    if (drinks.length === 0) continue;
    for (const keep of vessels) {
      if (
        keep === drop ||
        keep.shape !== drop.shape ||
        !input.menu.some((drink) => drink.setting.includes(keep.id))
      )
        continue;
      const moved = drinks.map((drink) => moveDrink(drink, drop, keep, input));
      if (moved.some((move) => move === null)) continue;
      const fits = saucersUnder(drop.id, input.menu, input.ware).map((saucer) =>
        input.saucerFits.find((fit) => fit.cup === keep.id && fit.saucer === saucer.id)!,
      );
      if (fits.some((fit) => isMisfit(fit) || fit.byMeasures === 'measures missing')) continue;
      const rack =
        Object.hasOwn(input.racks, keep.id) && Object.hasOwn(input.racks, drop.id)
          ? { keep: input.racks[keep.id]!.pieces, drop: input.racks[drop.id]!.pieces }
          : null;
      if (rack !== null && rack.keep < rack.drop) continue;
      const mind: string[] = [];
      if (rack === null) mind.push('check that a rack takes as many: its layout is not known');
      if (keep.colour !== drop.colour) mind.push('colours differ');
      if (moved.some((move) => move!.how === 'fill line'))
        mind.push('needs a fill line that staff keep to');
      candidates.push({
        keep: keep.id,
        drop: drop.id,
        moved: moved as MovedDrink[],
        saucers: fits,
        rack,
        mind,
      });
    }
  }
  return candidates;
}

function moveDrink(
  drink: SuitDrink,
  drop: SuitWare,
  keep: SuitWare,
  input: MergeInput,
): MovedDrink | null {
  const plan = input.plans.find((p) => p.drink.id === drink.id && p.vessel?.id === drop.id);
  if (plan === undefined || plan.house === null) return null;
  const now = pour(plan.house);
  const filled: Side = {
    ...plan.house,
    recipe: { ...plan.house.recipe, fill: now.fill, pouredMl: null },
  };
  const moved: Side = {
    ...filled,
    space: { brimMl: keep.brimMl!, rimInnerMm: plan.house.space.rimInnerMm },
  };
  const alike = pourFaults(moved).length === 0 ? pour(moved) : null;
  if (alike === null) return null;
  const ratio = alike.solidsPer100Ml / now.solidsPer100Ml;
  // A shot alone is as strong in any vessel that holds it, and still looks lost in a large one.
  const full = (fill: number): boolean =>
    fill <= Math.max(now.fill, FACTS.fillCeramic.range[1]) &&
    fill >= FACTS.leanestFill.value * now.fill;
  if (isLevel(ratio, input.parity) && full(alike.fill))
    return { drink: drink.id, ratio, how: 'as it is', fill: alike.fill };
  const fill = fillFor(moved, now.servedMl);
  return full(fill) ? { drink: drink.id, ratio, how: 'fill line', fill } : null;
}

/** The menu with one vessel gone: every setting and fall-back takes the kept one instead. */
export function mergedMenu<Drink extends Pick<SuitDrink, 'setting' | 'fallBacks'>>(
  menu: readonly Drink[],
  drop: string,
  keep: string,
): Drink[] {
  const swap = (setting: readonly string[]): string[] =>
    setting.map((ware) => (ware === drop ? keep : ware));
  const key = (setting: readonly string[]): string => JSON.stringify(setting);
  return menu.map((drink) => {
    const setting = swap(drink.setting);
    const seen = new Set([key(setting)]);
    const fallBacks = drink.fallBacks
      .map(swap)
      .filter((s) => !seen.has(key(s)) && seen.add(key(s)));
    return { ...drink, setting, fallBacks };
  });
}

export interface PoolingGain {
  readonly keep: string;
  readonly drop: string;
  /** Pieces of the two vessels when each has its own drinks. */
  readonly apart: number;
  /** Pieces of the kept vessel when it has them all. */
  readonly pooled: number;
  readonly saved: number;
}

/**
 * What merging saves, by the caller's own sizing: `size` gives the pieces of each ware that a menu needs.
 * The menu as it is is sized once. The same days should stand behind every call, or noise is counted too.
 */
export async function poolingGains(
  candidates: readonly Pick<MergeCandidate, 'keep' | 'drop'>[],
  menu: readonly SuitDrink[],
  size: (
    menu: readonly SuitDrink[],
  ) => Readonly<Record<string, number>> | Promise<Readonly<Record<string, number>>>,
): Promise<PoolingGain[]> {
  if (candidates.length === 0) return [];
  const now = await size(menu);
  const gains: PoolingGain[] = [];
  for (const { keep, drop } of candidates) {
    const then = await size(mergedMenu(menu, drop, keep));
    const apart = (now[keep] ?? 0) + (now[drop] ?? 0);
    const pooled = then[keep] ?? 0;
    gains.push({ keep, drop, apart, pooled, saved: apart - pooled });
  }
  return gains;
}

/**
 * What is in the cup: liquid, foam and air below the brim, and where each came from.
 *
 * Air in the foam fills the cup and dilutes nothing, so strength goes by liquid. Steaming heats milk by
 * condensing steam in it, so a part of what is poured is water that was never bought.
 */
import { square } from '../elementary/powers.js';
import { FACTS } from './facts.js';
import { solidsPer100Ml } from './strength.js';
import type { Side } from './model.js';

export interface Pour {
  /** Up to where the vessel is filled, foam and all. */
  readonly filledMl: number;
  readonly fill: number;
  readonly foamMl: number;
  readonly airMl: number;
  /** Liquid in the vessel: filled less air. */
  readonly servedMl: number;
  readonly shotMl: number;
  /** Steamed milk or water on top of the shot. */
  readonly toppedMl: number;
  /** Milk out of the bottle for it, before steam is added. */
  readonly coldMilkMl: number;
  readonly steamG: number;
  /** Topping over shot; null when nothing tops it up. */
  readonly milkRatio: number | null;
  readonly solidsPer100Ml: number;
  /** Roasted coffee behind this drink, dose × share: caffeine goes with it. */
  readonly coffeeG: number;
  readonly massG: number;
  /** Mass × specific heat of the liquid, J/K. */
  readonly heatJPerK: number;
}

/**
 * Steam condensed in a gram of milk warmed from one temperature to another (°C): the energy balance
 * c (to − from) = s (latent heat + c_water (100 − to)), steam dry and at 100 °C. About a tenth.
 */
export function steamShare(fromC: number, toC: number): number {
  if (toC <= fromC) return 0;
  return (
    (FACTS.milkHeat.value * (toC - fromC)) /
    (FACTS.latentHeat.value + FACTS.waterHeat.value * (100 - toC))
  );
}

/** Millilitres of foam in a vessel filled with `filledMl`. */
function foamIn(side: Side, filledMl: number): number {
  const { foam } = side.recipe;
  if (foam === null) return 0;
  if ('share' in foam) return filledMl * foam.share;
  return ((Math.PI / 4) * square(side.space.rimInnerMm ?? 0) * foam.depthMm) / 1000;
}

/** How high the vessel stands filled, in ml, so that the recipe's liquid and foam are in it. */
function filledFor(side: Side, liquidMl: number): number {
  const { foam, airInFoam } = side.recipe;
  if (foam !== null && 'share' in foam) return liquidMl / (1 - foam.share * airInFoam);
  return liquidMl + foamIn(side, 0) * airInFoam;
}

/** The brim (ml) at which this recipe, filled to the same share, serves so much liquid (ml). */
export function brimFor(side: Side, servedMl: number): number {
  return filledFor(side, servedMl) / fillOf(side);
}

/** The share of the brim at which this vessel holds so much liquid (ml) and the recipe's foam. */
export function fillFor(side: Side, servedMl: number): number {
  return filledFor(side, servedMl) / side.space.brimMl;
}

function fillOf(side: Side): number {
  const { recipe, space } = side;
  if (recipe.topUp === 'nothing') return (recipe.brew.yieldG * recipe.shotShare) / space.brimMl;
  if (recipe.pouredMl !== null) return filledFor(side, recipe.pouredMl) / space.brimMl;
  return recipe.fill ?? FACTS.fillCeramic.value;
}

/**
 * Pours a recipe into a vessel. Takes what `pourProblems` let pass; a millilitre of espresso is taken
 * as a gram.
 */
export function pour(side: Side): Pour {
  const { recipe, space } = side;
  const fill = fillOf(side);
  const filledMl = fill * space.brimMl;
  const shotMl = recipe.brew.yieldG * recipe.shotShare;
  const foamMl = recipe.topUp === 'nothing' ? 0 : foamIn(side, filledMl);
  const airMl = foamMl * recipe.airInFoam;
  const servedMl = filledMl - airMl;
  const toppedMl = servedMl - shotMl;
  const isMilk = recipe.topUp === 'milk';
  const toppedG = toppedMl * (isMilk ? FACTS.milkDensity.value : 1);
  const steam = isMilk ? steamShare(recipe.milkFromC, recipe.servedC) : 0;
  const coldMilkG = isMilk ? toppedG / (1 + steam) : 0;
  const steamG = isMilk ? toppedG - coldMilkG : 0;
  return {
    filledMl,
    fill,
    foamMl,
    airMl,
    servedMl,
    shotMl,
    toppedMl,
    coldMilkMl: coldMilkG / FACTS.milkDensity.value,
    steamG,
    milkRatio: recipe.topUp === 'nothing' ? null : toppedMl / shotMl,
    solidsPer100Ml: solidsPer100Ml(recipe.brew, recipe.shotShare, servedMl),
    coffeeG: recipe.brew.doseG * recipe.shotShare,
    massG: shotMl + toppedG,
    heatJPerK:
      coldMilkG * FACTS.milkHeat.value + (shotMl + toppedG - coldMilkG) * FACTS.waterHeat.value,
  };
}

export interface PourFault {
  /** Field of the recipe at fault. */
  readonly field: 'fill' | 'pours' | 'foam' | 'share' | 'shot';
  readonly value: number;
  readonly rule: string;
  readonly remedy: string;
}

/** What makes a pour impossible; empty when it can be poured. */
export function pourFaults(side: Side): PourFault[] {
  const { recipe, space } = side;
  const faults: PourFault[] = [];
  const brim = `${Math.round(space.brimMl)} ml`;
  if (recipe.foam !== null && 'depthMm' in recipe.foam && space.rimInnerMm === null) {
    return [
      {
        field: 'foam',
        value: recipe.foam.depthMm,
        rule: 'is a depth, but the rim of the vessel is not given',
        remedy: 'give the rim of the vessel, or the foam as a share of the filling',
      },
    ];
  }
  const fill = fillOf(side);
  const shotMl = recipe.brew.yieldG * recipe.shotShare;
  if (fill > 1 + 1e-9) {
    const liquid = recipe.topUp === 'nothing' ? shotMl : recipe.pouredMl;
    if (liquid === null) {
      faults.push({
        field: 'fill',
        value: fill,
        rule: 'is more than the brim (100 %)',
        remedy: 'state the fill as a share of the measured brim, 100 % or less',
      });
    } else {
      faults.push({
        field: recipe.topUp === 'nothing' ? 'shot' : 'pours',
        value: liquid,
        rule: `makes ${Math.round(fill * space.brimMl)} ml with its foam, more than fits below the brim (${brim})`,
        remedy: 'take a larger vessel, or pour less',
      });
    }
    return faults;
  }
  const poured = pour(side);
  if (poured.foamMl > poured.filledMl || poured.servedMl <= 0) {
    faults.push({
      field: 'foam',
      value: poured.foamMl,
      rule: 'leaves no room for liquid',
      remedy: 'give less foam, or a larger vessel',
    });
  } else if (poured.toppedMl < -1e-9) {
    faults.push({
      field: 'share',
      value: recipe.shotShare,
      rule: `brings ${Math.round(shotMl)} ml of coffee, more than the liquid that the vessel holds (${Math.round(poured.servedMl)} ml)`,
      remedy: 'take a larger vessel, a smaller share of the shot or a shorter shot',
    });
  }
  return faults;
}

/**
 * How hot the first sip is, how fast the drink cools and how hot the wall gets: an energy balance.
 *
 * Drink and vessel come to one temperature at once (a wall takes about a minute). From then on the two
 * cool as one lump: through the wall in proportion to the difference with the room, and at the surface by
 * still air, radiation and evaporation. Evaporation follows the vapour pressure, so cooling is faster at
 * first than Newton's law says; without it the curve is Newton's, exactly. The vessel stays full: what a
 * guest leaves of a drink cools faster.
 */
import { exp } from '../elementary/exp.js';
import { cbrt, hypot, power, square } from '../elementary/powers.js';
import { DOUBLE_WALL_GAP, FACTS, MATERIALS } from './facts.js';
import type { Material } from './facts.js';

/** Something that holds heat: mass × specific heat in J/K, at a temperature in °C. */
export interface HeatStore {
  readonly heatJPerK: number;
  readonly tempC: number;
}

/** The common temperature (°C) of bodies brought together without loss. */
export function mixingTemperature(bodies: readonly HeatStore[]): number {
  let heat = 0;
  let sum = 0;
  for (const body of bodies) {
    heat += body.heatJPerK;
    sum += body.heatJPerK * body.tempC;
  }
  return sum / heat;
}

/** Heat a vessel holds, J/K, from its mass (g) and material. */
export const vesselHeat = (massG: number, material: Material): number =>
  massG * MATERIALS[material].heat;

/** Saturation pressure of water vapour, Pa, at °C (Magnus form of Alduchov & Eskridge, J Appl Meteorol 1996;35:601). */
export const saturationPa = (tempC: number): number =>
  610.94 * exp((17.625 * tempC) / (tempC + 243.04));

/**
 * Heat that evaporation takes from still water, W/m²: the Lewis relation between the air film's heat and
 * mass transfer, h (L/c) (0.622/P) Le^(−2/3) (p_surface − p_room).
 */
export function evaporationWPerM2(surfaceC: number, roomC: number, humidity: number): number {
  const perPascal = (((2.36e6 / 1006) * 0.622) / 101_325) * power(0.85, -2 / 3);
  return (
    FACTS.topAir.value *
    perPascal *
    Math.max(0, saturationPa(surfaceC) - humidity * saturationPa(roomC))
  );
}

/** The inside of a vessel up to where it is filled, taken as a cone cut off at foot and rim. */
export interface Wetted {
  readonly surfaceM2: number;
  readonly wallM2: number;
}

/** Liquid surface and wetted wall with base, from outside measures (mm), wall (mm) and fill (share of the volume). */
export function wetted(
  rimMm: number,
  footMm: number,
  heightMm: number,
  wallMm: number,
  fill: number,
): Wetted {
  const rim = Math.max(1, rimMm / 2 - wallMm) / 1000;
  const foot = Math.max(1, footMm / 2 - wallMm) / 1000;
  const height = Math.max(1, heightMm - wallMm) / 1000;
  const surface = cbrt(power(foot, 3) + fill * (power(rim, 3) - power(foot, 3)));
  const depth = rim - foot < 1e-9 ? fill * height : (height * (surface - foot)) / (rim - foot);
  const side = Math.PI * (foot + surface) * hypot(surface - foot, depth);
  return { surfaceM2: Math.PI * square(surface), wallM2: side + Math.PI * square(foot) };
}

/** Resistances of a wall to heat, m² K/W: liquid film, wall itself, still air outside. */
export function wallResistances(
  material: Material,
  wallMm: number,
  doubleWall: boolean,
): { readonly inside: number; readonly wall: number; readonly outside: number } {
  const solid = wallMm / 1000 / MATERIALS[material].conductivity;
  return {
    inside: 1 / FACTS.wallLiquid.value,
    wall: solid + (doubleWall ? DOUBLE_WALL_GAP : 0),
    outside: 1 / FACTS.wallAir.value,
  };
}

/** Temperature (°C) of the outside of a wall that holds a drink. */
export function outerWall(
  drinkC: number,
  roomC: number,
  material: Material,
  wallMm: number,
  doubleWall: boolean,
): number {
  const r = wallResistances(material, wallMm, doubleWall);
  return roomC + ((drinkC - roomC) * r.outside) / (r.inside + r.wall + r.outside);
}

export interface Cooling {
  /** Drink and vessel together, J/K. */
  readonly heatJPerK: number;
  readonly startC: number;
  readonly roomC: number;
  readonly surfaceM2: number;
  readonly wallM2: number;
  /** Conductance of the wall, W/(m² K). */
  readonly wallUWPerM2K: number;
  /** Depth of foam on top, mm; 0: none. */
  readonly foamMm: number;
  /** False: no vapour leaves, and the curve is Newton's. */
  readonly evaporates: boolean;
  readonly humidity: number;
}

/** Heat lost at the surface, W/m², from a drink at °C; foam lies in between as a layer. */
function surfaceLoss(drinkC: number, c: Cooling): number {
  const dry = FACTS.topAir.value + FACTS.topRadiation.value;
  const lost = (at: number): number =>
    dry * (at - c.roomC) + (c.evaporates ? evaporationWPerM2(at, c.roomC, c.humidity) : 0);
  if (c.foamMm <= 0) return lost(drinkC);
  // The top of the foam settles where what comes through it is what leaves it: found by halving.
  const through = FACTS.foamConductivity.value / (c.foamMm / 1000);
  let [low, high] = [Math.min(c.roomC, drinkC), drinkC];
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (through * (drinkC - middle) > lost(middle)) low = middle;
    else high = middle;
  }
  return lost((low + high) / 2);
}

/**
 * Temperatures (°C) at every whole minute from 0 to `minutes`, by the classical Runge–Kutta rule in
 * steps of 20 s, whose error is far below a hundredth of a degree here.
 */
export function coolingCurve(c: Cooling, minutes: number): number[] {
  const slope = (t: number): number =>
    -(surfaceLoss(t, c) * c.surfaceM2 + c.wallUWPerM2K * c.wallM2 * (t - c.roomC)) / c.heatJPerK;
  const step = 20;
  const temperatures = [c.startC];
  let t = c.startC;
  for (let minute = 1; minute <= minutes; minute++) {
    for (let i = 0; i < 60 / step; i++) {
      const k1 = slope(t);
      const k2 = slope(t + (step / 2) * k1);
      const k3 = slope(t + (step / 2) * k2);
      const k4 = slope(t + step * k3);
      t += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    temperatures.push(t);
  }
  return temperatures;
}

/** The minute at which a falling curve of one value a minute passes a temperature (°C); null: not within it. */
export function minuteBelow(curve: readonly number[], tempC: number): number | null {
  for (let minute = 0; minute < curve.length; minute++) {
    if (curve[minute]! > tempC) continue;
    if (minute === 0) return 0;
    const before = curve[minute - 1]!;
    return minute - 1 + (before - tempC) / (before - curve[minute]!);
  }
  return null;
}

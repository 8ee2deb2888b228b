/**
 * One drink's heat in its vessel: the first sip from a cold and from a warmed cup, and the whole dwell.
 */
import { FACTS } from './facts.js';
import type { Basis } from './facts.js';
import {
  coolingCurve,
  minuteBelow,
  mixingTemperature,
  outerWall,
  vesselHeat,
  wallResistances,
  wetted,
} from './heat.js';
import { pour } from './pour.js';
import { scaldCaution } from './scald.js';
import type { Side, SuitWare, WareSheet } from './model.js';

export interface Warmth {
  readonly pouredC: number;
  readonly vesselC: number;
  /** Right after pouring, drink and vessel at one temperature. */
  readonly mixedC: number;
  /** At the first sip, from the vessel as the recipe has it, from a cold and from a warmed one. */
  readonly firstSipC: number;
  readonly firstSipColdC: number;
  readonly firstSipWarmedC: number;
  /** What warming the vessel is worth at the first sip, and in minutes until the drink is below the preferred range. */
  readonly warmedWorthC: number;
  readonly warmedWorthMin: number | null;
  /** Minutes from pouring until it is not above, and until it is below, the preferred range; null: not within the dwell. */
  readonly notAboveMin: number | null;
  readonly belowMin: number | null;
  readonly preferred: {
    readonly lowC: number;
    readonly highC: number;
    readonly basis: Basis;
    readonly source: string;
  };
  /** One value a minute from pouring. */
  readonly curves: {
    readonly asMadeC: readonly number[];
    readonly coldC: readonly number[];
    readonly warmedC: readonly number[];
  };
  /** Outside of a vessel held round its body, at its hottest; null with a handle. */
  readonly outerWallC: number | null;
  readonly scald: string | null;
}

export interface WarmthSetting {
  readonly roomC: number;
  readonly warmedC: number;
  readonly vesselC: number;
  readonly firstSipMin: number;
  readonly dwellMin: number;
}

/** Minutes that a curve runs at most: longer stays say nothing more about heat. */
const LONGEST = 90;

/** null when the vessel's mass, rim, foot or height is not known. */
export function warmthOf(
  side: Side,
  ware: SuitWare,
  sheet: WareSheet,
  setting: WarmthSetting,
): Warmth | null {
  const { massG, rimMm, footMm, heightMm } = ware;
  if (massG === null || rimMm === null || footMm === null || heightMm === null) return null;
  const poured = pour(side);
  const pouredC = side.recipe.servedC;
  const vessel = vesselHeat(massG, sheet.material);
  const { surfaceM2, wallM2 } = wetted(
    rimMm,
    footMm,
    heightMm,
    sheet.wallMm,
    Math.min(1, poured.fill),
  );
  const r = wallResistances(sheet.material, sheet.wallMm, sheet.doubleWall);
  const minutes = Math.max(
    Math.ceil(setting.firstSipMin) + 1,
    Math.min(LONGEST, Math.ceil(setting.dwellMin)),
  );
  const mixedFrom = (vesselC: number): number =>
    mixingTemperature([
      { heatJPerK: poured.heatJPerK, tempC: pouredC },
      { heatJPerK: vessel, tempC: vesselC },
    ]);
  const curveFrom = (vesselC: number, length: number): number[] =>
    coolingCurve(
      {
        heatJPerK: poured.heatJPerK + vessel,
        startC: mixedFrom(vesselC),
        roomC: setting.roomC,
        surfaceM2,
        wallM2,
        wallUWPerM2K: 1 / (r.inside + r.wall + r.outside),
        foamMm: poured.foamMl / 1000 / surfaceM2,
        evaporates: true,
        humidity: FACTS.humidity.value,
      },
      length,
    );
  // The longest run of each is read for the minutes; the answer carries the dwell.
  const cold = curveFrom(setting.roomC, LONGEST);
  const warmed = curveFrom(setting.warmedC, LONGEST);
  const asMade =
    setting.vesselC === setting.roomC
      ? cold
      : setting.vesselC === setting.warmedC
        ? warmed
        : curveFrom(setting.vesselC, LONGEST);
  const sip = (curve: readonly number[]): number => at(curve, setting.firstSipMin);
  const [lowC, highC] = FACTS.preferredC.range;
  const within = (minute: number | null): number | null =>
    minute !== null && minute <= setting.dwellMin ? minute : null;
  const [coldBelow, warmedBelow] = [minuteBelow(cold, lowC), minuteBelow(warmed, lowC)];
  const firstSipC = sip(asMade);
  const cut = (curve: readonly number[]): readonly number[] => curve.slice(0, minutes + 1);
  return {
    pouredC,
    vesselC: setting.vesselC,
    mixedC: mixedFrom(setting.vesselC),
    firstSipC,
    firstSipColdC: sip(cold),
    firstSipWarmedC: sip(warmed),
    warmedWorthC: sip(warmed) - sip(cold),
    warmedWorthMin: coldBelow === null || warmedBelow === null ? null : warmedBelow - coldBelow,
    notAboveMin: within(minuteBelow(asMade, highC)),
    belowMin: within(minuteBelow(asMade, lowC)),
    preferred: { lowC, highC, basis: FACTS.preferredC.basis, source: FACTS.preferredC.source },
    curves: { asMadeC: cut(asMade), coldC: cut(cold), warmedC: cut(warmed) },
    outerWallC:
      ware.handleMm === null || ware.handleMm > 0
        ? null
        : outerWall(
            mixedFrom(setting.vesselC),
            setting.roomC,
            sheet.material,
            sheet.wallMm,
            sheet.doubleWall,
          ),
    scald: scaldCaution(firstSipC),
  };
}

/** The drink in its paper cup right after pouring, °C: paper takes almost nothing off it. */
export function paperFirstC(side: Side, paperMassG: number | null, roomC: number): number {
  return mixingTemperature([
    { heatJPerK: pour(side).heatJPerK, tempC: side.recipe.servedC },
    { heatJPerK: vesselHeat(paperMassG ?? FACTS.paperMassG.value, 'paper'), tempC: roomC },
  ]);
}

/** A curve of one value a minute, read in between. */
function at(curve: readonly number[], minute: number): number {
  const before = Math.min(Math.floor(minute), curve.length - 1);
  const after = Math.min(before + 1, curve.length - 1);
  return curve[before]! + (minute - before) * (curve[after]! - curve[before]!);
}

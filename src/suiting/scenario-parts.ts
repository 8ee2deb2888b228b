/**
 * From the scenario's own ware, menu and rack layouts to what the checks read. Structural on purpose: any
 * parsed scenario with these fields will do.
 */
import { nameOf } from '../quantities/name.js';
import type { RackFit, Shape, SuitDrink, SuitWare } from './model.js';

/** A ware as parsed: mm, ml, g. */
export interface ParsedWare {
  readonly name?: string | undefined;
  readonly shape?: Shape | undefined;
  readonly brim?: number | undefined;
  readonly rim?: number | undefined;
  readonly foot?: number | undefined;
  readonly height?: number | undefined;
  readonly handle?: number | undefined;
  readonly mass?: number | undefined;
  readonly well?: number | undefined;
  readonly colour?: string | undefined;
}

export function suitWare(ware: Readonly<Record<string, ParsedWare>>): SuitWare[] {
  return Object.entries(ware).map(([id, given]) => ({
    id,
    name: nameOf(id, given),
    shape: given.shape ?? null,
    brimMl: given.brim ?? null,
    rimMm: given.rim ?? null,
    footMm: given.foot ?? null,
    heightMm: given.height ?? null,
    // A glass of which no handle is given has none; a cup for which none is given may have any.
    handleMm: given.handle ?? (given.shape === 'glass' ? 0 : null),
    massG: given.mass ?? null,
    wellMm: given.well ?? null,
    colour: given.colour ?? null,
  }));
}

/** A drink as parsed; an empty setting is a takeaway cup. */
export interface ParsedDrink {
  readonly name?: string | undefined;
  readonly share: number;
  readonly setting: readonly string[];
  readonly fallBacks?: readonly (readonly string[])[] | undefined;
}

export const suitMenu = (menu: Readonly<Record<string, ParsedDrink>>): SuitDrink[] =>
  Object.entries(menu).map(([id, given]) => ({
    id,
    name: nameOf(id, given),
    share: given.share,
    setting: given.setting,
    fallBacks: given.fallBacks ?? [],
  }));

/** A rack layout as `racking` computes it: what of it the checks read. */
export interface LaidOut {
  readonly pieces: number;
  readonly slackMm: number | null;
  /** The smallest cut of the rim that gains pieces. */
  readonly rimGain: { readonly changeMm: number; readonly piecesThen: number } | null;
}

/** The rack's answer in short: pieces, slack, and the nearest gain by a narrower rim. */
export function rackFit(kind: string, layout: LaidOut): RackFit {
  const { rimGain } = layout;
  return {
    kind,
    pieces: layout.pieces,
    slackMm: layout.slackMm,
    narrower: rimGain === null ? null : { byMm: -rimGain.changeMm, pieces: rimGain.piecesThen },
  };
}

/** Drinks a week by drink, from drinks of a mean day: those that stay in and those taken away (0..1), and open days. */
export function drinksAWeek(
  menu: readonly Pick<SuitDrink, 'id' | 'share'>[],
  drinksADay: number,
  staysIn: number,
  openDays: number,
): Record<string, { house: number; takeaway: number }> {
  return Object.fromEntries(
    menu.map(({ id, share }) => {
      const drinks = share * drinksADay * openDays;
      return [id, { house: drinks * staysIn, takeaway: drinks * (1 - staysIn) }];
    }),
  );
}

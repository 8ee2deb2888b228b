/**
 * Which cup sits on which saucer: one verdict for every command.
 *
 * By measures, the foot must go into the well with some clearance, and not so much that the cup slides.
 * Where somebody has tried it, that counts, and what the measures say stands beside it. Colours, where both
 * are given, must agree.
 */

export interface CupFoot {
  readonly id: string;
  /** Diameter of the foot, mm; null: not known. */
  readonly footMm: number | null;
  readonly colour?: string | null | undefined;
  /** True where the foot is that of a typical piece. */
  readonly typical?: boolean;
}

export interface SaucerWell {
  readonly id: string;
  /** Diameter of the well, mm; null: not known. */
  readonly wellMm: number | null;
  readonly colour?: string | null | undefined;
  /** Cups that were tried on it and sit well. */
  readonly takes?: readonly string[] | undefined;
  /** True where the well is that of a typical piece. */
  readonly typical?: boolean;
}

/** Well less foot, mm, in diameter. */
export interface Clearance {
  readonly leastMm: number;
  readonly mostMm: number;
}

/** Assumed, no source: 1 mm to set the cup down, no more than 8 mm before it slides. */
export const USUAL_CLEARANCE: Clearance = { leastMm: 1, mostMm: 8 };

export type ByMeasures =
  | 'computed'
  | 'foot too wide'
  | 'cup would slide'
  | 'colours differ'
  | 'measures missing';

export interface SaucerFit {
  readonly cup: string;
  readonly saucer: string;
  readonly fits: boolean;
  /** What decides; given: somebody tried it. */
  readonly reason: 'given' | ByMeasures;
  /** What the measures say, tried or not. */
  readonly byMeasures: ByMeasures;
  /** Well less foot, mm; null where one is not known. */
  readonly clearanceMm: number | null;
  /** True where foot or well is that of a typical piece, not measured on yours. */
  readonly typical: boolean;
}

/** Tries every cup on every saucer, cups first. */
export const saucerFits = (
  cups: readonly CupFoot[],
  saucers: readonly SaucerWell[],
  clearance: Clearance = USUAL_CLEARANCE,
): SaucerFit[] => cups.flatMap((cup) => saucers.map((saucer) => fitOf(cup, saucer, clearance)));

/** Whether the measures rule a pair out: what nobody has measured may fit, and so may another colour. */
export const isMisfit = ({ fits, byMeasures }: SaucerFit): boolean =>
  !fits && (byMeasures === 'foot too wide' || byMeasures === 'cup would slide');

function fitOf(cup: CupFoot, saucer: SaucerWell, clearance: Clearance): SaucerFit {
  const clearanceMm =
    cup.footMm === null || saucer.wellMm === null ? null : saucer.wellMm - cup.footMm;
  const byMeasures = differ(cup.colour, saucer.colour)
    ? 'colours differ'
    : clearanceMm === null
      ? 'measures missing'
      : clearanceMm < clearance.leastMm
        ? 'foot too wide'
        : clearanceMm > clearance.mostMm
          ? 'cup would slide'
          : 'computed';
  const tried = byMeasures !== 'colours differ' && saucer.takes?.includes(cup.id) === true;
  return {
    cup: cup.id,
    saucer: saucer.id,
    fits: tried || byMeasures === 'computed',
    reason: tried ? 'given' : byMeasures,
    byMeasures,
    clearanceMm,
    typical: clearanceMm !== null && (cup.typical === true || saucer.typical === true),
  };
}

const differ = (one: string | null | undefined, other: string | null | undefined): boolean =>
  one != null && other != null && one.trim().toLowerCase() !== other.trim().toLowerCase();

/** "fits; you tried it (by its measures it would slide: 11.5 mm of play)", the same words everywhere. */
export function fitWords(
  { reason, byMeasures, clearanceMm, typical }: SaucerFit,
  length: (mm: number) => string,
): string {
  const measures = measuredWords(byMeasures, clearanceMm, length);
  const whose = typical
    ? ' The foot or the well is only typical of its kind: measure yours before you buy.'
    : '';
  return reason === 'given'
    ? `fits; you tried it (${measures})`
    : `${measures}.${whose}`.replace(/\.$/, '');
}

function measuredWords(
  verdict: ByMeasures,
  clearanceMm: number | null,
  length: (mm: number) => string,
): string {
  const play = clearanceMm === null ? '' : length(Math.abs(clearanceMm));
  switch (verdict) {
    case 'computed':
      return `by its measures it fits, with ${play} of play`;
    case 'cup would slide':
      return `by its measures it would slide, with ${play} of play`;
    case 'foot too wide':
      return clearanceMm! < 0
        ? `by its measures it does not fit, as the foot is ${play} too wide`
        : `by its measures it is too tight, with only ${play} of play`;
    case 'colours differ':
      return 'not matched: the colours differ';
    case 'measures missing':
      return 'not known: foot or well is missing';
  }
}

/**
 * Whether the pieces go together: cup under the spout, rim in the rack. Cup and saucer: `racking/saucer-fit.ts`.
 */
import type { Fault } from '../quantities/flaw.js';
import { square } from '../elementary/powers.js';
import type { RackFit, SuitWare } from './model.js';

export interface SpoutFit {
  readonly spareMm: number;
  readonly fits: boolean;
}

/** Height of a cup against the room under the spout (mm). */
export const spoutFit = (heightMm: number, underSpoutMm: number): SpoutFit => ({
  spareMm: underSpoutMm - heightMm,
  fits: heightMm <= underSpoutMm,
});

/** The cliff of a rack in words, or null where there is none near: under 1 mm of slack, or a gain within 3 mm. */
export function rackCliff(
  fit: RackFit,
): { readonly code: 'tight' | 'near-gain'; readonly words: string } | null {
  const { narrower } = fit;
  const measure =
    fit.typicalRim === true ? 'measure the rim, which is only typical of its kind: ' : '';
  if (narrower !== null && narrower.byMm <= 3 && narrower.pieces > fit.pieces) {
    return {
      code: 'near-gain',
      words: `${measure}with a rim ${round1(narrower.byMm)} mm narrower, the ${fit.kind} rack takes ${narrower.pieces} instead of ${fit.pieces}`,
    };
  }
  if (fit.slackMm !== null && fit.slackMm < 1) {
    return {
      code: 'tight',
      words: `${measure}a rim ${round1(fit.slackMm)} mm wider makes the ${fit.kind} rack lose pieces; try the rack with real cups`,
    };
  }
  return null;
}

/** What cannot be true of a ware: such a piece is left out of every table. */
export function wareProblems(ware: SuitWare): Fault[] {
  const problems: Fault[] = [];
  const say = (field: string, value: number, rule: string, remedy: string): void => {
    problems.push({
      path: ['ware', ware.id, field],
      value,
      rule,
      remedy,
      message: `ware ${ware.id}: ${field} ${round1(value)} ${rule}; ${remedy}`,
    });
  };
  const measures = {
    brim: ware.brimMl,
    rim: ware.rimMm,
    foot: ware.footMm,
    height: ware.heightMm,
    mass: ware.massG,
    well: ware.wellMm,
  };
  for (const [field, value] of Object.entries(measures)) {
    if (value !== null && !(value > 0 && Number.isFinite(value)))
      say(field, value, 'is not above zero', 'measure it again');
  }
  if (ware.handleMm !== null && !(ware.handleMm >= 0 && Number.isFinite(ware.handleMm)))
    say('handle', ware.handleMm, 'is below zero', 'give 0 mm for a vessel without a handle');
  if (problems.length > 0) return problems;
  const isVessel = ware.shape === 'cup' || ware.shape === 'glass' || ware.shape === null;
  if (isVessel && ware.rimMm !== null && ware.footMm !== null && ware.footMm > ware.rimMm) {
    say(
      'foot',
      ware.footMm,
      `is wider than the rim (${round1(ware.rimMm)} mm)`,
      'check whether foot and rim were swapped',
    );
  }
  if (isVessel && ware.handleMm !== null && ware.rimMm !== null && ware.handleMm > ware.rimMm) {
    say(
      'handle',
      ware.handleMm,
      `is longer than the rim is wide (${round1(ware.rimMm)} mm)`,
      'measure from the rim outwards',
    );
  }
  if (isVessel && ware.brimMl !== null && ware.rimMm !== null && ware.heightMm !== null) {
    // No vessel that narrows to its foot holds more than a cylinder of its rim and height; 1.3 leaves room for bellies.
    const mostMl = (1.3 * (Math.PI / 4) * square(ware.rimMm) * ware.heightMm) / 1000;
    if (ware.brimMl > mostMl)
      say(
        'brim',
        ware.brimMl,
        `is more than a vessel of that rim and height holds (about ${Math.round(mostMl)} ml)`,
        'measure the brim with water, or check rim and height',
      );
  }
  return problems;
}

const round1 = (value: number): number => Math.round(value * 10) / 10;

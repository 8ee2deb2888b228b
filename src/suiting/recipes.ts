/**
 * From the words of the `suit` section to recipes: shots checked, gaps filled with facts that are named in the answer.
 */
import type { Fault } from '../quantities/flaw.js';
import { FACTS } from './facts.js';
import type { Fact, FactName } from './facts.js';
import { brewFromExtraction, brewFromTds } from './strength.js';
import type { Brew } from './strength.js';
import type { ShotSection } from './schema.js';

/** A figure that the file did not give. */
export interface Assumption extends Fact {
  /** Dotted place in the scenario where it could be stated. */
  readonly path: string;
}

/** Collects problems and the facts used where the file is silent. */
export class Reading {
  readonly problems: Fault[] = [];
  readonly assumptions: Assumption[] = [];

  refuse(path: readonly (string | number)[], value: unknown, rule: string, remedy: string): void {
    const message = `${path.join('.')}: ${rule}; ${remedy}`;
    // One shot may stand behind many drinks: it is reported once.
    if (!this.problems.some((p) => p.message === message))
      this.problems.push({ path, value, rule, remedy, message });
  }

  /** The fact's value, stated once for each place it could have been stated. */
  assume(path: string, fact: FactName): number {
    if (!this.assumptions.some((a) => a.path === path))
      this.assumptions.push({ path, ...FACTS[fact] });
    return FACTS[fact].value;
  }
}

const HIGHEST_EXTRACTION = 0.3;
const HIGHEST_TDS = 0.3;
/** How far dose × extraction and yield × TDS may differ when all four are given: readings are rounded. */
const TWO_WAYS_DIFFER = 0.02;

/** Later shots override earlier ones, field by field; a new ratio drops an old yield, new TDS an old extraction, and the reverse. */
export function layerShots(shots: readonly (ShotSection | undefined)[]): ShotSection {
  let layered: ShotSection = {};
  for (const shot of shots) {
    if (shot === undefined) continue;
    const given: ShotSection = Object.fromEntries(
      Object.entries(shot).filter(([, value]) => value !== undefined),
    );
    const { yield: yieldG, ratio, extraction, tds, ...rest } = layered;
    layered = {
      ...rest,
      ...(given.yield === undefined && given.ratio === undefined
        ? defined({ yield: yieldG, ratio })
        : {}),
      ...(given.extraction === undefined && given.tds === undefined
        ? defined({ extraction, tds })
        : {}),
      ...given,
    };
  }
  return layered;
}

const defined = (fields: ShotSection): ShotSection =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

/** A shot from its section, or null with problems reported. `path` is where it stands. */
export function readBrew(
  shot: ShotSection,
  path: readonly string[],
  reading: Reading,
): Brew | null {
  const at = path.join('.');
  const before = reading.problems.length;
  if (shot.yield !== undefined && shot.ratio !== undefined) {
    reading.refuse(
      [...path, 'ratio'],
      shot.ratio,
      'is given beside yield, which says the same',
      'give one of them',
    );
  }
  const doseG = shot.dose ?? reading.assume(`${at}.dose`, 'doseG');
  if (!(doseG > 0))
    reading.refuse(
      [...path, 'dose'],
      doseG,
      'is not above zero',
      'give the grams of ground coffee in the basket',
    );
  const yieldG = shot.yield ?? doseG * (shot.ratio ?? reading.assume(`${at}.ratio`, 'brewRatio'));
  if (!(yieldG > 0))
    reading.refuse(
      [...path, 'yield'],
      yieldG,
      'is not above zero',
      'give the grams of coffee in the cup',
    );
  // What all drinks share is refused once, for the first of them.
  if (reading.problems.length > before || !(doseG > 0) || !(yieldG > 0)) return null;

  const extraction =
    shot.extraction ??
    (shot.tds === undefined ? reading.assume(`${at}.extraction`, 'extraction') : null);
  const brew =
    extraction !== null
      ? brewFromExtraction(doseG, yieldG, extraction)
      : brewFromTds(doseG, yieldG, shot.tds!);
  if (shot.extraction !== undefined && shot.tds !== undefined) {
    const byTds = yieldG * shot.tds;
    if (Math.abs(byTds - brew.solidsG) > TWO_WAYS_DIFFER * brew.solidsG) {
      reading.refuse(
        [...path, 'tds'],
        shot.tds,
        `does not agree: dose × extraction (${brew.solidsG.toFixed(2)} g) must equal yield × TDS (${byTds.toFixed(2)} g)`,
        'weigh the shot and read it again, or give one of the two',
      );
    }
  }
  if (!(brew.extraction > 0)) {
    reading.refuse(
      [...path, shot.tds === undefined ? 'extraction' : 'tds'],
      brew.extraction,
      'means that nothing is extracted',
      'give the share of the coffee that dissolves, about 20 %',
    );
  }
  if (brew.extraction > HIGHEST_EXTRACTION + 1e-9) {
    reading.refuse(
      [...path, shot.extraction === undefined ? 'tds' : 'extraction'],
      brew.extraction,
      `${shot.extraction === undefined ? `makes an extraction of ${(100 * brew.extraction).toFixed(1)} %, which ` : ''}is over 30 %, more than coffee can give`,
      'check dose, yield and TDS: shots run from 16 to 22 %',
    );
  }
  if (brew.tds > HIGHEST_TDS + 1e-9) {
    reading.refuse(
      [...path, shot.yield === undefined ? 'ratio' : 'yield'],
      yieldG,
      `makes ${(100 * brew.tds).toFixed(0)} % of the shot dissolved solids`,
      'check dose and yield: a shot weighs 1 to 3 times its dose',
    );
  }
  return reading.problems.length > before ? null : brew;
}

/**
 * Suits vessels to drinks and guests: scenario in, answer out, one straight line.
 *
 *     read ──► pour both sides ──► compare, remedy ──► warmth, grip ──► ware ──► findings
 */
import { saucerFits, type SaucerFit } from '../racking/saucer-fit.js';
import { rackCliff, spoutFit } from './fit.js';
import { findingsOf } from './findings.js';
import { gripOf } from './grip.js';
import type { Grip } from './grip.js';
import { mergeCandidates, saucersUnder } from './merging.js';
import { ML_PER_FLUID_OUNCE } from '../quantities/unit-sizes.js';
import { pour } from './pour.js';
import { readSuit } from './read.js';
import type { DrinkPlan, Reads } from './reads.js';
import { remediesFor, strengthRatio } from './remedies.js';
import type { OnHand } from './remedies.js';
import { scaldCaution, SCALD_LAW } from './scald.js';
import { checklistFor, notesFor } from './sheet.js';
import { isLevel } from './strength.js';
import { paperFirstC, warmthOf } from './warmth.js';
import { plainName } from './words.js';
import type { SuitInput } from './input.js';
import type { DrinkAnswer, Served, SuitAnswer, WareAnswer } from './answer.js';
import type { Side, SuitWare } from './model.js';

const DWELL_MIN = 38;

/** Everything the sheet can say. Problems are reported in the answer, and what they touch is not computed. */
export function suit(given: SuitInput): SuitAnswer {
  const named = <T extends { readonly name: string }>(things: readonly T[]): T[] =>
    things.map((thing) => ({ ...thing, name: plainName(thing.name) }));
  const input: SuitInput = {
    ...given,
    scenario: plainName(given.scenario),
    ware: named(given.ware),
    menu: named(given.menu),
  };
  const reads = readSuit(input);
  const racks = input.racks ?? {};
  const fits = input.saucerFits ?? fitsByMeasures(reads.ware);
  const drinks = reads.plans.map((plan) => drinkAnswer(plan, reads, input));
  const ware = reads.ware
    .filter(
      (piece) =>
        piece.shape === 'cup' ||
        piece.shape === 'glass' ||
        piece.shape === 'saucer' ||
        reads.plans.some((p) => p.vessel === piece),
    )
    .map((piece) => wareAnswer(piece, drinks, reads, input, fits));
  const merges = mergeCandidates({
    plans: reads.plans,
    ware: reads.ware,
    menu: input.menu,
    parity: reads.parity,
    racks,
    saucerFits: fits,
  });
  return {
    scenario: input.scenario,
    currency: input.currency,
    parity: reads.parity,
    roomC: reads.roomC,
    firstSipMin: reads.firstSipMin,
    drinks,
    ware,
    findings: findingsOf({ drinks, ware, reads, input }),
    merges,
    pooling: [],
    cautions: cautionsFor(drinks, ware),
    // Heat and strength, which they are for, are worked out by drink.
    assumptions: drinks.length === 0 ? [] : reads.assumptions,
    problems: reads.problems,
  };
}

const fitsByMeasures = (ware: readonly SuitWare[]): SaucerFit[] =>
  saucerFits(
    ware.filter(({ shape }) => shape === 'cup' || shape === 'glass'),
    ware.filter(({ shape }) => shape === 'saucer'),
  );

function served(side: Side, vessel: string): Served {
  const { brew, shotShare } = side.recipe;
  return {
    vessel,
    brimMl: side.space.brimMl,
    ...pour(side),
    doseG: brew.doseG,
    yieldG: brew.yieldG,
    extraction: brew.extraction,
    tds: brew.tds,
    shotShare,
  };
}

function drinkAnswer(plan: DrinkPlan, reads: Reads, input: SuitInput): DrinkAnswer {
  const { drink, vessel, house, paper, takeaway, paperBrim } = plan;
  const both = house !== null && takeaway !== null;
  const ratio = both ? strengthRatio(house, takeaway) : null;
  const atBrim = (brimMl: number): number | null =>
    both && takeaway.recipe.pouredMl === null
      ? strengthRatio(house, { ...takeaway, space: { ...takeaway.space, brimMl } })
      : ratio;
  const sheet = vessel === null ? null : reads.sheets[vessel.id]!;
  const away = takeaway === null ? null : paperFirstC(takeaway, paper?.massG ?? null, reads.roomC);
  return {
    drink: drink.id,
    name: drink.name,
    house: house === null || vessel === null ? null : served(house, vessel.id),
    takeaway: takeaway === null || paper === null ? null : served(takeaway, paper.id),
    paperBrim,
    ratio,
    ratioLow: paperBrim === null ? null : atBrim(paperBrim.highMl),
    ratioHigh: paperBrim === null ? null : atBrim(paperBrim.lowMl),
    level: ratio === null ? null : isLevel(ratio, reads.parity),
    remedies:
      both && !isLevel(ratio!, reads.parity)
        ? remediesFor(house, takeaway, {
            tolerance: reads.parity,
            vessels: vesselsOnHand(reads, vessel!),
            papers: papersOnHand(reads),
            drinksAWeek:
              input.drinksAWeek !== undefined && Object.hasOwn(input.drinksAWeek, drink.id)
                ? input.drinksAWeek[drink.id]!
                : null,
            coffeePerKgMinor: reads.coffeePerKgMinor,
            milkPerLitreMinor: reads.milkPerLitreMinor,
            restIsUsed: reads.restIsUsed,
          })
        : [],
    warmth:
      house === null || vessel === null
        ? null
        : warmthOf(house, vessel, sheet!, {
            roomC: reads.roomC,
            warmedC: reads.warmedC,
            vesselC: plan.vesselC,
            firstSipMin: plan.firstSipMin,
            dwellMin: input.dwellMin ?? DWELL_MIN,
          }),
    firstSipMin: plan.firstSipMin,
    standing: (vessel === null ? null : input.standing?.[vessel.id]) ?? null,
    paperFirstC: away,
    scaldInPaper: away === null ? null : scaldCaution(away),
    grip: house === null || vessel === null ? null : gripWith(vessel, pour(house).massG, reads),
  };
}

/** What could stand in for a vessel: cups, and a glass only for a glass, as others are seldom made for hot drinks. */
function vesselsOnHand(reads: Reads, but: SuitWare): OnHand[] {
  return reads.ware.flatMap((ware) => {
    const fits = ware.shape === 'cup' || (ware.shape === 'glass' && but.shape === 'glass');
    if (ware === but || ware.brimMl === null || !fits) return [];
    return [
      {
        id: ware.id,
        space: {
          brimMl: ware.brimMl,
          rimInnerMm: ware.rimMm === null ? null : ware.rimMm - 2 * reads.sheets[ware.id]!.wallMm,
        },
      },
    ];
  });
}

/** Papers with a measured brim: a guess cannot promise parity. */
function papersOnHand(reads: Reads): OnHand[] {
  return reads.papers.flatMap((paper) =>
    paper.brimMl === null
      ? []
      : [{ id: paper.id, space: { brimMl: paper.brimMl, rimInnerMm: paper.rimMm } }],
  );
}

function gripWith(ware: SuitWare, drinkG: number, reads: Reads): Grip | null {
  if (ware.massG === null || ware.rimMm === null || ware.handleMm === null) return null;
  return gripOf({
    massG: ware.massG,
    drinkG,
    rimMm: ware.rimMm,
    handleMm: ware.handleMm,
    opening: reads.sheets[ware.id]!.opening,
  });
}

function wareAnswer(
  ware: SuitWare,
  drinks: readonly DrinkAnswer[],
  reads: Reads,
  input: SuitInput,
  fits: readonly SaucerFit[],
): WareAnswer {
  const sheet = reads.sheets[ware.id]!;
  const own = drinks.filter((drink) => drink.house?.vessel === ware.id);
  const isVessel = ware.shape !== 'saucer';
  const heaviest = Math.max(0, ...own.map((drink) => drink.house!.massG));
  const rack =
    input.racks !== undefined && Object.hasOwn(input.racks, ware.id) ? input.racks[ware.id]! : null;
  const walls = own.flatMap((drink) => drink.warmth?.outerWallC ?? []);
  return {
    ware: ware.id,
    name: ware.name,
    shape: ware.shape,
    brimMl: ware.brimMl,
    brimUsFlOz: ware.brimMl === null ? null : ware.brimMl / ML_PER_FLUID_OUNCE,
    massG: ware.massG,
    drinks: own.map((drink) => drink.drink),
    grip: isVessel && heaviest > 0 ? gripWith(ware, heaviest, reads) : null,
    saucers: saucersUnder(ware.id, input.menu, reads.ware).flatMap(
      ({ id }) => fits.find((fit) => fit.cup === ware.id && fit.saucer === id) ?? [],
    ),
    spout:
      isVessel && own.length > 0 && ware.heightMm !== null && reads.underSpoutMm !== null
        ? spoutFit(ware.heightMm, reads.underSpoutMm)
        : null,
    rack,
    rackCliff: rack === null ? null : (rackCliff(rack)?.words ?? null),
    outerWallC: walls.length === 0 ? null : Math.max(...walls),
    colour: ware.colour,
    notes: notesFor(sheet, ware.shape),
    checklist: checklistFor(ware.id, ware.shape, sheet),
  };
}

function cautionsFor(drinks: readonly DrinkAnswer[], ware: readonly WareAnswer[]): string[] {
  const cautions: string[] = [];
  if (drinks.some((drink) => drink.warmth?.scald != null || drink.scaldInPaper !== null)) {
    cautions.push(
      `Hot drinks scald, and children and old people burn sooner (Moritz & Henriques, Am J Pathol 1947;23:695); ${SCALD_LAW}.`,
    );
  }
  if (ware.some((piece) => piece.shape === 'cup' || piece.shape === 'glass')) {
    cautions.push(
      'Throw away chipped, cracked or crazed ware (FDA Food Code 4-101 or the local code). Ask for a test of metal release (ISO 6486 or ISO 7086).',
    );
    cautions.push(
      'Stack cups on a hot machine no higher and no heavier than its manual allows: a falling stack cuts and scalds.',
    );
  }
  if (ware.some((piece) => piece.shape === 'glass'))
    cautions.push(
      'If glass breaks near ice or food, throw all of the ice or food away, empty and clean the bin, and follow the food-safety plan.',
    );
  cautions.push('These figures help you choose; they are not a guarantee.');
  return cautions;
}

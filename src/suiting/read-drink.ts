/** Reading one drink of a menu: its vessel, its paper cup, and how it is made in the house and to take away. */
import { didYouMean } from '../quantities/nearest.js';
import { FACTS } from './facts.js';
import { paperBrim } from './papers.js';
import { pourFaults } from './pour.js';
import { layerShots, readBrew, Reading } from './recipes.js';
import type {
  Paper,
  Recipe,
  Side,
  Space,
  Standing,
  SuitDrink,
  SuitWare,
  WareSheet,
} from './model.js';
import type { DrinkSection } from './schema.js';
import type { DrinkPlan, ReadInput } from './reads.js';

interface DrinkContext extends ReadInput {
  readonly all: readonly SuitWare[];
  readonly papers: readonly Paper[];
  readonly sheets: Readonly<Record<string, WareSheet>>;
  readonly roomC: number;
  readonly warmedC: number;
  readonly firstSipMin: number;
  readonly standing?: Readonly<Record<string, Standing>>;
  readonly reading: Reading;
}

/** The ware a drink is drunk from: as stated, or the first cup or glass of its setting. */
function vesselOf(drink: SuitDrink, section: DrinkSection, c: DrinkContext): SuitWare | null {
  const path = ['suit', 'drinks', drink.id, 'vessel'];
  if (section.vessel !== undefined) {
    const found = c.ware.find((ware) => ware.id === section.vessel);
    if (found === undefined && !c.all.some((ware) => ware.id === section.vessel)) {
      c.reading.refuse(
        path,
        section.vessel,
        'is not in ware',
        didYouMean(
          section.vessel,
          c.all.map((ware) => ware.id),
        ),
      );
    }
    return found ?? null;
  }
  const inSetting = drink.setting.flatMap((id) => c.ware.filter((ware) => ware.id === id));
  return (
    inSetting.find((ware) => ware.shape === 'cup' || ware.shape === 'glass') ??
    inSetting.find((ware) => ware.brimMl !== null) ??
    null
  );
}

export function readDrink(drink: SuitDrink, section: DrinkSection, c: DrinkContext): DrinkPlan {
  const path = ['suit', 'drinks', drink.id];
  const vessel = vesselOf(drink, section, c);
  let house: Side | null = null;
  // Known even where the house side has a fault, so that one fault is reported once.
  const houseRimMm =
    vessel === null || vessel.rimMm === null
      ? null
      : vessel.rimMm - 2 * c.sheets[vessel.id]!.wallMm;
  if (vessel !== null && vessel.brimMl === null) {
    c.reading.refuse(
      ['ware', vessel.id, 'brim'],
      null,
      `is not known, but ${drink.name} is served in it`,
      'fill it to the brim with water and weigh that: a gram is a millilitre',
    );
  } else if (vessel !== null && vessel.brimMl !== null) {
    const { takeaway: _, ...atHome } = section;
    house = readSide(
      drink.id,
      atHome,
      undefined,
      { brimMl: vessel.brimMl, rimInnerMm: houseRimMm },
      c,
    );
  }

  let paper: Paper | null = null;
  let takeaway: Side | null = null;
  if (section.paper !== undefined) {
    paper = c.papers.find((p) => p.id === section.paper) ?? null;
    const given = Object.keys(c.suit.papers ?? {});
    if (paper === null && !given.includes(section.paper))
      c.reading.refuse(
        [...path, 'paper'],
        section.paper,
        'is not in suit.papers',
        didYouMean(section.paper, given),
      );
  } else if (section.takeaway !== undefined) {
    c.reading.refuse(
      [...path, 'takeaway'],
      null,
      'has no paper cup',
      'name one of suit.papers as paper',
    );
  }
  const brim = paper === null ? null : paperBrim(paper);
  if (paper !== null && brim !== null) {
    takeaway = readSide(
      drink.id,
      section,
      section.takeaway ?? {},
      { brimMl: brim.brimMl, rimInnerMm: paper.rimMm ?? houseRimMm },
      c,
    );
  }

  const cup =
    section.cup ??
    (vessel !== null && c.standing?.[vessel.id]?.warmed === true ? 'warmed' : 'cold');
  const vesselC = cup === 'warmed' ? c.warmedC : typeof cup === 'number' ? cup : c.roomC;
  const firstSipMin = section.firstSip === undefined ? c.firstSipMin : section.firstSip / 60_000;
  return { drink, vessel, paper, paperBrim: brim, vesselC, firstSipMin, house, takeaway };
}

/**
 * One side of a drink. To take away it is made as in the house except for what `away` says; how far it is
 * filled is never carried over, because paper and china are filled differently.
 */
function readSide(
  id: string,
  home: DrinkSection,
  away: DrinkSection['takeaway'],
  space: Space,
  c: DrinkContext,
): Side | null {
  const { reading } = c;
  const before = reading.problems.length;
  const path = ['suit', 'drinks', id];
  const at = (field: keyof NonNullable<typeof away>): string[] =>
    away?.[field] === undefined ? [...path, field] : [...path, 'takeaway', field];
  const ownFilling = away === undefined ? path : [...path, 'takeaway'];
  const { fill, pours } = away ?? home;
  const shots = [c.suit.shot, home.shot, away?.shot];
  const brew = readBrew(
    layerShots(shots),
    shots[2] !== undefined || shots[1] !== undefined ? at('shot') : ['suit', 'shot'],
    reading,
  );
  const topUp = away?.top ?? home.top ?? 'milk';
  const foam = away?.foam ?? home.foam ?? null;
  const shotShare = away?.share ?? home.share ?? 1;
  const servedC =
    away?.served ??
    home.served ??
    reading.assume(`suit.drinks.${id}.served`, topUp === 'milk' ? 'servedC' : 'servedWaterC');
  if (fill !== undefined && pours !== undefined)
    reading.refuse(
      [...ownFilling, 'pours'],
      pours,
      'is given beside fill, which says the same',
      'give one of them',
    );
  if (!(shotShare > 0))
    reading.refuse(
      at('share'),
      shotShare,
      'is zero, but a drink takes some of the shot',
      'give a share above 0 %',
    );
  if (servedC > 100)
    reading.refuse(at('served'), servedC, 'is hotter than 100 °C', 'measure it in the cup');
  if (brew === null || reading.problems.length > before) return null;
  const filled = topUp !== 'nothing' && pours === undefined;
  const recipe: Recipe = {
    brew,
    shotShare,
    topUp,
    foam,
    servedC,
    milkFromC: c.suit.milkFrom ?? FACTS.milkFromC.value,
    airInFoam:
      c.suit.airInFoam ??
      (foam === null ? FACTS.airInFoam.value : reading.assume('suit.airInFoam', 'airInFoam')),
    fill: filled
      ? (fill ??
        reading.assume(
          [...ownFilling, 'fill'].join('.'),
          away === undefined ? 'fillCeramic' : 'fillPaper',
        ))
      : null,
    pouredMl: topUp === 'nothing' ? null : (pours ?? null),
  };
  const side = { recipe, space };
  const faults = pourFaults(side);
  for (const fault of faults) {
    const place =
      fault.field === 'fill' || fault.field === 'pours'
        ? [...ownFilling, fault.field]
        : at(fault.field);
    reading.refuse(place, fault.value, fault.rule, fault.remedy);
  }
  return faults.length === 0 ? side : null;
}

/**
 * The scenario's own words into what the checks read: every drink with its two sides, every ware with its
 * sheet, every silence filled with a fact that is named in the answer, every nonsense refused before anything is computed.
 */
import type { Fault } from '../quantities/flaw.js';
import { didYouMean } from '../quantities/nearest.js';
import { inMinor } from '../quantities/money.js';
import { FACTS } from './facts.js';
import { wareProblems } from './fit.js';
import { paperBrim } from './papers.js';
import type { PaperBrim } from './papers.js';
import { pourFaults } from './pour.js';
import { layerShots, readBrew, Reading } from './recipes.js';
import type { Assumption } from './recipes.js';
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
import type { DrinkSection, SuitSection } from './schema.js';

/** A drink with what it is drunk from, in the house and away. */
export interface DrinkPlan {
  readonly drink: SuitDrink;
  readonly vessel: SuitWare | null;
  readonly house: Side | null;
  readonly paper: Paper | null;
  readonly paperBrim: PaperBrim | null;
  readonly takeaway: Side | null;
  /** Temperature of the vessel before pouring, °C. */
  readonly vesselC: number;
  /** From pouring to the first sip, minutes. */
  readonly firstSipMin: number;
}

export interface Reads {
  readonly plans: readonly DrinkPlan[];
  /** Ware without a problem of its own. */
  readonly ware: readonly SuitWare[];
  readonly sheets: Readonly<Record<string, WareSheet>>;
  readonly papers: readonly Paper[];
  readonly roomC: number;
  readonly warmedC: number;
  readonly firstSipMin: number;
  readonly parity: number;
  readonly coffeePerKgMinor: number | null;
  readonly restIsUsed: boolean;
  readonly underSpoutMm: number | null;
  readonly easyHandle: number;
  readonly instead: Readonly<Record<string, string>>;
  readonly problems: readonly Fault[];
  readonly assumptions: readonly Assumption[];
}

export interface ReadInput {
  readonly currency: string;
  readonly staffHourMinor: number;
  readonly ware: readonly SuitWare[];
  readonly menu: readonly SuitDrink[];
  readonly suit: SuitSection;
  readonly standing?: Readonly<Record<string, Standing>>;
}

/** Reads the section against ware and menu; problems are reported all at once and what they touch is left out. */
export function readSuit(input: ReadInput): Reads {
  const { suit } = input;
  const reading = new Reading();
  reading.problems.push(...input.ware.flatMap(wareProblems));
  const sound = input.ware.filter((ware) => wareProblems(ware).length === 0);
  const roomC = suit.room ?? reading.assume('suit.room', 'roomC');
  const warmedC = suit.warmed ?? reading.assume('suit.warmed', 'warmedC');
  const firstSipMin =
    suit.firstSip === undefined
      ? reading.assume('suit.firstSip', 'firstSipMin')
      : suit.firstSip / 60_000;
  if (!(roomC > -20 && roomC < 50))
    reading.refuse(
      ['suit', 'room'],
      roomC,
      'is not a room temperature for a café',
      'give the temperature of the room, about 21 °C',
    );
  if (!(warmedC >= roomC && warmedC <= 100))
    reading.refuse(
      ['suit', 'warmed'],
      warmedC,
      'is not between room temperature and 100 °C',
      'measure a cup from the machine, about 50 °C',
    );

  const papers = readPapers(suit, reading);
  const sheets = readSheets(input, reading);
  const plans = Object.entries(suit.drinks ?? {}).flatMap(([id, section]) => {
    const drink = input.menu.find((d) => d.id === id);
    if (drink === undefined) {
      reading.refuse(
        ['suit', 'drinks', id],
        id,
        'is not on the menu',
        didYouMean(
          id,
          input.menu.map((d) => d.id),
        ),
      );
      return [];
    }
    return [
      readDrink(drink, section, {
        ...input,
        ware: sound,
        all: input.ware,
        papers,
        sheets,
        roomC,
        warmedC,
        firstSipMin,
        reading,
      }),
    ];
  });

  const known = input.ware.map((ware) => ware.id);
  for (const [from, to] of Object.entries(suit.guests?.instead ?? {})) {
    if (!known.includes(from))
      reading.refuse(
        ['suit', 'guests', 'instead', from],
        from,
        'is not in ware',
        didYouMean(from, known),
      );
    if (!known.includes(to))
      reading.refuse(
        ['suit', 'guests', 'instead', from],
        to,
        'is not in ware',
        didYouMean(to, known),
      );
    if (from === to)
      reading.refuse(
        ['suit', 'guests', 'instead', from],
        to,
        'cannot replace itself',
        'name the vessel with the easy handle',
      );
  }
  return {
    plans,
    ware: sound,
    sheets,
    papers,
    roomC,
    warmedC,
    firstSipMin,
    parity: suit.parity ?? reading.assume('suit.parity', 'parity'),
    coffeePerKgMinor: coffeePrice(input, reading),
    restIsUsed: suit.restOfShot !== 'thrown',
    underSpoutMm: suit.machine?.underSpout ?? null,
    easyHandle: suit.guests?.easyHandle ?? 0,
    instead: suit.guests?.instead ?? {},
    problems: reading.problems,
    assumptions: reading.assumptions,
  };
}

function coffeePrice(
  { suit, currency, staffHourMinor }: ReadInput,
  reading: Reading,
): number | null {
  if (suit.coffee === undefined) return null;
  if ('currency' in suit.coffee && suit.coffee.currency !== currency) {
    reading.refuse(
      ['suit', 'coffee'],
      suit.coffee.currency,
      `is not ${currency}, the scenario's currency`,
      `write the price of a kilogram in ${currency}`,
    );
    return null;
  }
  return inMinor(suit.coffee, staffHourMinor);
}

function readPapers(suit: SuitSection, reading: Reading): Paper[] {
  return Object.entries(suit.papers ?? {}).flatMap(([id, given]) => {
    const paper: Paper = {
      id,
      nominalMl: given.nominal ?? null,
      brimMl: given.brim ?? null,
      rimMm: given.rim ?? null,
      massG: given.mass ?? null,
    };
    const path = ['suit', 'papers', id];
    const size = paper.brimMl ?? paper.nominalMl;
    if (size === null) {
      reading.refuse(
        path,
        null,
        'has no size',
        'give its brim as measured with water, or the nominal size on the carton',
      );
    } else if (!(size > 0)) {
      reading.refuse(
        [...path, paper.brimMl === null ? 'nominal' : 'brim'],
        size,
        'is not above zero',
        'fill the cup to the brim and weigh the water',
      );
    } else if (
      paper.brimMl !== null &&
      paper.nominalMl !== null &&
      paper.brimMl < 0.9 * paper.nominalMl
    ) {
      reading.refuse(
        [...path, 'brim'],
        paper.brimMl,
        `is less than the size the cup is sold as (${Math.round(paper.nominalMl)} ml)`,
        'measure the brim again, or check the nominal size',
      );
    } else return [paper];
    return [];
  });
}

function readSheets(input: ReadInput, reading: Reading): Record<string, WareSheet> {
  const known = input.ware.map((ware) => ware.id);
  const given = input.suit.ware ?? {};
  for (const id of Object.keys(given)) {
    if (!known.includes(id))
      reading.refuse(['suit', 'ware', id], id, 'is not in ware', didYouMean(id, known));
  }
  return Object.fromEntries(
    input.ware.map((ware): [string, WareSheet] => {
      const sheet = Object.hasOwn(given, ware.id) ? given[ware.id] : undefined;
      const holds = ware.shape === 'cup' || ware.shape === 'glass';
      const wallMm =
        sheet?.wall ??
        (holds ? reading.assume(`suit.ware.${ware.id}.wall`, 'wallMm') : FACTS.wallMm.value);
      if (ware.rimMm !== null && 2 * wallMm >= ware.rimMm) {
        reading.refuse(
          ['suit', 'ware', ware.id, 'wall'],
          wallMm,
          'on both sides leaves no space inside the rim',
          'give the thickness of one wall',
        );
      }
      return [
        ware.id,
        {
          material:
            sheet?.material ??
            (ware.shape === 'glass' ? 'glass' : ware.shape === 'spoon' ? 'steel' : 'ceramic'),
          wallMm,
          doubleWall: sheet?.doubleWall ?? false,
          opening:
            sheet?.opening === undefined
              ? null
              : { widthMm: sheet.opening.width, heightMm: sheet.opening.height },
          inside: sheet?.inside ?? null,
          stacks: sheet?.stacks ?? null,
          safetyGlass: sheet?.safetyGlass ?? null,
          stains: sheet?.stains ?? null,
          chips: sheet?.chips ?? null,
          tests: sheet?.tests ?? [],
        },
      ];
    }),
  );
}

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

function readDrink(drink: SuitDrink, section: DrinkSection, c: DrinkContext): DrinkPlan {
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

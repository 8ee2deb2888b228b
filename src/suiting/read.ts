/**
 * The scenario's own words into what the checks read: every drink with its two sides, every ware with its
 * sheet, every silence filled with a fact that is named in the answer, every nonsense refused before anything is computed.
 */
import { didYouMean } from '../quantities/nearest.js';
import { inMinor } from '../quantities/money.js';
import { FACTS } from './facts.js';
import { wareProblems } from './fit.js';
import { Reading } from './recipes.js';
import type { Paper, WareSheet } from './model.js';
import type { SuitSection } from './schema.js';
import { readDrink } from './read-drink.js';
import type { Reads, ReadInput } from './reads.js';

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
    coffeePerKgMinor: priceOf('coffee', 'a kilogram', input, reading),
    milkPerLitreMinor: priceOf('milk', 'a litre', input, reading),
    restIsUsed: suit.restOfShot !== 'thrown',
    underSpoutMm: suit.machine?.underSpout ?? null,
    easyHandle: suit.guests?.easyHandle ?? 0,
    instead: suit.guests?.instead ?? {},
    problems: reading.problems,
    assumptions: reading.assumptions,
  };
}

function priceOf(
  key: 'coffee' | 'milk',
  unit: string,
  { suit, currency, staffHourMinor }: ReadInput,
  reading: Reading,
): number | null {
  const price = suit[key];
  if (price === undefined) return null;
  if ('currency' in price && price.currency !== currency) {
    reading.refuse(
      ['suit', key],
      price.currency,
      `is not ${currency}, the scenario's currency`,
      `write the price of ${unit} in ${currency}`,
    );
    return null;
  }
  return inMinor(price, staffHourMinor);
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

/**
 * What the tables mean, in order of consequence: one small function a kind of finding.
 */
import { CONSEQUENCES } from './answer.js';
import type { DrinkAnswer, Finding } from './answer.js';
import { FACTS } from './facts.js';
import { remedyWords } from './remedy-words.js';
import { COLOUR_NOTE } from './sheet.js';
import { celsius, percent } from './words.js';
import { hotWall, hardToHold, saucers, spout, racks, unasked } from './ware-findings.js';
import { fromReserve } from './cold-cups.js';
import { type FindingsInput, make, shareOf } from './finding.js';

/** All findings: harm first, and within a consequence what weighs most. */
export function findingsOf(all: FindingsInput): Finding[] {
  const findings = [
    ...all.drinks.flatMap((drink) => [
      ...tooHot(drink, all),
      ...notLevel(drink, all),
      ...coldSip(drink, all),
      ...fromReserve(drink, all),
      ...warmedCup(drink),
      ...oddShot(drink),
    ]),
    ...all.ware.flatMap((ware) => [
      ...hotWall(ware),
      ...hardToHold(ware, all),
      ...saucers(ware),
      ...spout(ware),
      ...racks(ware),
    ]),
    ...unasked(all.ware),
    ...easyHandles(all),
    ...unmeasured(all),
    ...colours(all),
  ];
  return findings.sort(
    (a, b) =>
      CONSEQUENCES.indexOf(a.consequence) - CONSEQUENCES.indexOf(b.consequence) ||
      b.weight - a.weight,
  );
}

function tooHot(drink: DrinkAnswer, all: FindingsInput): Finding[] {
  const [, high] = FACTS.preferredC.range;
  const found: Finding[] = [];
  const path = `suit.drinks.${drink.drink}.served`;
  if (drink.warmth !== null && drink.warmth.firstSipC > high) {
    found.push(
      make(
        'harm',
        'first-sip-hot',
        drink.drink,
        path,
        shareOf(drink, all),
        'published',
        `${drink.name}: the first sip is at ${celsius(drink.warmth.firstSipC)}. Most guests like at most ${celsius(high)}. Careful: ${drink.warmth.scald}.`,
      ),
    );
  }
  if (drink.paperFirstC !== null && drink.paperFirstC > high) {
    found.push(
      make(
        'harm',
        'paper-hot',
        drink.drink,
        path,
        shareOf(drink, all),
        'published',
        `${drink.name} to take away leaves at ${celsius(drink.paperFirstC)}, because a paper cup hardly cools it. Careful: ${drink.scaldInPaper}.`,
      ),
    );
  }
  return found;
}

function easyHandles({ drinks, ware, reads }: FindingsInput): Finding[] {
  if (reads.easyHandle <= 0) return [];
  const easy = (id: string | undefined): boolean | null =>
    ware.find((w) => w.ware === id)?.grip?.easy ?? null;
  return drinks.flatMap((drink) => {
    const vessel = drink.house?.vessel;
    if (vessel === undefined || easy(vessel) === true) return [];
    const substitute = Object.hasOwn(reads.instead, vessel) ? reads.instead[vessel] : undefined;
    const path = `suit.guests.instead.${vessel}`;
    if (substitute === undefined && easy(vessel) === false) {
      return [
        make(
          'unusable',
          'no-easy-vessel',
          drink.drink,
          path,
          reads.easyHandle,
          'assumed',
          `${drink.name}: ${percent(reads.easyHandle)} of guests need an easy handle, and no vessel replaces ${vessel} for them.`,
        ),
      ];
    }
    return substitute !== undefined && easy(substitute) === false
      ? [
          make(
            'unusable',
            'substitute-not-easy',
            drink.drink,
            path,
            reads.easyHandle,
            'assumed',
            `${drink.name}: ${substitute} replaces ${vessel}, but it is no easier to hold.`,
          ),
        ]
      : [];
  });
}

function notLevel(drink: DrinkAnswer, all: FindingsInput): Finding[] {
  const path = `suit.drinks.${drink.drink}`;
  const found: Finding[] = [];
  if (drink.ratio !== null && drink.level === false) {
    const best = drink.remedies.find((remedy) => remedy.feasible);
    const more = drink.ratio > 1 ? 'stronger' : 'weaker';
    found.push(
      make(
        'taste',
        'not-level',
        drink.drink,
        path,
        Math.abs(drink.ratio - 1) * Math.max(shareOf(drink, all), 0.01),
        'assumed',
        `${drink.name} to take away is ${percent(Math.abs(drink.ratio - 1))} ${more} than in the house (${drink.takeaway!.solidsPer100Ml.toFixed(2)} against ${drink.house!.solidsPer100Ml.toFixed(2)} g of coffee solids in 100 ml)` +
          `${best === undefined ? '. No single change within common practice makes them alike' : `. Easiest change: ${remedyWords(best, all.input.currency)}`}.`,
      ),
    );
  }
  if (drink.paperBrim?.basis === 'assumed' && drink.ratioLow !== null && drink.ratioHigh !== null) {
    const tolerance = all.reads.parity;
    const straddles =
      Math.abs(drink.ratioLow - 1) <= tolerance !== Math.abs(drink.ratioHigh - 1) <= tolerance;
    found.push(
      make(
        'unknown',
        'paper-not-measured',
        drink.drink,
        `suit.papers.${drink.takeaway!.vessel}.brim`,
        straddles ? 1 : 0.5,
        'practice',
        `${drink.name}: the paper cup ${drink.takeaway!.vessel} is not measured. By its nominal size it holds ${Math.round(drink.paperBrim.lowMl)} to ${Math.round(drink.paperBrim.highMl)} ml, so takeaway has ${percent(drink.ratioLow)} to ${percent(drink.ratioHigh)} of the strength in the house${straddles ? ', and that decides whether they taste alike' : ''}. Measure the cup with water.`,
      ),
    );
  }
  return found;
}

function coldSip(drink: DrinkAnswer, all: FindingsInput): Finding[] {
  const [low] = FACTS.preferredC.range;
  if (drink.warmth === null || drink.warmth.firstSipC >= low) return [];
  return [
    make(
      'taste',
      'first-sip-cool',
      drink.drink,
      `suit.drinks.${drink.drink}.cup`,
      shareOf(drink, all),
      'published',
      `${drink.name}: the first sip is at ${celsius(drink.warmth.firstSipC)}. Most guests like at least ${celsius(low)}. From a warmed cup it would be ${celsius(drink.warmth.firstSipWarmedC)}.`,
    ),
  ];
}

function warmedCup(drink: DrinkAnswer): Finding[] {
  if (
    drink.warmth === null ||
    drink.warmth.warmedWorthC < 2 ||
    drink.warmth.firstSipC > drink.warmth.firstSipWarmedC - 1
  )
    return [];
  const longer =
    drink.warmth.warmedWorthMin === null || drink.warmth.warmedWorthMin < 0.5
      ? ''
      : ` and keeps it at a pleasant temperature ${Math.round(drink.warmth.warmedWorthMin)} min longer`;
  return [
    make(
      'note',
      'warmed-cup',
      drink.drink,
      `suit.drinks.${drink.drink}.cup`,
      drink.warmth.warmedWorthC,
      'assumed',
      `${drink.name}: a warmed cup makes the first sip ${drink.warmth.warmedWorthC.toFixed(0)} °C hotter than a cold cup does${longer}.`,
    ),
  ];
}

function oddShot(drink: DrinkAnswer): Finding[] {
  const shot = drink.house ?? drink.takeaway;
  if (shot === null) return [];
  const odd: string[] = [];
  if (shot.extraction < 0.16 || shot.extraction > FACTS.extraction.range[1])
    odd.push(`extraction ${percent(shot.extraction)} (usual 16 to 22 %)`);
  if (shot.yieldG <= 3 * shot.doseG && (shot.tds < 0.06 || shot.tds > 0.18))
    odd.push(`TDS ${percent(shot.tds)} (usual 8 to 12 %, short shots more)`);
  return odd.length === 0
    ? []
    : [
        make(
          'note',
          'unusual-shot',
          drink.drink,
          `suit.drinks.${drink.drink}.shot`,
          0.2,
          'practice',
          `${drink.name}: ${odd.join(', ')} is outside common practice. Check the reading.`,
        ),
      ];
}

function unmeasured({ drinks, ware, reads, input }: FindingsInput): Finding[] {
  const found: Finding[] = [];
  for (const piece of ware) {
    if (piece.drinks.length === 0) continue;
    const given = input.basis?.[`ware.${piece.ware}.brim`];
    if (given !== 'measured')
      found.push(
        make(
          'unknown',
          'brim-not-measured',
          piece.ware,
          `ware.${piece.ware}.brim`,
          0.4,
          given ?? 'assumed',
          `${piece.name}: the file does not say whether its brim was measured. Strength depends on it: weigh the water it holds.`,
        ),
      );
  }
  for (const drink of drinks) {
    if (drink.house !== null && drink.warmth === null)
      found.push(
        make(
          'unknown',
          'no-heat',
          drink.drink,
          `ware.${drink.house.vessel}`,
          0.2,
          'assumed',
          `${drink.name}: to work out its heat, give mass, rim, foot and height of ${drink.house.vessel}.`,
        ),
      );
  }
  const known = new Set(reads.plans.map((plan) => plan.drink.id));
  const silent = input.menu.filter(
    (drink) =>
      !known.has(drink.id) &&
      !(input.suit.drinks !== undefined && Object.hasOwn(input.suit.drinks, drink.id)),
  );
  if (silent.length > 0) {
    found.push(
      make(
        'unknown',
        'no-recipe',
        '',
        'suit.drinks',
        silent.reduce((sum, drink) => sum + drink.share, 0),
        'assumed',
        `No recipe is given for ${silent.map((drink) => drink.name).join(', ')}, so ${silent.length === 1 ? 'its' : 'their'} strength and heat are not known.`,
      ),
    );
  }
  return found;
}

function colours({ ware }: FindingsInput): Finding[] {
  const stated = ware.some((piece) => piece.shape !== 'saucer' && piece.colour !== null);
  return stated
    ? [make('note', 'colour', '', 'ware', 0, 'published', `Colour: ${COLOUR_NOTE}.`)]
    : [];
}

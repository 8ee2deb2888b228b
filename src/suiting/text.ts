/**
 * The answer as text for a terminal: strength, heat, grip, ware, findings, what to ask.
 */
import type { DrinkAnswer, Served, SuitAnswer } from './answer.js';
import { remedyWords } from './findings.js';
import { US_FLUID_OUNCE_ML } from './papers.js';
import { columns, percent } from './words.js';

const whole = (value: number | null | undefined): string =>
  value === null || value === undefined ? '–' : String(Math.round(value));
const tenth = (value: number | null | undefined): string =>
  value === null || value === undefined ? '–' : value.toFixed(1);
const hundredth = (value: number | null | undefined): string =>
  value === null || value === undefined ? '–' : value.toFixed(2);

/** Tables that line up, then findings in order of consequence. Problems, if any, come first. */
export function suitText(answer: SuitAnswer): string {
  const parts: string[] = [];
  const part = (title: string, body: string): void => {
    if (body !== '') parts.push(`${title}\n\n${body}`);
  };
  part('Cannot be computed', answer.problems.map((problem) => `- ${problem.message}`).join('\n'));
  const made = answer.drinks.filter((drink) => drink.house !== null || drink.takeaway !== null);
  part(
    'Strength: grams of coffee solids in 100 ml of drink',
    made.length === 0 ? '' : strength(made),
  );
  part(
    'Caffeine goes with the coffee behind a drink, not with its strength',
    made.length === 0 ? '' : caffeine(made),
  );
  part(
    `To make takeaway and house alike (now further apart than ${percent(answer.parity)})`,
    remedies(answer),
  );
  const warm = answer.drinks.filter((drink) => drink.warmth !== null);
  part(
    `Heat, °C: the first sip after ${tenth(answer.firstSipMin)} min in a room at ${whole(answer.roomC)} °C (an estimate from still air)`,
    warm.length === 0 ? '' : heat(warm),
  );
  part('Ware', answer.ware.length === 0 ? '' : ware(answer));
  part(
    'Findings, gravest first',
    answer.findings.map((finding) => `- ${finding.message}`).join('\n'),
  );
  part('Vessels that might be one', merges(answer));
  part(
    'Assumed, for want of a figure in the file',
    answer.assumptions
      .map((a) => `- ${a.path}: ${a.value} ${a.unit} (${a.range[0]} to ${a.range[1]}; ${a.source})`)
      .join('\n'),
  );
  part('Cautions', answer.cautions.map((caution) => `- ${caution}`).join('\n'));
  return `${parts.join('\n\n')}\n`;
}

function strength(drinks: readonly DrinkAnswer[]): string {
  const row = (drink: DrinkAnswer, where: string, served: Served): string[] => [
    drink.name,
    where,
    served.vessel,
    whole(served.brimMl),
    tenth(served.brimMl / US_FLUID_OUNCE_ML),
    whole(served.servedMl),
    tenth(served.servedMl / US_FLUID_OUNCE_ML),
    tenth(served.doseG),
    percent(served.shotShare),
    percent(served.extraction),
    served.milkRatio === null ? '–' : `1 : ${tenth(served.milkRatio)}`,
    hundredth(served.solidsPer100Ml),
    where === 'away' ? hundredth(drink.ratio) : '',
    where === 'away' && drink.level !== null ? (drink.level ? 'alike' : 'not alike') : '',
  ];
  return columns(
    [
      'drink',
      'where',
      'vessel',
      'brim ml',
      'fl oz',
      'liquid ml',
      'fl oz',
      'dose g',
      'of shot',
      'extr.',
      'shot : top',
      'strength',
      'ratio',
      'taste',
    ],
    drinks.flatMap((drink) => [
      ...(drink.house === null ? [] : [row(drink, 'house', drink.house)]),
      ...(drink.takeaway === null ? [] : [row(drink, 'away', drink.takeaway)]),
    ]),
    [0, 1, 2, 13],
  );
}

function caffeine(drinks: readonly DrinkAnswer[]): string {
  return columns(
    ['drink', 'coffee g, house', 'coffee g, away', 'away / house'],
    drinks.map((drink) => [
      drink.name,
      tenth(drink.house?.coffeeG),
      tenth(drink.takeaway?.coffeeG),
      drink.house === null || drink.takeaway === null
        ? '–'
        : hundredth(drink.takeaway.coffeeG / drink.house.coffeeG),
    ]),
  );
}

function remedies(answer: SuitAnswer): string {
  const milk = (ml: number): string =>
    Math.abs(ml) < 0.5
      ? ''
      : `, ${whole(Math.abs(ml))} ml ${ml > 0 ? 'more' : 'less'} milk a drink`;
  const told = answer.drinks
    .filter((drink) => drink.remedies.length > 0)
    .map((drink) =>
      [
        `${drink.name}:`,
        ...drink.remedies.map(
          (remedy) =>
            `  ${remedy.feasible ? '+' : '-'} ${remedyWords(remedy, answer.currency)}${milk(remedy.milkMlADrink)}${remedy.note === '' ? '' : ` — ${remedy.note}`}`,
        ),
      ].join('\n'),
    );
  return told.length === 0
    ? ''
    : [
        ...told,
        '+ within common practice, - beyond it. Coffee is priced; milk is not, only how much more or less of it a drink takes.',
      ].join('\n');
}

function heat(drinks: readonly DrinkAnswer[]): string {
  return columns(
    [
      'drink',
      'poured',
      'vessel',
      'first sip',
      'from cold',
      'from warmed',
      'paper',
      `under ${drinks[0]!.warmth!.preferred.lowC} °C after min`,
    ],
    drinks.map(({ name, warmth, paperFirstC }) => [
      name,
      whole(warmth!.pouredC),
      whole(warmth!.vesselC),
      tenth(warmth!.firstSipC),
      tenth(warmth!.firstSipColdC),
      tenth(warmth!.firstSipWarmedC),
      whole(paperFirstC),
      warmth!.belowMin === null ? '–' : whole(warmth!.belowMin),
    ]),
  );
}

function ware(answer: SuitAnswer): string {
  return columns(
    [
      'ware',
      'brim ml',
      'fl oz',
      'mass g',
      'filled g',
      'moment N m',
      'fingers',
      'easy',
      'saucer',
      'spout mm',
      'rack',
      'wall °C',
    ],
    answer.ware.map((piece) => [
      piece.name,
      whole(piece.brimMl),
      tenth(piece.brimUsFlOz),
      whole(piece.massG),
      whole(piece.grip?.filledG),
      hundredth(piece.grip?.momentNm),
      whole(piece.grip?.fingers),
      piece.grip === null ? '–' : piece.grip.easy === null ? '?' : piece.grip.easy ? 'yes' : 'no',
      piece.saucers.length === 0 ? '–' : piece.saucers.map((fit) => fit.verdict).join(', '),
      piece.spout === null ? '–' : whole(piece.spout.spareMm),
      piece.rack === null ? '–' : String(piece.rack.pieces),
      whole(piece.outerWallC),
    ]),
    [0, 8],
  );
}

function merges(answer: SuitAnswer): string {
  return answer.merges
    .map((merge) => {
      const gain = answer.pooling.find((g) => g.keep === merge.keep && g.drop === merge.drop);
      const saved = gain === undefined ? '' : `: ${gain.pooled} pieces instead of ${gain.apart}`;
      const mind = merge.mind.length === 0 ? '' : ` (${merge.mind.join('; ')})`;
      return `- ${merge.keep} for ${merge.drop} too${saved}${mind}`;
    })
    .join('\n');
}

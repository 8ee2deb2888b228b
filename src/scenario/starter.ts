/**
 * A starter: a commented scenario file from a few answers, to be corrected by its owner.
 */
import { starterWare, vessels, type StarterDrink } from './starter-drinks.js';
import { clockText, type StarterAnswers } from './starter-questions.js';
import { busiestAt, partsOf, shapes, type ShapeId } from './starter-shapes.js';

/** How numbers, times and money are written where a currency is used, in English. */
const LOCALES: Readonly<Record<string, string>> = {
  EUR: 'en-IE',
  GBP: 'en-GB',
  USD: 'en-US',
  AUD: 'en-AU',
  NZD: 'en-NZ',
  CAD: 'en-CA',
  ZAR: 'en-ZA',
  INR: 'en-IN',
  SGD: 'en-SG',
  CHF: 'en-CH',
};
const OTHER_LOCALE = 'en-GB';

/** Standard deviation of a stay as a share of its mean; as in the stays that are common. */
const STAY_SPREAD = 0.44;

/** Whole percentages in proportion to weights that add up to 100. */
function percentages(weights: readonly number[]): number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const exact = weights.map((weight) => (100 * weight) / sum);
  const floors = exact.map(Math.floor);
  const missing = 100 - floors.reduce((total, share) => total + share, 0);
  const byRemainder = exact
    .map((share, i) => [share - floors[i]!, i] as const)
    .toSorted((a, b) => b[0] - a[0] || a[1] - b[1]);
  for (const [, i] of byRemainder.slice(0, missing)) floors[i]!++;
  return floors;
}

/** "busiest about 08:30 (morning: one rush that ...)" */
export function shapeSentence({ shape, from, to }: StarterAnswers): string {
  return `busiest about ${clockText(nearestQuarter(busiestAt(shape, from, to)))} (${shapes[shape].name}: ${shapes[shape].about})`;
}

const nearestQuarter = (minutes: number): number => Math.min(1425, Math.round(minutes / 15) * 15);

const otherShapes = (shape: ShapeId, from: number, to: number): string =>
  (Object.keys(shapes) as ShapeId[])
    .filter((one) => one !== shape)
    .map((one) => `    # ${one}: shape: [${partsOf(one, from, to).join(', ')}]`)
    .join('\n');

/** The family that cups, saucers and spoons have in common where they share a rack. */
const SHARED = 'china';
const GLASSES = ['small-glass', 'latte-glass', 'tumbler'];
const CUPS = ['espresso-cup', 'small-cup', 'medium-cup', 'large-cup', 'mug'];

function wareLine(id: string, { shareRacks, cupPrice, currency }: StarterAnswers): string {
  const [like, more, note] = starterWare[id]!;
  const family = shareRacks && !GLASSES.includes(id) ? `, family: ${SHARED}` : '';
  const price = cupPrice !== null && CUPS.includes(id) ? `, price: ${cupPrice} ${currency}` : '';
  return `  ${id}: { like: ${like}${more}${family}${price} }${note === '' ? '' : `   # ${note}`}`;
}

function drinkLines({ id, name, vessel, makingS }: StarterDrink, share: number): string {
  return [
    `  ${id}:`,
    `    name: ${JSON.stringify(name)}`,
    `    share: ${share} %`,
    `    setting: [${vessels[vessel].setting.join(', ')}]`,
    `    fallBacks: [takeaway]`,
    `    making: about ${makingS} s`,
  ].join('\n');
}

/** YAML text of a scenario with these answers. Pure. */
export function starter(answers: StarterAnswers): string {
  const { currency, from, to, shape, dwell, machine, shareRacks } = answers;
  const shares = percentages(answers.menu.map(({ weight }) => weight));
  const used = new Set<string>(answers.menu.flatMap(({ vessel }) => vessels[vessel].setting));
  const ware = Object.keys(starterWare).filter((id) => used.has(id));
  const makers = Math.max(1, Math.ceil(answers.guests / 60));

  return `# A first description of your café. Correct what is wrong and leave out what you do not know:
# a usual figure of the trade is then used, and the report says so.
# Any value may also say what it is based on:
#   staysIn: { value: 40 %, basis: measured, range: [35 %, 45 %], source: "counted on three mornings" }

name: ${JSON.stringify(answers.name)}
currency: ${currency}
locale: ${LOCALES[currency] ?? OTHER_LOCALE}              # how numbers, times and money are written
staffHour: ${answers.staffHour} ${currency}          # what one hour of staff costs with all charges
level: 95 %                # share of busy times in which nothing may run out
hours: { from: "${clockText(from)}", to: "${clockText(to)}" }

arrivals:
  peak:
    guests: ${answers.guests} / h       # in the busiest hour, takeaway included
    # How guests spread over equal parts of the hours; only the proportions count.
    # ${shape}: ${shapes[shape].about}
    shape: [${partsOf(shape, from, to).join(', ')}]
${otherShapes(shape, from, to)}

guests:
  staysIn: ${Number((answers.stay * 100).toPrecision(6))} %            # the rest take their drinks away, in paper cups
${
  dwell === null
    ? '  # dwell: 40 min          # how long guests stay after they get their drinks; time a few tables'
    : `  # How long guests stay after they get their drinks; time a few tables.
  dwell: { lognormal: { mean: ${dwell} min, sd: ${Math.max(0.1, Math.round(dwell * STAY_SPREAD * 10) / 10)} min } }`
}

# share: of all drinks ordered. setting: the pieces a drink takes from the shelf.
# fallBacks: what you do when a piece is missing; takeaway is a paper cup.
menu:
${answers.menu.map((drink, i) => drinkLines(drink, shares[i]!)).join('\n')}

# like: a class of ware; its usual values fill in what is not given here. Give what you know, for example
#   medium-cup: { like: medium-cup, price: 5 ${currency}, rim: 88 mm, perRack: 16 }
# family: pieces of one family share racks.
ware:
${ware.map((id) => wareLine(id, answers)).join('\n')}
${shareRacks ? `\nracks:\n  families: { ${SHARED}: open }   # the kind of rack each family is washed in\n` : ''}
seats:
  count: ${answers.seats}
  whenFull: wait           # or leave, or takeaway

counter:
  makers: ${makers}                # people who make drinks at the same time

clearing:
  every: about 10 min      # how often somebody goes round the room; or write  clearing: atOnce
  clearers: 1

washing:
  machines:                # better: time ten loads, and give loading, cycle and unloading
${Array.from({ length: machine.count }, () => `    - class: ${machine.class}`).join('\n')}
  hands: 1                 # how many people load and unload; or clearers, or makers
  partLoadWait: about 6 min # a rack that is not full is started when its first piece has waited this long
  # otherLoads: { racks: 6 / h }   # racks of plates and pans washed in the same dishwasher
`;
}

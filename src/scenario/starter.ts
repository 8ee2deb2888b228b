/**
 * A starter: a commented scenario file from a few answers, to be corrected by its owner.
 */

interface TemplateDrink {
  readonly name: string;
  readonly setting: readonly string[];
  readonly fallBacks: readonly (readonly string[] | 'takeaway')[];
  readonly making: string;
  /** How much of it is ordered beside the others, before the owner corrects it. */
  readonly weight: number;
}

const underCup = ['saucer', 'teaspoon'];

/** Drinks a starter can put on the menu; weights and times are common practice, no source. */
const drinks: Readonly<Record<string, TemplateDrink>> = {
  espresso: {
    name: 'Espresso',
    setting: ['espresso-cup', 'small-saucer', 'teaspoon'],
    fallBacks: ['takeaway'],
    making: '30 s',
    weight: 10,
  },
  'flat-white': {
    name: 'Flat white',
    setting: ['medium-cup', ...underCup],
    fallBacks: ['takeaway'],
    making: '55 s',
    weight: 28,
  },
  cappuccino: {
    name: 'Cappuccino',
    setting: ['medium-cup', ...underCup],
    fallBacks: ['takeaway'],
    making: '55 s',
    weight: 22,
  },
  latte: {
    name: 'Latte',
    setting: ['large-cup', ...underCup],
    fallBacks: ['takeaway'],
    making: '60 s',
    weight: 18,
  },
  'black-coffee': {
    name: 'Black coffee',
    setting: ['medium-cup', ...underCup],
    fallBacks: ['takeaway'],
    making: '40 s',
    weight: 14,
  },
  tea: {
    name: 'Tea',
    setting: ['mug', 'teaspoon'],
    fallBacks: ['takeaway'],
    making: '25 s',
    weight: 12,
  },
  'hot-chocolate': {
    name: 'Hot chocolate',
    setting: ['mug', 'teaspoon'],
    fallBacks: ['takeaway'],
    making: '50 s',
    weight: 8,
  },
  'iced-coffee': {
    name: 'Iced coffee',
    setting: ['tumbler', 'teaspoon'],
    fallBacks: ['takeaway'],
    making: '50 s',
    weight: 8,
  },
  juice: {
    name: 'Juice',
    setting: ['tumbler'],
    fallBacks: ['takeaway'],
    making: '20 s',
    weight: 8,
  },
};

/** What the pieces of the drinks above are like, and a word on each. */
const wareOf: Readonly<Record<string, readonly [like: string, note: string]>> = {
  'espresso-cup': ['espresso-cup', ''],
  'small-saucer': ['saucer', 'for the espresso cup'],
  'medium-cup': ['medium-cup', ''],
  'large-cup': ['large-cup', ''],
  mug: ['mug', 'needs no saucer'],
  tumbler: ['tumbler', ''],
  saucer: ['saucer', 'one saucer for all larger cups; name another if yours differ'],
  teaspoon: ['teaspoon', ''],
};

/** Ids of the drinks a starter knows. */
export const starterDrinks: readonly string[] = Object.keys(drinks);

/** How a morning and a brunch are spread over equal parts of the hours. */
const shapes = {
  morning: [3, 5, 7, 9, 11, 13, 13, 11, 9, 7, 6, 6],
  later: [1.2, 2.6, 3.2, 4.7, 5.5, 6.3, 5.4, 7.7, 8.9, 8.5, 8.9, 8.0, 8.1, 6.6, 7.2, 7.2],
};

export interface StarterAnswers {
  readonly name: string;
  readonly seats: number;
  /** Guests in the busiest hour, those who take their drink along included. */
  readonly guestsPeakHour: number;
  /** Opening and closing of the rush, "07:00". */
  readonly from: string;
  readonly to: string;
  /** Share of guests who stay, 0..1. */
  readonly staysIn: number;
  /** Some of `starterDrinks`. */
  readonly menu: readonly string[];
  /** ISO 4217. */
  readonly currency: string;
  /** What a staff hour costs, in whole units of the currency ("22.50"). */
  readonly staffHour: string;
}

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

const settingText = (setting: readonly string[] | 'takeaway'): string =>
  setting === 'takeaway' ? setting : `[${setting.join(', ')}]`;

/**
 * YAML text of a scenario with these answers. Answers go in as they are: reading the text back tells
 * which of them is not valid. Throws a RangeError for a drink that is not one of `starterDrinks`.
 */
export function starter(answers: StarterAnswers): string {
  const chosen = [...new Set(answers.menu)].map((id) => {
    if (!Object.hasOwn(drinks, id))
      throw new RangeError(
        `no starter drink is called "${id}"; there are ${starterDrinks.join(', ')}`,
      );
    return [id, drinks[id]!] as const;
  });
  const shares = percentages(chosen.map(([, { weight }]) => weight));
  const used = new Set(chosen.flatMap(([, { setting }]) => setting));
  const menu = chosen.map(([id, drink], i) =>
    [
      `  ${id}:`,
      `    name: ${drink.name}`,
      `    share: ${shares[i]} %`,
      `    setting: ${settingText(drink.setting)}`,
      `    fallBacks: [${drink.fallBacks.map(settingText).join(', ')}]`,
      `    making: ${drink.making}`,
    ].join('\n'),
  );
  const ware = Object.keys(wareOf)
    .filter((id) => used.has(id))
    .map(
      (id) =>
        `  ${id}: { like: ${wareOf[id]![0]} }${wareOf[id]![1] === '' ? '' : `   # ${wareOf[id]![1]}`}`,
    );
  const shape = answers.from < '09:00' ? shapes.morning : shapes.later;
  const makers = Math.max(1, Math.ceil(answers.guestsPeakHour / 60));

  return `# A first description of the café. Correct what is not so; leave out what you do not know:
# a figure that is common in the trade then takes its place, and the report says so.
# Any value may also tell what it rests on:
#   staysIn: { value: 40 %, basis: measured, range: [35 %, 45 %], source: "counted on three mornings" }

name: ${JSON.stringify(answers.name)}
currency: ${answers.currency}
staffHour: ${answers.staffHour} ${answers.currency}   # what one hour of staff costs with all charges
level: 95 %                # share of rushes in which nothing may run out
hours: { from: ${JSON.stringify(answers.from)}, to: ${JSON.stringify(answers.to)} }

arrivals:
  peak:
    guests: ${answers.guestsPeakHour} / h   # in the busiest hour, takeaway included
    # How the rush is spread over equal parts of the hours; only the proportions count.
    shape: [${shape.join(', ')}]

guests:
  staysIn: ${Number((answers.staysIn * 100).toPrecision(6))} %            # the rest takes away, in paper cups
  # dwell: 40 min          # how long guests stay once they have their drinks; time a few tables

# share: of all drinks ordered. setting: the pieces a drink takes from the shelf.
# fallBacks: what you do when a piece is missing; takeaway is a paper cup.
menu:
${menu.join('\n')}

# like: a class of ware that lends what is not given here. Give what you know, for example
#   medium-cup: { like: medium-cup, price: 5 ${answers.currency}, rim: 88 mm, perRack: 16 }
ware:
${ware.join('\n')}

seats:
  count: ${answers.seats}
  whenFull: wait           # or leave, or takeaway

counter:
  makers: ${makers}                # people who make drinks at the same time

clearing:
  every: 10 min            # a round through the room; or write  clearing: atOnce
  clearers: 1

washing:
  machines:
    - class: undercounter  # or hood; time ten loads and give loading, cycle and unloading
  hands: 1                 # who load and unload: a number, or clearers, or makers
  partLoadWait: 6 min      # a rack that is not full goes once its first piece has waited so long
  # otherLoads: { racks: 6 / h }   # racks of plates and pans that go through the same machine
`;
}

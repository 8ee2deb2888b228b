/** Words of the answer: the sentence, its table, and the facts under it. Arguments are ready-made text. */

const plurals: Readonly<Record<string, string>> = {
  cup: 'cups',
  mug: 'mugs',
  glass: 'glasses',
  tumbler: 'tumblers',
  saucer: 'saucers',
  spoon: 'spoons',
  teaspoon: 'teaspoons',
  plate: 'plates',
  bowl: 'bowls',
  jug: 'jugs',
  beaker: 'beakers',
  goblet: 'goblets',
  tray: 'trays',
  bottle: 'bottles',
  fork: 'forks',
};
const plainAdjectives = new Set([
  'small',
  'medium',
  'large',
  'espresso',
  'straight',
  'tapered',
  'tall',
  'short',
  'tea',
  'coffee',
  'water',
  'latte',
  'cappuccino',
  'dessert',
  'double',
  'single',
]);

/** "48 medium cups"; a name whose plural is not known stays as it is: "48 × Name". */
function pieces(count: string, name: string, one: boolean): string {
  const parts = name.split(' ');
  const last = parts.at(-1)!.toLowerCase();
  const first = parts[0]!.toLowerCase();
  const plural = Object.hasOwn(plurals, last) ? plurals[last] : undefined;
  if (plural === undefined) return `${count} × ${name}`;
  const head = parts.slice(0, -1);
  if (head.length === 0 || plainAdjectives.has(first)) head[0] = head.length === 0 ? '' : first;
  return `${count} ${[...head.filter((part) => part !== ''), one ? last : plural].join(' ')}`;
}

const stage = (what: string): string =>
  ({
    machines: 'the washing machines',
    makers: 'the people making drinks',
    clearers: 'the people clearing',
    hands: 'the hands at the wash',
  })[what] ?? what;

export const answerWords = {
  pieces,
  to: (low: string, high: string): string => `${low} to ${high}`,
  manyPieces: (count: string, kinds: string): string =>
    `${count} pieces of ${kinds} kinds of ware (listed below)`,
  certified: (
    stock: string,
    cost: string,
    level: string,
    low: string,
    high: string,
    confidence: string,
  ): string =>
    `Buy ${stock} for ${cost}: in ${level} of rushes nothing then runs out (tried on fresh days; ${confidence} interval ${low} to ${high}).`,
  uncertified: (stock: string, cost: string, level: string): string =>
    `Buy ${stock} for ${cost}: on the listed days nothing then runs out in at least ${level} of rushes, which days to come need not keep to.`,
  given: (stock: string, level: string, low: string, high: string, confidence: string): string =>
    `With ${stock}, nothing runs out in ${level} of rushes (${confidence} interval ${low} to ${high}).`,
  nothing: 'No ware is needed: no drink on the menu is served in any.',
  promiseMissed: (level: string): string => `That misses the ${level} asked for.`,
  promiseUnsure: (level: string): string =>
    `That is as good as the ${level} asked for, which lies within the interval.`,
  promiseKept: (level: string): string => `That is better than the ${level} asked for.`,
  fillRate: (share: string): string =>
    `${share} of drinks to stay in are served at once in the ware wanted.`,

  ware: 'Ware',
  piecesHead: 'Pieces',
  perSeat: 'a seat',
  rule: 'Rule of\nthumb',
  alone: 'If promised\nalone',
  interval: '95%\ninterval',
  unitCost: 'Cost\na piece',
  cost: 'Cost',
  total: 'Total',
  none: '–',
  allOfKind: {
    cup: 'all cups',
    glass: 'all glasses',
    saucer: 'all saucers',
    spoon: 'all spoons',
    plate: 'all plates',
    other: 'all others',
  },
  atLeast: (low: string): string => `${low} or more`,
  atMost: (high: string): string => `up to ${high}`,
  notes: [
    'Pieces are chosen together, so that no ware at all runs out; "if promised alone" is what a ware would need if the others did not matter, with the 95% interval of that figure.',
    'Rule of thumb: cups 3.0 and saucers 1.5 a seat, teaspoons 1.2 to 1.5 a saucer (common practice, no source).',
  ],

  dayHead: 'On a mean day',
  busyHead: 'Busy in opening hours',
  busyOf: {
    machines: 'Washing machines',
    makers: 'People making drinks',
    seats: 'Seats',
    clearers: 'People clearing',
    hands: 'Hands at the wash',
  },
  unlimited: 'no limit set',
  served: 'Guests served',
  seated: 'of these, sat down',
  tookAway: 'of these, took away',
  turnedAway: 'Guests turned away from a seat',
  left: 'of these, left',
  takeawayInstead: 'of these, took away instead',
  counterWait: 'Mean wait of a drink to be made',
  loads: 'Loads washed, of all ware',
  racks: 'Racks of our ware washed',
  rackFill: 'Mean fill of a rack',
  aDay: 'a day',

  stockHead: 'With this stock',
  rushLevel: 'Rushes in which nothing runs out',
  fillRateRow: 'House drinks served at once in the ware wanted',
  shortOf: (name: string): string => `Drinks short of ${name}`,
  firstShort: 'First shortage, on a day with one',
  firstShortAt: (median: string, earliest: string): string =>
    `half before ${median}, the earliest at ${earliest}`,
  noShort: 'none',

  tightest: (name: string, time: string): string =>
    `The tightest moment: ${name} at ${time}, on the day nearest to the level asked for. Where the pieces were:`,
  off: 'Off the\nshelf',

  overload: (what: string, load: string, from: string, would: string): string =>
    `More work than capacity: in the busiest hour ${stage(what)} get ${load} of what they can do, and fall behind from ${from}. More ware only buys time; ${would} would do.`,
  stage,
  warningsHead: 'Mind',
  warningAt: (message: string, path: string): string =>
    path === '' ? message : `${message} (${path})`,
  days: (chosen: string, certified: string, seed: string): string =>
    `Chosen on ${chosen} simulated days, tried on ${certified} fresh ones; seed ${seed}.`,
  daysListed: (chosen: string): string =>
    `Worked out on ${chosen} listed days; not tried on fresh ones.`,
  daysGiven: (count: string, seed: string): string =>
    `Tried on ${count} simulated days; seed ${seed}.`,
  informs: 'This informs a purchase; it certifies nothing.',
};

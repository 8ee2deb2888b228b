/** Words of the answer: the lead, its tables, and the facts under them. Arguments are ready-made text. */

/** How a backlog is named: who or what, and one more of them. */
const STAGES: Readonly<Record<string, { readonly who: string; readonly them: string }>> = {
  machines: { who: 'The dishwashers', them: 'dishwashers' },
  makers: { who: 'The people making drinks', them: 'people making drinks' },
  clearers: { who: 'The people clearing tables', them: 'people clearing tables' },
  hands: { who: 'The dishwashing staff', them: 'people at the dishwasher' },
};

export const sizeWords = {
  manyPieces: (count: string, kinds: string): string => `${count} pieces of ${kinds} kinds`,
  have: (stock: string, cost: string): string => `Have ${stock} clean when you open (${cost}).`,
  /** @param spend what is still to buy costs, beside what is there already */
  haveSome: (stock: string, buy: string, spend: string): string =>
    `Have ${stock} clean when you open. ${buy === '' ? 'You own all of it.' : `Buy ${buy} on top of what you own (${spend}).`}`,
  with: (stock: string): string => `You have ${stock} clean when you open.`,
  withPlenty: (stock: string): string =>
    `You gave no number for some items, so we took as many of them as the busiest day needs: ${stock} in all.`,
  /** Why nothing is needed, by what was seen. */
  nothing: {
    noGuests: 'You need no cups, glasses or spoons: no guest came on any of the days tested.',
    turnedAway:
      'You need no cups, glasses or spoons: every guest was turned away. Check the seats and the party sizes.',
    paper:
      'You need no cups, glasses or spoons: every drink went out in a paper cup. Check the share staying in and what the drinks are served in.',
    noSeat:
      'You need no cups, glasses or spoons: some guests got no seat, and every drink that was served went out in a paper cup. Check the seats, the party sizes and the share staying in.',
  },
  /** @param days "mornings", "days", "rushes" */
  often: (of: string, days: string): string => `On ${of} ${days} nothing will run out.`,
  about: (count: string, all: string): string => `about ${count} of ${all}`,
  always: (days: string): string => `On all ${days} tested, nothing ran out.`,
  never: (days: string): string => `On all ${days} tested, something ran out.`,
  moreThan: (count: string, all: string): string => `more than ${count} of ${all}`,
  fewerThan: (count: string, all: string): string => `fewer than ${count} of ${all}`,
  listed: (level: string, days: string): string =>
    days === '1'
      ? 'On the one day in your file, nothing runs out.'
      : `On at least ${level} of the ${days} days in your file, nothing runs out.`,
  days: { morning: 'mornings', afternoon: 'afternoons', evening: 'evenings', day: 'days' },
  noClock: 'rushes',
  measured: (days: string, level: string, low: string, high: string, confidence: string): string =>
    `Measured on ${days} simulated days: nothing ran out on ${level} of them (${confidence} interval: ${low} to ${high}).`,
  measuredFresh: (
    days: string,
    level: string,
    low: string,
    high: string,
    confidence: string,
  ): string =>
    `Measured on ${days} simulated days that played no part in the choice: nothing ran out on ${level} of them (${confidence} interval: ${low} to ${high}).`,
  notMeasured: 'Other days may need more: this stock was not tested on any but those in your file.',
  levelMissed: (level: string): string => `This is less than the ${level} you asked for.`,
  levelWithin: (level: string, under: string, over: string): string =>
    `This meets the ${level} you asked for within the margin of error: the true share may be up to ${under} percentage points below it or up to ${over} above it.`,
  assured: (level: string, days: string, confidence: string): string =>
    `On at least ${level} of ${days} nothing will run out: that is ${confidence} sure.`,
  measuredSure: (days: string, level: string, low: string, confidence: string): string =>
    `Measured on ${days} simulated days that played no part in the choice: nothing ran out on ${level} of them, so the true share is ${low} or more (${confidence} sure).`,
  tries: (count: string): string =>
    `We tried ${count} stocks until one passed; that figure allows for the chance that one passes by luck.`,
  notAssured: (level: string): string => `The ${level} you asked for could not be assured.`,
  levelBeaten: (level: string): string => `This is better than the ${level} you asked for.`,
  kinds: {
    /** @param name of a kind of day, as the file has it */
    daysOf: (name: string): string => `days of the kind “${name}”`,
    every: 'days of every kind',
    others: 'On every other kind of day it holds at least as often.',
    rush: (name: string): string =>
      `What follows is a day of the kind “${name}”, on which the stock has least to spare.`,
    caption: 'How often nothing runs out, by kind of day',
    kind: 'Kind of day',
    daysAYear: 'Days\na year',
    safe: 'Nothing runs\nout on',
    interval: '95\u00A0%\ninterval',
    guests: 'Guests\na day',
    loads: 'Loads\na day',
  },
  fillRate: (share: string): string =>
    `${share} of drinks served in house get the right cup or glass at once.`,

  /** Under the table, where prices are filled in. */
  usualPrices: (items: string): string =>
    `The file gives no price for ${items}: what is printed is what such ware usually costs (assumed).`,
  noPrices:
    'The file gives no prices of ware: those printed are what such ware usually costs (assumed).',
  quotedPrices: 'The order sheet works with the prices of your suppliers.',

  orderCaption: 'What to have clean at opening',
  givenCaption: 'The stock that was tested',
  item: 'Item',
  pieces: 'Pieces',
  owned: 'You have',
  toBuy: 'To buy',
  perSeat: 'Per seat',
  rule: 'Rule of\nthumb',
  alone: 'Needed for\nthis item alone',
  interval: '95\u00A0%\ninterval',
  unitCost: 'Cost\neach',
  cost: 'Cost',
  total: 'Total',
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
    'The pieces are chosen together, so that nothing runs out. “Needed for this item alone” is what an item would need if running out of the others did not matter; the 95\u00A0% interval belongs to that figure.',
    'Rules of thumb: 3 cups and 1.5 saucers per seat, 1.2 to 1.5 teaspoons per saucer (common practice, no source).',
  ],

  rushHead: 'What the rush looks like',
  what: 'What',
  onAverage: 'On average',
  dayCaption: 'An average day',
  busyCaption: 'How busy everyone is during opening hours',
  busyShare: 'Share of the time',
  busyOf: {
    machines: 'Dishwashers',
    makers: 'People making drinks',
    seats: 'Seats',
    clearers: 'People clearing tables',
    hands: 'Dishwashing staff',
  },
  unlimited: 'no limit set',
  served: 'Guests served',
  seated: 'of these, in house',
  tookAway: 'of these, took away as planned',
  tookAwayInstead: 'of these, took away because no seat was free',
  left: 'Guests who left because no seat was free',
  counterWait: 'Average wait before a drink is made',
  loads: 'Dishwasher loads',
  loadsWithFood: 'Dishwasher loads, plates and pans included',
  racks: 'Racks of cups, saucers, glasses and cutlery washed',
  rackFill: 'How full an average rack is',
  aDay: 'a day',
  loopCaption: 'Average time off the shelf',

  stockCaption: 'How this stock does',
  rushLevel: (days: string): string => `Share of ${days} on which nothing runs out`,
  fillRateRow: 'Drinks in house served at once in the right cup or glass',
  shortOf: (name: string): string => `Drinks short of ${name}`,
  firstShort: 'First shortage, on a day with one',
  firstShortAt: (median: string, earliest: string): string =>
    `half of them by ${median}, the earliest at ${earliest}`,
  noShort: 'none',

  tightestCaption: 'Where the pieces are at the tightest moment',
  tightest: (name: string, time: string): string =>
    `The tightest moment is ${time}: “${name}” then comes closest to running out. It is taken from one of the busiest days that the stock must still carry at the level you asked for.`,
  noneTight: 'No piece leaves the shelf.',
  off: 'Not on the shelf',

  overload: (what: string, load: string, from: string, would: string): string => {
    const { who, them } = STAGES[what] ?? { who: what, them: what };
    return `${who} cannot keep up: in the busiest hour they face ${load} of the work they can do, and they fall behind from ${from}. More cups only delay the problem; ${would} ${them} would keep up.`;
  },
  warningsHead: 'Before you buy',
  warningAt: (message: string, path: string): string =>
    path === '' || message.includes(path) ? message : `${message} (${path})`,

  methodHead: 'How this was worked out',
  daysRun: (chosen: string, certified: string, seed: string): string =>
    `Chosen on ${chosen} simulated days and tested on ${certified} others; seed ${seed}.`,
  daysListed: (chosen: string): string =>
    `Worked out on the ${chosen === '1' ? 'one day' : `${chosen} days`} in your file, and not tested on others.`,
  daysGiven: (count: string, seed: string): string =>
    `Tested on ${count} simulated days; seed ${seed}.`,
  informs: 'This helps you decide what to buy; it is not a guarantee.',
};

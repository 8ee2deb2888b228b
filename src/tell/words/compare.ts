import { compareChartWords } from './compare-charts.js';

/** Words of the comparison. */
export const compareWords = {
  details: 'The rush, pieces, money by part, and which level to buy',
  head1: 'More cups, another machine or another habit?',
  best: (sentence: string): string => `Recommended – ${sentence}`,
  thenBest: (sentence: string, difference: string, years: string): string =>
    `Then, recommended – ${sentence} Compared after the change of habit, it is ${difference} over ${years} years.`,
  bestIsBase:
    'Buy nothing else: none of the choices below is sure to cost less than your café as it is.',
  habitOnly: 'Beyond that, buy nothing: no choice below is sure to save money on top of it.',
  asGood: (best: string, names: string): string =>
    `In money, ${names} may do as well as ${best}: choose by what else matters to you.`,
  /** @param does what the habit saves and takes, "saves 9 staff minutes a day, but ..." */
  habitsFirst: (
    habits: string,
    does: string,
    saves: string,
    low: string,
    high: string,
    years: string,
  ): string =>
    `First change a habit: ${habits}. In your café as it is, that ${does}. It pays: ${saves} less over ${years} years (${low} to ${high}).`,
  /** Waits and fillings that are an end of what was tried. */
  tried: {
    longest: ' (the longest we tried)',
    shortest: ' (the shortest we tried)',
    fullest: ' (the fullest we tried)',
  },
  waiting: (minutes: string): string => `let a rack that is not full wait ${minutes}`,
  /** @param share how full, "90 % full" */
  fullFirst: (share: string, minutes: string): string =>
    `start a rack that is not full only once it is ${share} and has waited ${minutes}`,
  levelFirst: (level: string, chosen: string, ware: string, saves: string, short: string): string =>
    `Consider a level of ${level} in place of ${chosen}: the pieces cost ${ware} more now, but you save ${saves} a year in all, if each drink without its cup costs you ${short} (assumed unless you gave it).`,
  levelLess: (level: string, chosen: string, ware: string, saves: string, short: string): string =>
    `Consider a level of ${level} in place of ${chosen}: the pieces cost ${ware} less now, and you save ${saves} a year in all, if each drink without its cup costs you ${short} (assumed unless you gave it).`,
  saves: 'saves',
  takes: 'takes',
  needs: 'needs',
  costs: 'costs',
  andCosts: (gains: string, costs: string): string => `${gains}, but ${costs}`,
  pieces: (count: string, one: boolean, money: string): string =>
    `${count} ${one ? 'piece' : 'pieces'} (${money})`,
  morePieces: (count: string, one: boolean, money: string): string =>
    `${count} more ${one ? 'piece' : 'pieces'} (${money})`,
  staffADay: (minutes: string, one: boolean): string =>
    `${minutes} staff ${one ? 'minute' : 'minutes'} a day`,
  moreStaffADay: (minutes: string, one: boolean): string =>
    `${minutes} more staff ${one ? 'minute' : 'minutes'} a day`,
  wareAlone: (money: string): string => `${money} of pieces`,
  moneyNow: (money: string): string => `${money} now`,
  racksNow: (money: string): string => `${money} of racks`,
  moneyAYear: (money: string): string => `${money} a year`,
  changesLittle: 'changes next to nothing',
  savesNothing: (costs: string): string => `saves nothing, and ${costs}`,
  said: {
    cheaper: (amount: string, low: string, high: string, years: string): string =>
      `it pays: ${amount} less over ${years} years (${low} to ${high})`,
    moreCups: (amount: string, low: string, high: string, years: string): string =>
      `more cups win: it costs ${amount} more over ${years} years (${low} to ${high})`,
    dearer: (amount: string, low: string, high: string, years: string): string =>
      `it does not pay: ${amount} more over ${years} years (${low} to ${high})`,
    alike: (amount: string, years: string): string =>
      `no difference that matters to you (within ${amount} over ${years} years)`,
    nothing: (years: string): string => `it makes no difference in money over ${years} years`,
    open: (from: string, to: string, years: string): string =>
      `too close to call: between ${from} and ${to} over ${years} years. More simulated days might settle it; or choose by what else you like about it`,
    habits: (now: string, off: string, when: string, years: string): string =>
      `too close to call: over ${years} years ${now} with your habits as they are, but ${off} ${when}. Decide on that habit first, then ask again`,
    habitsAtBest: (now: string, best: string, years: string): string =>
      `too close to call: over ${years} years ${now} with your habits as they are, but ${best} once both have their best habits. First decide when racks that are not full are washed, then ask again`,
    staffPays: (worth: string): string =>
      `it pays only if the minutes it saves are worth more than ${worth} an hour to you`,
    staffCosts: (worth: string): string =>
      `it pays only if the minutes it takes are worth less than ${worth} an hour to you`,
  },
  less: (amount: string): string => `${amount} less`,
  more: (amount: string): string => `${amount} more`,
  when: {
    rounds: (more: boolean): string => `with a fifth ${more ? 'more' : 'less'} time between rounds`,
    waits: (more: boolean): string =>
      `with racks that are not full waiting a fifth ${more ? 'longer' : 'shorter'}`,
    fill: (more: boolean): string => `with racks started a fifth ${more ? 'fuller' : 'emptier'}`,
  },
  withinHabits: 'changing the habits above already does this',
  neverPays: 'no price makes it pay: what it saves does not cover installing and running it',
  itWouldPay: 'it would pay only',
  atItsPrice: 'at its present price it would pay only',
  ifPrice: (price: string): string => `at a price of ${price} or less`,
  ifPriceMore: (price: string): string =>
    `at a price of at most ${price} more than the machine it replaces`,
  or: ', or ',
  ifStaff: (worth: string): string =>
    `if the minutes it saves are worth more than ${worth} an hour to you`,
  ifFails: (failing: string, all: string, days: string): string =>
    `if a machine were out of order on more than ${failing} of your ${all} ${days} a year`,
  trades: 'Space, power, water and drain: ask licensed trades.',
  assumedMoney: (names: string): string =>
    `Not in your file, so assumed in hours of your staff cost: ${names}. Use your own figures before you decide.`,
  plans: {
    head: 'To plan for',
    intro:
      'These are not choices, so we do not say whether they pay: only how often your stock lasts through them, and what more you would need.',
    lasts: (share: string, days: string): string =>
      `your stock as it is lasts on ${share} of such ${days}`,
    enough: (level: string): string => `That keeps the ${level} you ask for.`,
    have: (level: string, pieces: string, money: string): string =>
      `To reach ${level}, have ${pieces} more (${money}).`,
    noMore: (level: string): string => `No more pieces are needed to reach ${level}.`,
    unsure: (level: string): string =>
      `On these few days we found no need for more pieces to reach ${level}; more simulated days would tell.`,
    staff: (minutes: string, one: boolean): string =>
      `It takes ${minutes} more staff ${one ? 'minute' : 'minutes'} a day.`,
  },
  underRanges: (name: string, share: string, low: string, high: string): string =>
    `With all inputs drawn at random from their ranges, ${name} cost less than your café as it is in ${share} of the draws (${low} to ${high}).`,
  head: {
    alternative: 'Alternative',
    said: 'In short',
    pieces: 'Pieces',
    stock: 'Cost of\npieces',
    now: 'Cash now',
    year: 'Cash a year',
    against: (years: string): string => `Cash over ${years} years`,
    interval: '95 % interval',
    cut: 'Days saved',
    minutes: 'Minutes short',
    drinks: 'Drinks short',
    staff: 'Staff minutes a day',
    withStaff: 'With all staff time',
    atBest: 'Both at best habits',
    shelf: 'Shelf m²',
    racks: 'Racks',
    busy: 'Machines busy',
    served: 'Guests seated',
    away: 'Turned away',
    chance: 'Chance it costs less',
    level: 'Level held',
  },
  short: {
    cheaper: 'costs less',
    dearer: 'costs more',
    alike: 'the same',
    open: 'too close to call',
    habits: 'depends on a habit',
    staff: 'depends on staff time',
  },
  moneyTitle: 'Money from today: the café as it is, and what each alternative adds to it or saves',
  soFar:
    'So far, in the order worked out: the café as it is, and what each alternative adds to it or saves. Not final: the verdicts come with all of them.',
  rushTitle: 'The rush on an average day',
  nowTitle: 'Cash now, compared with the café as it is',
  yearTitle: 'Cash a year, compared with the café as it is',
  now: {
    ware: 'Pieces',
    racks: 'Racks',
    machines: 'Machines',
    installation: 'Installing',
    freight: 'Freight',
    other: 'Other',
  },
  year: {
    water: 'Water',
    energy: 'Energy',
    chemicals: 'Chemicals',
    service: 'Service',
    staff: 'Staff',
    breakage: 'Breakage',
    lost: 'Lost',
    other: 'Other',
  },
  stockTitle: 'Pieces of each item: the café as it is, and what each alternative changes',
  changesTitle: 'What is different',
  cutNote:
    '“Days saved”: how many times as many days would be needed for the same precision if the alternatives did not share the same guests.',
  daysLikeThis: (days: string): string => `${days} days a year like this one`,
  daysOfKind: (days: string, name: string): string => `${days} of the kind “${name}”`,
  daysOfKinds: (days: string, kinds: string): string => `${days} days a year: ${kinds}`,
  kindsNote:
    'Every stock holds on each kind of day at the level asked for; uses, loads and minutes are those of an average day of the year; how often a stock lasts is given for the kind of day on which it lasts least often.',
  /** @param days how many a year has, of which kinds */
  frame: (years: string, rate: string, days: string): string =>
    `Cash is counted from today over ${years} years at ${rate} interest, ${days}. What you have already costs nothing. The price of a machine is spread evenly over its life. Pieces that break or walk off are bought again. Nothing is counted for selling what you have.`,
  staffFrame: (share: string): string =>
    `Of the staff time, ${share} is counted as cash: people on shift are paid anyway. “With all staff time” counts every minute.`,
  together: (count: string, days: string, most: string, seed: string): string =>
    `In 95 % of such comparisons all ${count} intervals of cash are right at the same time. A verdict is given only where the interval leaves no doubt. Based on ${days}${days === most ? '' : ` to ${most}`} days, the same for all; seed ${seed}.`,
  hardlyMatter: (names: string): string =>
    `Also tried on a few days, where each saved less, or asked for less extra ware, than those above: ${names}. To compare something else, add it to your alternatives.`,
  bestNote:
    'Best habits: racks that are not full wait half to four times as long as now, and start at any filling or from 50, 75 or 90 % full (or what your file names under tune). The best were chosen on some days and tested on others.',
  assumed: (list: string): string =>
    `Assumed, as your file gives no figure, with the plausible range of each: ${list}.`,
  minutesNote:
    'Minutes short: minutes of a rush in which some item is missing from the shelf. Shelf: all pieces side by side in one layer.',
  admits: (name: string, more: string, pieces: string): string =>
    `${name} seats ${more} more guests a day and needs ${pieces} more for it: part of its cost is that it serves more. Compare with --equal-guests.`,
  admitsFewer: (name: string, fewer: string): string =>
    `${name} seats ${fewer} fewer guests a day, which lowers what it needs. Compare with --equal-guests.`,
  equalGuests: 'Every guest is seated in every alternative, so that all serve the same ones.',
  breakEvenTitle:
    'The price at which an alternative stops or starts to cost less than the café as it is (same stocks)',
  breakEvenHead: { alternative: 'Alternative', what: 'Price of', price: 'Now', flips: 'Turns at' },
  prices: {
    machines: 'the machines that differ',
    piece: 'a piece (average)',
    water: '1 m³ of water',
    energy: '100 kWh',
    staffHour: 'a staff hour',
  } as Readonly<Record<string, string>>,
  farOff: 'Prices more than ten times higher or lower than now are left out.',
  levelTitle: 'Which level to buy',
  levelHead: {
    level: 'Level',
    pieces: 'Pieces',
    stock: 'Cost of\npieces',
    short: 'Drinks short\na rush',
    stockYear: 'Pieces\na year',
    shortYear: 'Short drinks\na year',
    total: 'Both\na year',
    safe: 'Cost of a\nsafe rush',
  },
  level: (recommended: string, chosen: string, short: string, missed: string): string =>
    `If each drink without its cup costs you ${short}, a level of ${recommended} costs least in all (you asked for ${chosen}). As a check: one more piece at the average price pays for itself if it would be missing in more than ${missed} of rushes.`,
  knee: (level: string): string => `Above ${level}, each further safe rush costs much more.`,
  mapTitle: (days: string): string =>
    `What the pieces cost, compared with the café as it is, at the same level; ${days} days for each point`,
  mapHead: {
    round: 'Minutes between rounds',
    class: 'Class',
    machines: 'Machines',
    racks: 'Racks',
  },
  round: (minutes: string): string => `cleared\nevery ${minutes}`,
  cheapest: (machines: string, cls: string, minutes: string, total: string): string =>
    `Cheapest on the map: ${machines} × ${cls}, cleared every ${minutes}: ${total} than the café as it is, over the years looked ahead.`,
  movesTitle: (days: string): string =>
    `What moves the order: how much more or less the pieces cost than in the answer when one input is at an end of its range and the rest stay as they are; ${days} days each`,
  movesHead: {
    input: 'Input',
    basis: 'Basis',
    range: 'From … to',
    low: 'At the\nlow end',
    high: 'At the\nhigh end',
    swing: 'Moves\nthe order by',
    rank: 'Rank correlation\n(95 % interval)',
  },
  measure: (names: string, now: string, then: string): string =>
    `Measure first: ${names}. If you knew them exactly, the cost of the pieces would be uncertain by ± ${then} instead of ± ${now} (inputs taken as independent, with half their ranges).`,
  unmoved: (count: string): string => `Other inputs that do not move it: ${count}.`,
  withoutRange: (count: string): string =>
    `Assumed inputs without a range: ${count}. They could not be tried; give each a range to see what it moves.`,
  rankNote:
    'Rank correlation: near 1, a higher input makes the pieces cost more; near −1, less; near 0, it hardly matters beside the others.',
  spread: (draws: string, low: string, middle: string, high: string): string =>
    `All inputs drawn together (${draws} times): in nine draws of ten the pieces cost between ${low} and ${high} than in the answer, and ${middle} in the middle one.`,
  missed: (names: string): string =>
    `On other days, these did not reach the level you asked for: ${names}.`,
  informs: 'This helps you decide what to buy; it is not a guarantee.',
  charts: compareChartWords,
};

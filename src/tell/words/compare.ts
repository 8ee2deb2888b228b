import { compareChartWords } from './compare-charts.js';

/** Words of the comparison. */
export const compareWords = {
  details: 'The rush, pieces, money by part, and which level to buy',
  head1: 'More cups, another machine or another habit?',
  best: (sentence: string): string => `Recommended: ${sentence}`,
  thenBest: (sentence: string, difference: string, years: string): string =>
    `Then, recommended: ${sentence} With the habit changed in both it is ${difference} over ${years} years.`,
  bestIsBase:
    'Buy nothing else: none of the choices below is sure to cost less than the house as it is.',
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
    `First change a habit, which costs nothing: ${habits}. In the house as it is that ${does}. It pays: ${saves} less over ${years} years (${low} to ${high}).`,
  /** @param edge whether that is an end of what was tried */
  waiting: (minutes: string, edge: 'longestWait' | 'shortestWait' | 'none'): string =>
    `let a part load wait ${minutes}${{ longestWait: ' (the longest we tried)', shortestWait: ' (the shortest we tried)', none: '' }[edge]}`,
  from: (share: string, edge: boolean): string =>
    `start it only once its rack is ${share} full${edge ? ' (the fullest we tried)' : ''}`,
  levelFirst: (level: string, chosen: string, ware: string, saves: string, short: string): string =>
    `Consider ${level} in place of ${chosen}: ${ware} more of ware now, but ${saves} less a year in all, if a drink without its cup costs you ${short} (assumed unless you gave it).`,
  levelLess: (level: string, chosen: string, ware: string, saves: string, short: string): string =>
    `Consider ${level} in place of ${chosen}: ${ware} less of ware now, and ${saves} less a year in all, if a drink without its cup costs you ${short} (assumed unless you gave it).`,
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
  wareAlone: (money: string): string => `${money} of ware`,
  moneyNow: (money: string): string => `${money} now`,
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
    open: (from: string, to: string, years: string): string =>
      `too close to call: between ${from} and ${to} over ${years} years. More simulated days would tell; so may what else you like about it`,
    habits: (now: string, off: string, when: string, years: string): string =>
      `too close to call: over ${years} years ${now} with your habits as they are, but ${off} ${when}. Settle that habit first, then ask again`,
    habitsAtBest: (now: string, best: string, years: string): string =>
      `too close to call: over ${years} years ${now} with your habits as they are, but ${best} once both houses have their best habits. Settle how part loads go first, then ask again`,
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
      `with part loads waiting a fifth ${more ? 'longer' : 'shorter'}`,
    fill: (more: boolean): string => `with part loads a fifth ${more ? 'fuller' : 'emptier'}`,
  },
  withinHabits: 'the habits above bring it already',
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
    `if a machine is out of order on more than ${failing} of your ${all} ${days} a year`,
  trades: 'Space, power, water and drain: ask a licensed trade.',
  assumedMoney: (names: string): string =>
    `Assumed, as your file gives none (in hours of your staff cost): ${names}. Give your own figures before you decide.`,
  plans: {
    head: 'To plan for',
    intro:
      'Not choices, so they have no verdict of money: how far your stock carries you through them, and what more you would need.',
    lasts: (share: string, days: string): string =>
      `your stock as it is lasts on ${share} of such ${days}`,
    enough: (level: string): string => `That keeps the ${level} you ask for.`,
    have: (level: string, pieces: string, money: string): string =>
      `To reach ${level}, have ${pieces} more (${money}).`,
    noMore: (level: string): string => `No more ware is needed to reach ${level}.`,
    staff: (minutes: string, one: boolean): string =>
      `It takes ${minutes} more staff ${one ? 'minute' : 'minutes'} a day.`,
  },
  underRanges: (name: string, share: string, low: string, high: string): string =>
    `With all inputs drawn from their ranges ${name} cost less than the house as it is in ${share} of the draws (${low} to ${high}).`,
  head: {
    alternative: 'Alternative',
    said: 'In short',
    pieces: 'Pieces',
    stock: 'Ware',
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
  moneyTitle: 'Money from today: the house as it is, and what each alternative adds to it or saves',
  rushTitle: 'The rush, a mean day',
  nowTitle: 'Cash now, against the house as it is',
  yearTitle: 'Cash a year, against the house as it is',
  now: {
    ware: 'Ware',
    racks: 'Racks',
    machines: 'Machines',
    installation: 'Install.',
    freight: 'Freight',
    other: 'Other',
  },
  year: {
    water: 'Water',
    energy: 'Energy',
    chemicals: 'Chemic.',
    service: 'Service',
    staff: 'Staff',
    breakage: 'Breakage',
    lost: 'Lost',
    other: 'Other',
  },
  stockTitle: 'Pieces by ware: the house as it is, and the difference of each alternative',
  changesTitle: 'What is different',
  cutNote:
    '"Days saved" is how many times more days would be needed for the same precision if each alternative had guests of its own.',
  daysLikeThis: (days: string): string => `${days} days a year like this one`,
  daysOfKind: (days: string, name: string): string => `${days} of the kind “${name}”`,
  daysOfKinds: (days: string, kinds: string): string => `${days} days a year: ${kinds}`,
  kindsNote:
    'Every stock holds on each kind of day at the level asked for; uses, loads and minutes are those of a mean day of the year; how often a stock lasts is told of the kind where that is least.',
  /** @param days how many a year has, of which kinds */
  frame: (years: string, rate: string, days: string): string =>
    `Cash is counted from today over ${years} years at ${rate} interest, ${days}. What you have costs nothing; machines are charged evenly over their life, so that one that lasts longer is not wronged; ware that breaks or walks off is bought again. Nothing is counted for selling what you have.`,
  staffFrame: (share: string): string =>
    `Of staff time ${share} is counted as cash: those on shift are paid anyway. "With all staff time" counts every minute.`,
  together: (count: string, days: string, most: string, seed: string): string =>
    `All ${count} intervals of cash hold together, and at every look, in 95 % of such comparisons; a verdict is given only where an interval leaves no room for the contrary. Read on ${days}${days === most ? '' : ` to ${most}`} days that all houses share; seed ${seed}.`,
  hardlyMatter: (names: string): string =>
    `Also tried on a few days, and of little weight here: ${names}. Name your own questions under alternatives.`,
  bestNote:
    'Best habits: half to four times the present wait of part loads, started at any filling or from 50, 75 or 90 % (or what your file names under tune); chosen on some days and judged on others.',
  assumed: (list: string): string =>
    `Assumed for want of your own figures, with the plausible range of each: ${list}.`,
  minutesNote:
    'Minutes short: minutes of a rush in which the shelf of some ware is empty. Shelf: all pieces side by side in one layer.',
  admits: (name: string, more: string, pieces: string): string =>
    `${name} seats ${more} more guests a day and needs ${pieces} more for it: part of its cost is that it serves more. Compare with --equal-guests.`,
  admitsFewer: (name: string, fewer: string): string =>
    `${name} seats ${fewer} fewer guests a day, which lowers what it needs. Compare with --equal-guests.`,
  equalGuests: 'Every guest is seated in every alternative, so that all serve the same ones.',
  breakEvenTitle: 'Where the ranking against the house as it is flips, the stocks as chosen',
  breakEvenHead: { alternative: 'Alternative', what: 'Price of', price: 'Now', flips: 'Flips at' },
  prices: {
    machines: 'the machines that differ',
    piece: 'a piece of ware (mean)',
    water: '1 m³ of water',
    energy: '100 kWh',
    staffHour: 'a staff hour',
  } as Readonly<Record<string, string>>,
  farOff: 'Prices more than tenfold off are left out.',
  levelTitle: 'Which level to buy',
  levelHead: {
    level: 'Level',
    pieces: 'Pieces',
    stock: 'Ware',
    short: 'Drinks short\na rush',
    stockYear: 'Ware\na year',
    shortYear: 'Short drinks\na year',
    total: 'Both\na year',
    safe: 'Ware for a\nsafe rush',
  },
  level: (recommended: string, chosen: string, short: string, missed: string): string =>
    `If a short drink costs ${short}, the level of least money is ${recommended} (asked for: ${chosen}). As a check: one more piece of mean price pays for itself where it would be missed in more than ${missed} of rushes.`,
  knee: (level: string): string => `Beyond ${level} each further safe rush costs steeply more.`,
  mapTitle: (days: string): string =>
    `What the ware costs against the house as it is, the level kept; ${days} days a point`,
  mapHead: {
    round: 'Minutes between rounds',
    class: 'Class',
    machines: 'Machines',
    racks: 'Racks',
  },
  round: (minutes: string): string => `cleared\nevery ${minutes}`,
  cheapest: (machines: string, cls: string, minutes: string, total: string): string =>
    `Cheapest on the map: ${machines} × ${cls}, cleared every ${minutes}: ${total} than the house as it is, over the years looked ahead.`,
  movesTitle: (days: string): string =>
    `What moves the order: what the ware costs more or less than in the answer, with one input at an end of its range and the rest as written; ${days} days each`,
  movesHead: {
    input: 'Input',
    basis: 'Basis',
    range: 'From … to',
    low: 'At the\nlow end',
    high: 'At the\nhigh end',
    swing: 'Moves\nthe order by',
    rank: 'Rank correlation\n(95% interval)',
  },
  measure: (names: string, now: string, then: string): string =>
    `Measure first: ${names}. Known exactly, they would narrow the cost of the ware from ± ${now} to ± ${then} (independent inputs, half their ranges).`,
  unmoved: (count: string): string => `Further inputs that move it by nothing: ${count}.`,
  withoutRange: (count: string): string =>
    `Assumed inputs without a range: ${count}; nothing is said of them. Give each a range to see what it moves.`,
  rankNote:
    'Rank correlation: near 1, the higher the input the dearer the ware; near −1, the cheaper; near 0, it hardly matters beside the others.',
  spread: (draws: string, low: string, middle: string, high: string): string =>
    `All together (${draws} draws): the ware costs between ${low} and ${high} than in the answer in nine draws of ten, and ${middle} in the middle one.`,
  missed: (names: string): string => `On fresh days the level asked for was missed by: ${names}.`,
  informs: 'This informs a purchase; it certifies nothing.',
  charts: compareChartWords,
};

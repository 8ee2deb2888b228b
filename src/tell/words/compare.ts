/** Words of the comparison. */
export const compareWords = {
  best: (name: string, saves: string, years: string): string =>
    `Recommended: ${name}. Over ${years} years it costs ${saves} less than the house as it is`,
  bestIsBase: 'Recommended: leave the house as it is; none of the alternatives costs less',
  sure: (low: string, high: string): string => ` (95% interval ${low} to ${high}).`,
  error: (chance: string, amount: string): string =>
    `The chance that another is cheaper by more than ${amount} is at most ${chance}.`,
  withinIndifference: (amount: string): string =>
    `That is less than the ${amount} below which differences count as none, so let other things than money decide.`,
  notRanked: (names: string): string => `Shown but not ranked, as other guests come: ${names}.`,
  unsure: (names: string): string =>
    `It cannot be told apart from ${names} on the days run: choose among them by other things than money.`,
  underRanges: (share: string, low: string, high: string): string =>
    `With all inputs drawn from their ranges it was the cheaper of the two in ${share} of the draws (95% interval ${low} to ${high}).`,
  head: {
    alternative: 'Alternative',
    pieces: 'Pieces',
    stock: 'Ware',
    now: 'Money\nnow',
    year: 'Money\na year',
    total: (years: string): string => `Over\n${years} years`,
    against: 'Against\nas it is',
    interval: '95% interval\nof that',
    cut: 'Days\nsaved',
    minutes: 'Minutes\nshort',
    drinks: 'Drinks\nshort',
    staff: 'Staff\nminutes',
    shelf: 'Shelf\nm²',
    racks: 'Racks',
    busy: 'Machines\nbusy',
    served: 'Guests\nseated',
    away: 'Turned\naway',
    chance: 'Chance\ncheaper',
  },
  moneyTitle: 'Money, under the same guests',
  rushTitle: 'The rush, a mean day',
  nowTitle: 'Money now',
  yearTitle: 'Money a year',
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
    staff: 'Staff',
    paperCups: 'Paper cups',
    breakage: 'Breakage',
    lost: 'Lost',
    other: 'Other',
  },
  stockTitle: 'Pieces by ware',
  changesTitle: 'What is different',
  cutNote:
    '"Days saved" is how many times more days the same sureness would need if each alternative had guests of its own.',
  frame: (years: string, rate: string, days: string): string =>
    `Everything is priced as bought now, machines by the even payment over their life; over ${years} years at ${rate} a year, ${days} days a year like this one, counting the hours of the scenario. Prices that the scenario does not give are assumed, from memory: give your own under costs.`,
  steady: (low: string, high: string): string =>
    `With clearing rounds and part-load waits a minute shorter or longer it costs ${low} to ${high} less (a quick reading).`,
  beats: (worst: string, what: string, asWritten: string): string =>
    `! Its lead rests in part on how rounds and waits fall together: with ${what} in either house it is ${worst}, not ${asWritten} (quick readings). Try the habit itself, or spread the durations, before acting on it.`,
  beatLess: (amount: string): string => `${amount} less`,
  beatMore: (amount: string): string => `${amount} more`,
  beat: (what: 'rounds' | 'waits', minutes: number): string =>
    `${what === 'rounds' ? 'clearing rounds' : 'part-load waits'} a minute ${minutes < 0 ? 'shorter' : 'longer'}`,
  assumed: (list: string): string =>
    `Assumed for want of your own figures, with the plausible range of each: ${list}.`,
  butRanges: 'So its lead rests on the inputs being just as written; measure before acting on it.',
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
    `If a short drink costs ${short}, the level of least money is ${recommended} (chosen: ${chosen}). As a check (the newsvendor's ratio): one more piece of mean price pays for itself where it would be missed in more than ${missed} of rushes.`,
  knee: (level: string): string => `Beyond ${level} each further safe rush costs steeply more.`,
  mapTitle: (days: string): string =>
    `The trade-off map: what the ware costs that keeps the level, ${days} days a point`,
  mapHead: {
    round: 'Minutes between rounds',
    class: 'Class',
    machines: 'Machines',
    racks: 'Racks',
  },
  round: (minutes: string): string => `cleared\nevery ${minutes}`,
  machineWorth: (cls: string, minutes: string, steps: string): string =>
    `${cls}, cleared every ${minutes}: ${steps}.`,
  machineStep: (to: string, pieces: string, one: boolean, money: string): string =>
    `machine ${to} is worth ${pieces} ${one ? 'piece' : 'pieces'} of ware (${money})`,
  machineNothing: (to: string): string => `machine ${to} saves none`,
  cheapest: (machines: string, cls: string, minutes: string, total: string): string =>
    `Cheapest on the map: ${machines} × ${cls}, cleared every ${minutes}, ${total} in all over the years looked ahead.`,
  movesTitle: (days: string): string =>
    `What moves the order: each input over its range, the rest as written, ${days} days each`,
  movesHead: {
    input: 'Input',
    basis: 'Basis',
    range: 'From … to',
    low: 'Ware at\nthe low end',
    high: 'Ware at\nthe high end',
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
    `All together (${draws} draws): ware for ${middle}, from ${low} to ${high} in nine draws of ten.`,
  planningTitle: 'Planning table: guests grow with seats, all else as given',
  planningHead: {
    seats: 'Seats',
    cost: 'Ware',
    certified: 'Nothing\nruns out in',
    busy: 'Machines\nbusy',
  },
  planningNote:
    'Pieces, and in brackets pieces a seat. It assumes this house’s guests a seat, stays, menu, staff and machines; another house needs its own.',
  days: (days: string, most: string, seed: string): string =>
    `Each chosen on ${days} simulated days${days === most ? '' : ` (the leaders on ${most})`} and tried on as many fresh ones; seed ${seed}.`,
  missed: (names: string): string => `! The level asked for was missed on fresh days by: ${names}.`,
  informs: 'This informs a purchase; it certifies nothing.',
  charts: {
    costTitle: (name: string, amount: string, years: string): string =>
      `${name} costs least: ${amount} less than as it is, over ${years} years`,
    costTitleBase: 'Nothing costs less than the house as it is',
    costDescription:
      'How much more or less than the house as it is each alternative costs over the years, under the same guests, with the 95% interval of that difference.',
    cost: (currency: string): string => `against the house as it is, over the years, ${currency}`,
    total: 'total',
    less: 'less',
    more: 'more',
    parts: {
      ware: 'ware and racks',
      machines: 'machines',
      staff: 'staff',
      running: 'water, energy, chemicals',
      losses: 'losses and other',
    },
    mapTitle: (pieces: string, one: boolean, cls: string, minutes: string): string =>
      `A second machine saves at most ${pieces} ${one ? 'piece' : 'pieces'} of ware (${cls}, cleared every ${minutes})`,
    mapTitlePlain: 'More machines save no ware here',
    mapDescription:
      'Each line keeps the level all along: cost of the ware needed against the number of machines, a line for each clearing round.',
    machines: 'machines',
    cleared: 'cleared every',
    money: (currency: string, cls: string): string => `cost of the ware, ${currency} (${cls})`,
    toldMap: (
      machines: string,
      cls: string,
      minutes: string,
      money: string,
      pieces: string,
    ): string =>
      `${machines} × ${cls}, cleared every ${minutes}: ware for ${money}, ${pieces} pieces`,
    toldCost: (name: string, amount: string, less: boolean, low: string, high: string): string =>
      `${name}: ${amount} ${less ? 'less' : 'more'} than the house as it is (95% interval of the difference ${low} to ${high})`,
    toldMoves: (name: string, value: string, money: string): string =>
      `${name}, ${value}: ware for ${money}`,
    toldLevel: (level: string, stock: string, short: string, both: string): string =>
      `Level ${level}: ${stock} a year for ware, ${short} for drinks short, ${both} together`,
    pieces: 'pieces needed, all ware',
    movesTitle: (name: string, amount: string): string =>
      `What moves the order most is “${name}”: by ${amount}`,
    movesTitleNone: 'No input with a range moves the order',
    movesDescription:
      'Cost of the ware with each input at the low and the high end of its range, the rest as written; the line is the cost as written.',
    moves: (currency: string): string => `cost of the ware, ${currency}`,
    low: 'at the low end',
    high: 'at the high end',
    levelTitle: (level: string, amount: string): string =>
      `Going through ${level} of rushes costs least: ${amount} a year, drinks short included`,
    levelDescription:
      'Money a year against the level: ware, drinks short, and both. The dot is the level of least money.',
    levelAxis: 'share of rushes in which nothing runs out',
    levelMoney: (currency: string): string => `a year, ${currency}`,
    series: { stock: 'ware', short: 'drinks short', both: 'both' },
    captions: {
      cost: 'Cost of the alternatives',
      map: 'Trade-off map',
      moves: 'What moves the order',
      level: 'Level against money',
    },
  },
};

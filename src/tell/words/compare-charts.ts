/** Words of the comparison's charts. */
export const compareChartWords = {
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
    'Each line keeps the level all along: what the ware costs more or less than in the house as it is, by the number of machines, a line for each clearing round.',
  machines: 'machines',
  cleared: 'cleared every',
  money: (currency: string, cls: string): string =>
    `ware against the house as it is, ${currency} (${cls})`,
  sentenceMap: (machines: string, cls: string, minutes: string, money: string): string =>
    `${machines} × ${cls}, cleared every ${minutes}: ${money} of ware against the house as it is`,
  sentenceCost: (name: string, amount: string, less: boolean, low: string, high: string): string =>
    `${name}: ${amount} ${less ? 'less' : 'more'} than the house as it is (95% interval of the difference ${low} to ${high})`,
  sentenceMoves: (name: string, value: string, money: string): string =>
    `${name}, ${value}: ${money} of ware against the answer`,
  sentenceLevel: (level: string, stock: string, short: string, both: string): string =>
    `Level ${level}: ${stock} a year for ware, ${short} for drinks short, ${both} together`,
  pieces: 'pieces needed, all ware',
  movesTitle: (name: string, amount: string): string =>
    `What moves the order most is “${name}”: by ${amount}`,
  movesTitleNone: 'No input with a range moves the order',
  movesDescription:
    'What the ware costs more or less than in the answer, with each input at the low and the high end of its range and the rest as written.',
  moves: (currency: string): string => `ware against the answer, ${currency}`,
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
};

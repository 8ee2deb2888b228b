/** Words of the comparison's charts. */
export const compareChartWords = {
  costTitle: (name: string, amount: string, years: string): string =>
    `${name} costs least: ${amount} less than as it is, over ${years} years`,
  costTitleBase: 'Nothing costs less than the café as it is',
  costDescription:
    'How much more or less than the café as it is each alternative costs over the years, with the same guests, and the 95 % interval of that difference.',
  cost: (currency: string): string => `against the café as it is, ${currency}`,
  total: 'total',
  less: 'less',
  more: 'more',
  parts: {
    ware: 'pieces and racks',
    machines: 'machines',
    staff: 'staff',
    running: 'water, energy, chemicals',
    losses: 'losses and other',
  },
  mapTitle: (pieces: string, one: boolean, cls: string, minutes: string): string =>
    `A second machine saves at most ${pieces} ${one ? 'piece' : 'pieces'} (${cls}, cleared every ${minutes})`,
  mapTitlePlain: 'More machines save no pieces here',
  mapDescription:
    'How much more or less the pieces cost than in the café as it is, by the number of machines, at the same level; a line for each clearing round.',
  machines: 'machines',
  cleared: 'cleared every',
  money: (currency: string, cls: string): string =>
    `cost of pieces compared with the café as it is, ${currency} (${cls})`,
  sentenceMap: (machines: string, cls: string, minutes: string, money: string): string =>
    `${machines} × ${cls}, cleared every ${minutes}: pieces cost ${money} compared with the café as it is`,
  sentenceCost: (name: string, amount: string, less: boolean, low: string, high: string): string =>
    `${name}: ${amount} ${less ? 'less' : 'more'} than the café as it is (95 % interval of the difference ${low} to ${high})`,
  sentenceMoves: (name: string, value: string, money: string): string =>
    `${name}, ${value}: pieces cost ${money} compared with the answer`,
  sentenceLevel: (level: string, stock: string, short: string, both: string): string =>
    `Level ${level}: ${stock} a year for pieces, ${short} for drinks short, ${both} together`,
  pieces: 'pieces needed, all items',
  movesTitle: (name: string, amount: string): string =>
    `What moves the order most is “${name}”: by ${amount}`,
  movesTitleNone: 'No input with a range moves the order',
  movesDescription:
    'How much more or less the pieces cost than in the answer, with each input at the low and the high end of its range and the rest as they are.',
  moves: (currency: string): string => `cost of pieces compared with the answer, ${currency}`,
  low: 'at the low end',
  high: 'at the high end',
  levelTitle: (level: string, amount: string): string =>
    `A level of ${level} costs least: ${amount} a year, drinks short included`,
  levelDescription:
    'Money a year at each level: pieces, drinks short, and both. The dot is the level that costs least.',
  levelAxis: 'share of rushes in which nothing runs out',
  levelMoney: (currency: string): string => `a year, ${currency}`,
  series: { stock: 'pieces', short: 'drinks short', both: 'both' },
  captions: {
    cost: 'Cost of the alternatives',
    map: 'Trade-off map',
    moves: 'What moves the order',
    level: 'Level against money',
  },
};

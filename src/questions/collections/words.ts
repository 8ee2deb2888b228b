/** What the collections say, in words. */
export const say = {
  none: '–',
  heading: (title: string): string => `Collections for ${title}`,
  cheapest: (name: string, over: string, days: string, others: string): string =>
    `${name} costs least over ${days} days: ${over}${others}.`,
  tooNear: (names: string, days: string): string =>
    `${names} cost about the same over ${days} days, within 2 %: choose by the other measures.`,
  against: (name: string, money: string): string => `${name} ${money}`,
  notPriced: 'Not all pieces are sold by a supplier of the file, so costs cannot be compared.',
  caption: (level: string): string =>
    `Side by side, each with enough pieces for ${level} of rushes`,
  measure: 'Measure',
  rows: {
    pieces: 'Pieces at opening',
    ordered: 'Pieces ordered now',
    now: 'Order now, with all its costs',
    over: (days: string): string => `All orders, ${days} days`,
    each: 'Average cost per piece',
    racks: 'Full racks a day',
    alike: 'Drinks that taste the same to take away',
    heavy: 'Vessels too heavy when full',
    sip: 'Coolest first sip',
    saucers: 'Kinds of saucer',
    saved: 'Saucers saved by sharing',
    misfits: 'Cups that do not fit a saucer',
    top: 'On the machine, of cups with a recipe',
    colours: 'Cup and saucer of one colour',
    ends: 'Sold only until',
    spares: 'Cost of spares until the end',
    replaced: 'Or cost of replacing all then',
  },
  of: (part: string, all: string): string => `${part} of ${all}`,
  vessels: (name: string): string => `Vessels: ${name}`,
  vesselHead: [
    'Vessel',
    'Replaces',
    'Brim',
    'Pieces',
    'In a\nrack',
    'Filled',
    'Turning\nmoment',
    'First\nsip',
    'On its saucer',
  ],
  moment: (newtonMetres: string): string => `${newtonMetres}\u00A0N\u00A0m`,
  ends: (name: string, lines: string, until: string): string => `${name}: ${lines} ${until}.`,
  endsOn: (day: string): string => `can be bought until ${day}`,
  endsNow: 'cannot be bought again',
  endsCost: (pieces: string, spares: string, par: string, replaced: string): string =>
    `Buying ${pieces} spares now, enough until the end of the time looked at, costs ${spares} more than if these items stayed on sale. Replacing all ${par} pieces when they are gone would cost ${replaced} at today’s prices.`,
  notes: (days: string, costs: string): string =>
    `All columns use the same guests on the same days. Orders over ${days} days replace what breaks, walks off and wears out, with ${costs} and the cost of holding spares. Full racks a day: as if every rack were full.`,
  lead: 'A collection’s lead time is that of its slowest piece.',
  colour:
    'Colour is shown, never scored. In one study of 36 volunteers a white mug made coffee seem more intense than a transparent one, and less sweet than a transparent or a blue one (Van Doorn, Wuillemin and Spence, Flavour 2014). In another the colour of the cup shifted the sweetness and acidity that people expect and taste (Carvalho and Spence, Food Quality and Preference 75, 2019). Such effects are small and studies differ.',
  warnings: (name: string): string => `Warnings for ${name}`,
  proof: 'At least one order is good but not proved to cost least.',
} as const;

/** Words of the trainer's cards. Figures come as ready-made text, names cleaned and cut. */

/** What the loader does, by how the pieces stand; the last step names the number. */
const loading = {
  rows: [
    'Empty and scrape. Take out chipped pieces.',
    'Upside down, one layer, never one inside another.',
  ],
  compartments: [
    'Empty every glass and cup. Take out chipped pieces.',
    'One to a compartment, upside down. Never two.',
  ],
  'on edge': ['Scrape. Take out chipped pieces.', 'On edge between the pegs, all facing one way.'],
  loose: [
    'Loose in the basket, one layer, handles and bowls mixed.',
    'Never packed tight: water must reach every piece.',
  ],
  unknown: ['Empty and scrape. Take out chipped pieces.', 'One layer, nothing inside another.'],
};

export const cardWords = {
  date: 'Date',
  foot: (version: string): string =>
    `Worked out by simulation, version ${version}, partly from assumed values. A guide, not a guarantee: local codes and the manuals come first.`,
  listMore: (count: string): string => `and ${count} more`,
  spell: (minutes: number, seconds: number): string =>
    [
      ...(minutes > 0 ? [`${minutes} min`] : []),
      ...(seconds > 0 || minutes === 0 ? [`${seconds} s`] : []),
    ].join(' '),

  eachSpell: (seconds: string): string => `${seconds}\u00A0s`,
  litres: (litres: string): string => `${litres}\u00A0l`,
  gallons: (gallons: string): string => `${gallons}\u00A0US\u00A0gal`,

  rack: {
    title: (rack: string): string => `Rack: ${rack}`,
    fullOnce: (rack: string): string => `One full ${rack.toLowerCase()} takes`,
    fullEach: (rack: string): string => `One full ${rack.toLowerCase()} takes, of one kind:`,
    steps: loading,
    inRow: {
      straight: 'Handles straight',
      at: (degrees: string): string => `Handles at ${degrees}°`,
    },
    rows: {
      grid: 'in even rows',
      staggered: 'rows staggered',
      turned: 'every second row turned round',
      mixed: 'rows turned and shifted',
    },
    noHandles: {
      grid: 'In even rows',
      staggered: 'In staggered rows',
      turned: 'In rows',
      mixed: 'In rows',
    },
    handles: (how: string, rows: string): string => `${how}, ${rows}, as drawn.`,
    handlesApart: (name: string, how: string, rows: string): string =>
      `${name}: ${how.charAt(0).toLowerCase()}${how.slice(1)}, ${rows}.`,
    stop: 'Stop at this number. With more, the water does not reach them; with fewer, you wash more loads.',
    wait: (time: string): string =>
      `Start a rack that is not full when its first piece has waited ${time}.`,
    neverPart: 'Start a rack when it is full.',
    partRounds: (time: string): string => `Start racks that are not full every ${time}.`,
    shares: (names: string): string => `Only these go in it: ${names}.`,
    alone: (name: string): string => `Only this goes in it: ${name}.`,
    apart: (shared: boolean): string =>
      shared
        ? 'Better: glass and china in racks of their own.'
        : 'Never glass and china in one rack.',
    halfTitle: 'A half-empty rack costs as much',
    half: (load: string, pieces: string, each: string, half: string, halfEach: string): string =>
      `A load takes ${load}, whatever is in it. With ${pieces} in the rack that is ${each} per piece; with ${half}, ${halfEach}.`,
    water: (water: string): string => `It also takes ${water} of water.`,
    machineTwo: (racks: string): string => `The machine takes ${racks} racks at once.`,
    fill: (racks: string, one: boolean, fill: string, full: string | null): string =>
      `In a rush here about ${racks} ${one ? 'rack is' : 'racks are'} washed, on average ${fill} full.${full === null ? '' : ` About ${full} full would be enough for the same pieces.`}`,
    shapeTitle: 'Wider cups mean more loads',
    per100: (list: string): string => `Racks for a hundred pieces: ${list}.`,
    racksOf: (name: string, racks: string): string => `${name} ${racks}`,
    outgrown: (name: string, changed: string): string =>
      `${name}: with its ${changed} this rack takes none.`,
    wider: (name: string, changed: string, pieces: string, then: string): string =>
      `${name}: with its ${changed} a rack takes ${then}, not ${pieces}.`,
    stuck: (clock: string, pieces: string, of: string): string =>
      `At the tightest moment (${clock}), ${pieces} of the ${of} pieces of this rack wait to be washed or are in the dishwasher.`,
    noPicture: 'No drawing: the shape is not known, or you counted a different number.',
    counted: 'Fill one rack and count:',
    given: {
      given: 'The number is the one in your file.',
      shape: 'The number is worked out from the shape.',
      class: 'The number is typical for this kind.',
    },
    heavy: (mass: string): string =>
      `A full rack weighs about ${mass}: lift it between knee and shoulder height, close to the body.`,
    hot: 'The hot rinse scalds. Let the rack drip and cool before you reach in.',
  },

  clearing: {
    title: 'Clearing',
    atOnce: 'At once',
    atOnceText: 'A table is cleared as soon as its guests have left.',
    every: (time: string): string => `Every ${time}`,
    rounds: (clocks: string): string =>
      `By the clock, from opening: ${clocks} … and on after closing until every table is clean.`,
    clearers: (people: string, one: boolean): string =>
      one ? 'One person does the round.' : `${people} people clear, each on their own round.`,
    clearersUnlimited: 'Whoever is free does the round.',
    trip: (pieces: string, time: string): string =>
      `At most ${pieces} pieces a trip, about ${time} there and back.`,
    tripUnlimited: (time: string): string => `About ${time} there and back.`,
    order:
      'Start with the table that was left first. Go on, trip after trip, until no table is dirty.',
    washer: 'The person who clears also runs the dishwasher: unload first, then clear.',
    first: (name: string): string => `What runs low first: ${name}. Never leave one behind.`,
    held: 'Nobody is seated at a dirty table here, so a late round also costs seats.',
    chips:
      'Chipped or broken: take it out of use at once, wrap it, and mark it on the breakage card.',
    carry:
      'Carry cups upright and not stacked inside each other; nothing hot or full on a pile; see where you walk.',
    waits: (table: string, carried: string): string =>
      `On average a dirty piece now waits ${table} on its table and takes ${carried} to the bench.`,
    slipTitle: 'If rounds are late',
    slip: (to: string, from: string | null, days: string, pieces: string, cost: string): string =>
      `Rounds every ${to} instead of ${from === null ? 'clearing at once' : `every ${from}`} would need ${pieces} more pieces for the same service level: ${cost}. (Worked out on ${days} days.)`,
    slipNothing: (to: string, from: string | null, days: string): string =>
      `On ${days} days, rounds every ${to} instead of ${from === null ? 'clearing at once' : `every ${from}`} need no more pieces.`,
    slipMost: (list: string): string => `Most of them: ${list}.`,
    slipPieces: (pieces: string, name: string): string => `${pieces} × ${name}`,
    slipTurned: (guests: string): string =>
      `And ${guests} more guests per rush would find no seat, which hides the need for cups.`,
  },

  top: {
    title: 'On the machine',
    headings: ['Item', 'On top', 'In reserve', 'Fetch more at'],
    high: (high: string): string => `At most ${high} high`,
    highText: 'Less if the manual says so. Nothing on vents, nothing over the edge.',
    fetch: 'Fetch more when this number is left, not when none is.',
    allUp: 'all on top',
    reserveOnly: (list: string): string => `All in reserve: ${list}.`,
    heavy: (mass: string): string => `This puts ${mass} on the machine.`,
    limit: (mass: string): string => `The manual allows ${mass}.`,
    limitBlank: 'The manual allows (look it up):',
    homeless: (list: string): string => `No room on top or in reserve for: ${list}.`,
    more: (count: string): string => `${count} more kinds are in the order sheet.`,
    decideTitle: 'Decide, and write it here',
    decide: [
      'How high stacks may be, by the manual',
      'Weight the manual allows on top',
      'Where the rest stands',
      'Who fetches',
    ],
    decideText:
      'Decide how many of each stand on top, and at how many somebody fetches more. Measure the top first, without vents and edges.',
    hot: 'The top is hot, and so are the stacks. Lift from the top of a stack, with a dry hand.',
  },

  safety: {
    title: 'Safety',
    lines: {
      firstAid: 'First-aid box and burns kit at',
      phone: 'Emergency number',
      poison: 'Poisons advice number',
      sheets: 'Safety data sheets at',
      trades: 'Electrician, plumber, machine service',
      switch: 'Machine switch and water stop at',
    },
    lifting: (mass: string): string =>
      `A full rack weighs about ${mass}, a carton of cups as much: keep both between knee and shoulder height, close to the body, two people where in doubt.`,
    liftingRange: (least: string, most: string): string => `${least} to ${most}`,
    manual: (text: string): string => `${text}; the machine’s manual`,
    extra: {
      wetFloors: {
        title: 'Wet floors',
        text: 'Wipe spills and melting ice at once, and put out the sign. No running; racks and cables off the floor; closed shoes that grip.',
        defersTo: 'local workplace law',
      },
      faults: {
        title: 'Electricity and leaks',
        text: 'Dry hands at plugs and switches. A machine that leaks, trips, sparks or smells: keep away from the water, off at its switch if that is safe, and call the trade. Never open its panels.',
        defersTo: 'licensed electricians and plumbers; the machine’s manual',
      },
    },
    scalded:
      'Scalded or burnt: cool running water at once, then first aid. Chemical in the eye: rinse with water at once, call for help, take the safety data sheet along.',
  },

  breakage: {
    title: 'Breakages',
    part: (number: string, of: string): string => `sheet ${number} of ${of}`,
    how: 'Make one mark for every piece broken, chipped, cracked or lost, in the week it happens.',
    headings: { ware: 'Item', expect: 'Expected', tell: 'Tell the buyer', weeks: 'Week' },
    expectWeek: (pieces: string): string => `${pieces} a week`,
    expectWeeks: (weeks: string): string => `1 in ${weeks} weeks`,
    expectNone: 'rarely',
    below: (pieces: string): string => `below ${pieces}`,
    last: 'at every loss',
    tellReorder: (days: string): string =>
      `Count every ${days} days. Fewer than in the column “Tell the buyer”: tell them that day.`,
    tellPar:
      'Count once a month. With fewer than in the column “Tell the buyer”, a busy day may run short: tell them that day.',
    cannot: 'At every loss: this item cannot be bought again.',
    more: 'Twice as many marks as expected on two sheets in a row: find out where they break.',
    chipped:
      'Chipped, cracked or crazed: out of use at once, never back on the shelf. Wrap it, put it in its own bin, mark it on this card.',
    assumed: 'Expected numbers are based on usual rates, unless you have counted your own.',
    broken: 'Broken glass near ice or food: throw all of it away; empty and clean the whole bin.',
  },
};

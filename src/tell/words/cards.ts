/** Words of the trainer's cards. Figures come as ready-made text, names cleaned and cut. */

/** What the loader does, by how the pieces stand; the last step names the number. */
const loading = {
  rows: [
    'Empty and scrape. Chipped ware comes out here.',
    'Upside down, one layer, never one inside another.',
  ],
  compartments: [
    'Empty every glass and cup. Chipped ware comes out here.',
    'One to a compartment, upside down. Never two.',
  ],
  'on edge': [
    'Scrape. Chipped ware comes out here.',
    'On edge between the pegs, all facing one way.',
  ],
  loose: [
    'Loose in the basket, one layer, handles and bowls mixed.',
    'Never packed tight: water must reach every piece.',
  ],
  unknown: ['Empty and scrape. Chipped ware comes out here.', 'One layer, nothing inside another.'],
};

export const cardWords = {
  date: 'Date',
  foot: (version: string): string =>
    `Worked out by simulation, version ${version}; where a value was assumed, so is the figure. It informs, and certifies nothing: local codes and the manuals go first.`,
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
      turned: 'every second row turned about',
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
    stop: 'Stop at the number. More shuts out the water; fewer costs a load.',
    wait: (time: string): string =>
      `A rack that is not full goes once its first piece has waited ${time}.`,
    neverPart: 'A rack goes when it is full.',
    partRounds: (time: string): string => `Racks that are not full go every ${time}.`,
    shares: (names: string): string => `Only these share it: ${names}.`,
    alone: (name: string): string => `Nothing else goes in it: ${name} alone.`,
    apart: 'Glass and china never in one rack.',
    halfTitle: 'Half empty costs as much',
    half: (load: string, pieces: string, each: string, half: string, halfEach: string): string =>
      `A load takes ${load}, whatever is in it. With ${pieces} in the rack that is ${each} a piece; with ${half}, ${halfEach}.`,
    water: (water: string): string => `It takes ${water} of water too.`,
    machineTwo: (racks: string): string => `The machine takes ${racks} racks at once.`,
    fill: (racks: string, fill: string, full: string | null): string =>
      `In a rush here ${racks} racks are washed, ${fill} full on the mean${full === null ? '' : `; ${full} full ones would hold the same pieces`}.`,
    shapeTitle: 'Shape costs loads',
    per100: (list: string): string => `A hundred pieces fill so many racks: ${list}.`,
    racksOf: (name: string, racks: string): string => `${name} ${racks}`,
    outgrown: (name: string, more: string, dimension: string): string =>
      `${name}: ${more} more ${dimension} and this rack takes none.`,
    wider: (name: string, more: string, dimension: string, pieces: string, then: string): string =>
      `${name}: ${more} more ${dimension} and a rack takes ${then}, not ${pieces}.`,
    dimension: {
      rim: 'rim',
      handle: 'handle',
      handleWidth: 'handle width',
      height: 'height',
      depth: 'depth',
    },
    stuck: (clock: string, pieces: string, of: string): string =>
      `When it is tightest (${clock} on such a day), ${pieces} of the ${of} pieces of this rack wait at the wash or are in it.`,
    noPicture: 'Not drawn: its shape is not known, or the house counted another number.',
    counted: 'Fill one rack and count:',
    given: {
      given: 'The number is as the house gave it.',
      shape: 'The number is worked out from the shape.',
      class: 'The number is typical of its class.',
    },
    heavy: (mass: string): string =>
      `A full rack weighs about ${mass}: between knee and shoulder, close to the body.`,
    hot: 'Hot rinse scalds. Let the rack drip and cool before hands go in.',
  },

  clearing: {
    title: 'Clearing',
    atOnce: 'At once',
    atOnceText: 'A table is cleared as soon as its guests have left.',
    every: (time: string): string => `Every ${time}`,
    rounds: (clocks: string): string =>
      `By the clock, from opening: ${clocks} … and on after closing until every table is clean.`,
    clearers: (people: string, one: boolean): string =>
      one ? 'One person walks the round.' : `${people} people walk, each their own round.`,
    clearersUnlimited: 'Whoever is free walks the round.',
    trip: (pieces: string, time: string): string =>
      `At most ${pieces} pieces a trip, about ${time} there and back.`,
    tripUnlimited: (time: string): string => `About ${time} there and back.`,
    order: 'Table that was left first, first. Trip after trip until none is dirty.',
    washer: 'Who clears also works the dishwasher: unload first, then walk.',
    first: (name: string): string => `Scarcest here: ${name}. Never leave one behind.`,
    held: 'Nobody is seated at a dirty table here: a late round also costs seats.',
    chips: 'Chipped or broken: aside at once, wrapped, and a stroke on the breakage card.',
    carry: 'Cups upright, never nested; nothing hot or full on a pile; the way in sight.',
    waits: (table: string, carried: string): string =>
      `As it is, a dirty piece waits ${table} on its table and ${carried} on its way, on the mean.`,
    slipTitle: 'If rounds slip',
    slip: (to: string, from: string | null, days: string, pieces: string, cost: string): string =>
      `Rounds every ${to} in place of ${from === null ? 'clearing at once' : `every ${from}`} would need ${pieces} more pieces for the same promise: ${cost}. (Worked out on ${days} days.)`,
    slipNothing: (to: string, from: string | null, days: string): string =>
      `On ${days} days, rounds every ${to} in place of ${from === null ? 'clearing at once' : `every ${from}`} need no more pieces.`,
    slipMost: (list: string): string => `Most of them: ${list}.`,
    slipPieces: (pieces: string, name: string): string => `${pieces} × ${name}`,
    slipTurned: (guests: string): string =>
      `And ${guests} more guests a rush would find no seat, which hides the need for cups.`,
  },

  top: {
    title: 'On the machine',
    headings: ['Ware', 'On top', 'In reserve', 'Fetch when left'],
    high: (high: string): string => `At most ${high} high`,
    highText: 'Less if the manual says so. Nothing on vents, nothing over the edge.',
    fetch: 'At that number, fetch: not at none.',
    allUp: 'all up here',
    reserveOnly: (list: string): string => `All in reserve: ${list}.`,
    heavy: (mass: string): string => `So set out it carries ${mass}.`,
    limit: (mass: string): string => `The manual allows ${mass}.`,
    limitBlank: 'The manual allows (look it up):',
    homeless: (list: string): string => `No room on top or in reserve for: ${list}.`,
    more: (count: string): string => `${count} more kinds of ware are in the order sheet.`,
    decideTitle: 'Decide, and write it here',
    decide: [
      'How high stacks may be, by the manual',
      'Mass the manual allows on top',
      'Where the rest stands',
      'Who fetches',
    ],
    decideText:
      'How many of each stand on top, and at how many left somebody fetches more. Measure the top first, without vents and edges.',
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
    how: 'One stroke for every piece broken, chipped, cracked or gone, in the week it happens.',
    headings: { ware: 'Ware', expect: 'Expect', tell: 'Tell the buyer', weeks: 'Week' },
    expectWeek: (pieces: string): string => `${pieces} a week`,
    expectWeeks: (weeks: string): string => `1 in ${weeks} weeks`,
    expectNone: 'rarely',
    below: (pieces: string): string => `below ${pieces}`,
    last: 'at every loss',
    tellReorder: (days: string): string =>
      `Count every ${days} days. Fewer than in the column “Tell the buyer”: tell them that day.`,
    tellPar:
      'Count once a month. Fewer than in the column “Tell the buyer”, and a rush like the one worked out may run short: tell them that day.',
    cannot: 'At every loss: that ware cannot be bought again.',
    more: 'Twice as many strokes as expected two sheets running: find out where they break.',
    chipped:
      'Chipped, cracked or crazed: out of use at once, never back on the shelf. Wrapped, in its own bin, stroke on this card.',
    assumed: 'Expected numbers rest on usual rates unless this house has counted its own.',
    broken: 'Broken glass near ice or food: all of it goes; empty and clean the whole bin.',
  },
};

/** Words of the sections that answer further questions. Arguments are ready-made text. */

export const sectionWords = {
  alternatives: {
    head: 'What could be done instead',
    none: 'The scenario names no alternatives. Add some, such as another clearing round, and they stand here side by side.',
  },
  map: {
    head: 'What another machine is worth in ware',
    worthOf: (cls: string, steps: string): string => `With the ${cls}: ${steps}.`,
    step: (to: string, pieces: string, money: string): string =>
      `machine ${to} saves ${pieces} pieces of ware (${money}), by how often tables are cleared`,
    noise: (days: string): string =>
      `Pieces are told at the mean price of the ware. Each point rests on ${days} days, so a difference of a few pieces may be the luck of the draw. Below zero: another machine starts racks emptier, and more ware is needed.`,
  },
  moves: {
    head: 'What to measure first',
    nothingToMeasure: 'No assumed input with a range moves the order.',
  },
  racks: {
    head: 'How the ware fills its racks',
    fits: (name: string, pieces: string, rack: string): string =>
      `${name}: ${pieces} in one ${rack}`,
    cliff: (change: string, less: boolean, dimension: string, then: string, now: string): string =>
      `; ${change} ${less ? 'less' : 'more'} ${dimension}: ${then === '0' ? 'it no longer fits' : `${then} instead of ${now}`}`,
    near: (change: string, less: boolean, dimension: string, then: string): string =>
      `${change} ${less ? 'less' : 'more'} ${dimension}: ${then}`,
    noCliff: '; no small change of its measures makes it more or fewer',
    dimension: {
      rim: 'rim',
      handle: 'handle',
      handleWidth: 'width of handle',
      height: 'height',
      depth: 'depth',
    },
    usedCaption: 'Pieces in a rack, in the racks of this house',
    otherCaption: 'Pieces in a rack, in other racks',
    otherRacks: 'The same ware in other racks',
    planned: 'fewest loads',
    plan: (used: string | null, fewest: string): string =>
      used === null
        ? `Were every rack full, the racks with fewest loads would be ${fewest} a day.`
        : used === fewest
          ? `Were every rack full, they would be ${used} a day; no other choice of racks takes fewer.`
          : `Were every rack full, they would be ${used} a day in the racks in use, ${fewest} in those with fewest loads.`,
    head2: { rack: 'Rack', near: 'Nearest step', load: 'Loaded', slack: 'Slack' },
    searched:
      'Worked out from the shapes, for the patterns tried; a cleverer one may hold more. Slack: how much the rim may grow before the pattern loses pieces.',
    lift: (reach: string, from: string, to: string): string =>
      `Lift index: NIOSH lifting equation for a lift from ${from} to ${to}, hands ${reach} ahead of the ankles.`,
    quarters: 'Quarter hour by quarter hour',
    drawingTable: 'The drawing in figures',
    drawn: (text: string): string => `${text}. Seen from above, to scale.`,
    shape: 'Shape',
    shapesCaption: (mm: string): string => `The same drinks in cups ${mm} wider`,
    shapesTable: 'Two shapes of cup',
    wider: (mm: string): string => `${mm} wider`,
  },
  suit: {
    head: 'Which vessel for which drink',
    apart: (count: string, all: string, parity: string): string =>
      `${count} of ${all} drinks do not taste alike in the house and to take away (strengths more than ${parity} apart).`,
    alike: (all: string): string => `All ${all} drinks taste alike in the house and to take away.`,
    notCompared: 'No drink has a recipe on both sides of the counter, so strength is not compared.',
    consequences: {
      harm: 'Can hurt',
      unusable: 'Hard or impossible to use',
      taste: 'Tastes different',
      cost: 'Costs more than it need',
      unknown: 'Not known yet',
      note: 'To mind',
    },
    strengthCaption: 'Strength: grams of coffee solids in 100 ml of drink',
    strengthHead: [
      'Drink',
      'Served',
      'Vessel',
      'Brim',
      'Liquid',
      'Dose',
      'Of the shot',
      'Strength',
      'Away over house',
      'Taste',
    ],
    house: 'in the house',
    away: 'to take away',
    level: 'alike',
    notLevel: 'not alike',
    caffeine: 'Caffeine goes with the coffee behind a drink, not with its strength.',
    heatCaption: (minutes: string, room: string): string =>
      `Heat at the first sip, after ${minutes}, in a room at ${room} (an estimate from still air)`,
    heatHead: (low: string): readonly string[] => [
      'Drink',
      'Poured',
      'From a cold vessel',
      'From a warmed one',
      'From paper',
      `Under ${low} after`,
    ],
    wareCaption: 'The vessels',
    wareHead: [
      'Ware',
      'Brim',
      'Mass',
      'Filled',
      'Easy to hold',
      'Saucer',
      'In a rack',
      'Outside of the wall',
    ],
    yes: 'yes',
    no: 'no',
    unsure: 'not known',
    remedies: 'How each drink could taste alike on both sides of the counter',
    cannot: (what: string, why: string): string =>
      `Not possible: ${what}${why === '' ? '' : ` (${why})`}`,
    mindful: (what: string, why: string): string => (why === '' ? what : `${what} (${why})`),
    merges: 'Vessels that might be one',
    merge: (keep: string, drop: string, saved: string, mind: string): string =>
      `${keep} for ${drop} too${saved}${mind === '' ? '' : ` (${mind})`}`,
    merged: (pooled: string, apart: string): string => `: ${pooled} pieces instead of ${apart}`,
    assumed: 'Assumed, for want of a figure in the file',
    assumedHead: ['Input', 'Value', 'Plausible range', 'Source'],
    cautions: 'Take care',
  },
};

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
};

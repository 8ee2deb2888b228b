/** Words of the sections that answer further questions. Arguments are ready-made text. */

export const sectionWords = {
  alternatives: {
    head: 'What you could do instead',
    none: 'The scenario has no alternatives. Add some, such as another clearing round, to compare them here.',
  },
  map: {
    head: 'What another machine is worth in ware',
    worthOf: (cls: string, steps: string): string => `With the ${cls}: ${steps}.`,
    step: (to: string, pieces: string, money: string): string =>
      `machine ${to} saves ${pieces} pieces of ware (${money}), by how often tables are cleared`,
    noise: (days: string): string =>
      `Pieces are counted at the average price of the ware. Each point is based on ${days} days, so a difference of a few pieces may be chance. Below zero: another machine starts racks emptier, so more ware is needed.`,
  },
  moves: {
    head: 'What to measure first',
    nothingToMeasure: 'No assumed input with a range moves the order.',
  },
};

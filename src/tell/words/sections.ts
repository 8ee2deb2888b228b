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
};

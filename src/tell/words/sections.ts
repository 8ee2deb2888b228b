/** Words of the sections that answer further questions. Arguments are ready-made text. */

export const sectionWords = {
  alternatives: {
    head: 'What you could do instead',
    none: 'The scenario has no alternatives. Add some, such as more clearing rounds, to compare them here.',
  },
  map: {
    head: 'How many pieces another machine saves',
    worthOf: (cls: string, steps: string): string =>
      `With the ${cls}, by how often tables are cleared: ${steps}.`,
    saves: (to: string, pieces: string, one: boolean, money: string): string =>
      `machine ${to} saves ${pieces} ${one ? 'piece' : 'pieces'} (${money})`,
    needs: (to: string, pieces: string, one: boolean, money: string): string =>
      `machine ${to} needs ${pieces} ${one ? 'piece' : 'pieces'} more (${money})`,
    either: (to: string, more: string, fewer: string, dearer: string, cheaper: string): string =>
      `with machine ${to} you need between ${more} more (${dearer}) and ${fewer} fewer pieces (${cheaper})`,
    changesNothing: (to: string): string => `machine ${to} changes nothing`,
    noise: (days: string): string =>
      `Pieces are counted at their average price. Each point is based on ${days} days, so a difference of a few pieces may be chance. Another machine can also need more pieces, because racks then start emptier.`,
  },
  moves: {
    head: 'What to measure first',
    nothingToMeasure: 'No assumed input with a range moves the order.',
  },
};

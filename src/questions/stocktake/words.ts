/** What the stocktake says, in words. Arguments are ready-made text unless their name says otherwise. */
export const say = {
  none: '–',
  heading: (days: string, date: string): string => `Stocktake of ${date}, after ${days} days`,
  lead: (list: string, total: string, costs: string): string =>
    `Order now: ${list}, for ${total} with ${costs}.`,
  leadUnpriced: (list: string, why: string): string => `Order now: ${list}. ${why}`,
  leadWait: (list: string, total: string, costs: string): string =>
    `Wait with the order until you know: ${list}, for ${total} with ${costs}.`,
  leadWaitUnpriced: (list: string, why: string): string =>
    `Wait with the order until you know: ${list}. ${why}`,
  unpriced: {
    notSold: 'No supplier sells them, so there is no price.',
    noSupplier: 'The scenario names no supplier, so there is no price.',
  },
  leadNothing: 'There is enough of everything that was counted: order nothing now.',
  findings: 'What the count says',
  gone: (missing: string, expected: string, ware: string, time: string, how: string): string =>
    `${ware}: ${missing} of ${expected} lost in ${time}${how}`,
  brokenAndMissing: (broken: string, rest: string): string =>
    ` (${broken} broken, ${rest} missing)`,
  noneGone: (ware: string, expected: string): string => `${ware}: none of ${expected} lost`,
  retired: (pieces: string): string => `, ${pieces} retired`,
  asUsual: (usual: string): string => `, about what is usual (${usual}).`,
  byLuck: (usual: string): string => `; ${usual} is usual, and so small a difference may be luck.`,
  times: (times: string, usual: string): string => `, ${times} times what is usual (${usual}).`,
  fewer: (usual: string): string => `, fewer than is usual (${usual}).`,
  tooMany: (times: string, usual: string): string =>
    `, ${times} times what is usual (${usual}). Find out where before you buy: look in the bins, ask who takes cups away, and count again.`,
  tooManyUnknown: (usual: string): string =>
    `, far more than is usual (${usual}). Find out where before you buy, and count again.`,
  tooFew: (usual: string): string =>
    `, far fewer than is usual (${usual}). Count again, and check that every delivery is entered.`,
  aYear: (counted: string, pieces: string): string =>
    ` We expect you to lose about ${pieces} of the ${counted} in a year.`,
  usualAYear: (counted: string, pieces: string): string =>
    ` Until you know, we go by the usual rate: expect to lose about ${pieces} of the ${counted} you have in a year.`,
  askFirst: (list: string): string => `First find out what happened to: ${list}.`,
  orderNow: (pieces: string, priced: string, why: string): string =>
    ` Order ${pieces} now (${priced}).${why}`,
  orderLater: (pieces: string, priced: string, why: string): string =>
    ` Wait with the order of ${pieces} (${priced}).${why}`,
  priced: (cartons: string, money: string, costs: string): string =>
    `${cartons}, ${money} with ${costs}`,
  wholeCartons: (needed: string): string => ` You need ${needed}; cartons are whole.`,
  smallestOrder: (needed: string): string =>
    ` You need ${needed}; the rest is there for the supplier’s smallest order, or a better price or freight. Put other items on the order instead if you need them.`,
  orderUnquoted: (pieces: string, why: string): string => ` Order ${pieces} now${why}.`,
  orderLaterUnquoted: (pieces: string, why: string): string =>
    ` Wait with the order of ${pieces}${why}.`,
  notSold: '; no supplier sells it',
  enough: (counted: string, point: string): string =>
    ` Enough for now: you have ${counted}; order when a count finds fewer than ${point}.`,
  enoughForGood: (counted: string): string => ` Enough: you have ${counted}.`,
  shortForGood: (counted: string, par: string): string =>
    ` You have ${counted}, fewer than the par of ${par}, and the supplier does not sell it again.`,
  carton: (count: number): string => `${count} ${count === 1 ? 'carton' : 'cartons'}`,
  time: (days: number): string =>
    days < 45
      ? `${days} ${days === 1 ? 'day' : 'days'}`
      : days < 700
        ? `${Math.round(days / 30.4)} months`
        : `${(days / 365).toFixed(1)} years`,
  expected:
    'What we expect for a year combines this count with what is usual: the longer you count, the more your own count decides (weights with --all).',
  charge: (name: string, amounts: string): string => `${name}, before tax: ${amounts}.`,
  countCaption: 'The count',
  countHead: [
    'Item',
    'There\nwere',
    'Counted',
    'Retired',
    'Broken',
    'Missing',
    'Order\nbelow',
    'Needed\nnow',
  ],
  uncounted: (list: string): string => `Not counted: ${list}.`,
  rates: 'Loss rates before and after',
  brokenCaption: 'Broken per 1,000 uses',
  brokenHead: ['Item', 'Lost per\n1,000 uses', '95 %\ninterval'],
  walkedCaption: 'Walked off, a year, for each piece held',
  rateHead: ['Assumed', 'From\nnow on', '95 %\ninterval', 'Weight of\nassumed'],
  interval: (low: string, high: string): string => `${low}–${high}`,
  ratesNote:
    'Lost: all pieces missing in this count, broken or not, with the exact interval for a count (Garwood 1936). From now on: the assumed rate brought up to date with the count (gamma–Poisson); the weight says how much of it is still assumed. Where a count looks wrong, the order uses the assumed rate.',
};

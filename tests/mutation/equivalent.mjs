// Changes that no test can notice, each with its reason; named by file and line of code, so that a changed line is judged again.
const PRICES =
  'any price gives a valid bound, so the answer is the same; which prices are tried decides only how soon it is proved';
const ARGUED = [
  {
    file: 'src/sizing/lagrangian-bounds.ts',
    code: 'else price = below === 0 ? price / wide : (below + above) / 2;',
    from: ['===', '0'],
    because: PRICES,
  },
  { file: 'src/sizing/lagrangian-bounds.ts', code: 'let below = 0;', from: ['0'], because: PRICES },
  {
    file: 'src/sizing/lagrangian-bounds.ts',
    code: 'let highest = -1;',
    from: ['1'],
    because: 'it stands where no number of pieces is left, and any number below 0 says so',
  },
  {
    file: 'src/sizing/least-cost-stock.ts',
    code: 'if (smaller !== null && this.#width(smaller) > 0.7 * before) {',
    from: ['*'],
    because:
      'it decides when a box is split rather than shrunk again; both end at the same least cost',
  },
  {
    file: 'src/sizing/cross-validated-misses.ts',
    code: 'const share = (plain - kept.misses) / (broken.misses - kept.misses);',
    from: ['/'],
    because:
      'a guess between two bounds that is held inside them: it decides which values are tried, not where the search ends',
  },
  {
    file: 'src/cafe/bench.ts',
    code: 'if (inUse + 1 > this.mostInUse[kind]!) this.mostInUse[kind] = inUse + 1;',
    from: ['1'],
    because: 'with + 2 on the left alone the most is written once more with the value that it has',
  },
  {
    file: 'src/cafe/day.ts',
    code: 'firstDrink = new Int32Array(257);',
    from: ['257'],
    because: 'room to begin with; it grows when needed',
  },
  {
    file: 'src/cafe/events.ts',
    code: 'drinkDone: 12,',
    from: ['12'],
    because: 'only the order of the ranks matters, and 13 has the same neighbours',
  },
  {
    file: 'src/cafe/returning.ts',
    code: 'const key = calendar.time * RANKS + calendar.rank;',
    from: ['+'],
    because: 'pieces return at rank 0, so plus and minus give the same key',
  },
];

/** Why a change makes no difference; undefined where that is not argued. */
export const equivalent = ({ file, code, from }) =>
  ARGUED.find((one) => one.file === file && one.code === code && one.from.includes(from))?.because;

// Changes that no test can notice, each with its reason; named by file and line of code, so that a changed line is judged again.
const ARGUED = [
  {
    file: 'src/sizing/lagrangian-bounds.ts',
    code: 'else price = below === 0 ? price / wide : (below + above) / 2;',
    from: '===',
    because:
      'any price gives a valid bound, so the answer is the same; which prices are tried decides only how soon it is proved',
  },
];

/** Why a change makes no difference; undefined where that is not argued. */
export const equivalent = ({ file, code, from }) =>
  ARGUED.find((one) => one.file === file && one.code === code && one.from === from)?.because;

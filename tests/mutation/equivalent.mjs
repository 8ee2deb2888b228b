// Changes that no test can notice, each with its reason; named by file and line of code, so that a changed line is judged again.
const ARGUED = [];

/** Why a change makes no difference; undefined where that is not argued. */
export const equivalent = ({ file, code, from }) =>
  ARGUED.find((one) => one.file === file && one.code === code && one.from === from)?.because;

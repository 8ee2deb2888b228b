// Every operator and constant of some files, what it is changed to, and a draw from them by a seed.
import { readFileSync } from 'node:fs';

const CHANGES = {
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
  '??': '&&',
  true: 'false',
  false: 'true',
  min: 'max',
  max: 'min',
};

/** The text with comments, strings and imports blanked, so that places stay the same. */
const codeOf = (text) =>
  text.replace(
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`|^import[\s\S]*?;$/gm,
    (found) => found.replace(/[^\n]/g, ' '),
  );

/** Whether a place belongs to a type, which no run can notice. */
function isType(code, index) {
  const line = code.slice(code.lastIndexOf('\n', index) + 1, code.indexOf('\n', index));
  return /^\s*(export )?(type|interface|readonly \w+\??:|\| )/.test(line) && !line.includes(' = ');
}

/** Every operator and constant of a file: operators stand between spaces, as the formatter sets them. */
export function placesOf(path, file) {
  const text = readFileSync(path, 'utf8');
  const code = codeOf(text);
  const token =
    /(?<= )(<=?|>=?|===|!==|\+=?|-=?|\*|\/|&&|\|\||\?\?)(?= )|\b(true|false)\b|(?<=Math\.)(min|max)\b|(?<![\w.$])\d[\d_]*(\.\d+)?(?![\w.])/g;
  return [...code.matchAll(token)]
    .filter(({ index }) => !isType(code, index))
    .map(({ index, 0: from }, at, all) => {
      const begins = text.lastIndexOf('\n', index) + 1;
      return {
        file,
        index,
        from,
        to: CHANGES[from] ?? `(${from} + 1)`,
        line: text.slice(0, index).split('\n').length,
        code: text.slice(begins, text.indexOf('\n', index)).trim(),
        // Which of those alike in its line, from 1.
        nth: all.slice(0, at + 1).filter((one) => one.index >= begins && one[0] === from).length,
      };
    });
}

/** Drawn without replacement by a generator of its own, so that a seed gives the same list everywhere. */
export function drawn(places, count, seed) {
  let state = Number(seed) >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const left = [...places];
  return Array.from(
    { length: Math.min(count, left.length) },
    () => left.splice(Math.floor(uniform() * left.length), 1)[0],
  );
}

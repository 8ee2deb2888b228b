// npm run study:mutation [most] [seed]: does any test notice a changed operator or constant of src/cafe, src/sizing, src/statistics?
// Changes are drawn from all there are, each is tried in a copy of the project, and each result is a line of mutation.jsonl:
// a run that was stopped goes on where it was. Figures go to reports/mutation.json. Takes hours.
import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const [most = '300', seed = '1'] = process.argv.slice(2);
const LIMIT_MS = 15 * 60_000;
/** Tests that are about a folder, the quickest first. */
const TESTS = {
  'src/statistics': ['tests/statistics', 'tests/sizing'],
  'src/sizing': ['tests/sizing', 'tests/questions/size'],
  'src/cafe': ['tests/cafe', 'tests/published', 'tests/questions/walk'],
};
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

/** Every operator and constant of a file: operators stand between spaces, as the formatter sets them. */
function placesOf(file) {
  const code = codeOf(readFileSync(join(root, file), 'utf8'));
  const token =
    /(?<= )(<=?|>=?|===|!==|\+=?|-=?|\*|\/|&&|\|\||\?\?)(?= )|\b(true|false)\b|(?<=Math\.)(min|max)\b|(?<![\w.$])\d[\d_]*(\.\d+)?(?![\w.])/g;
  return [...code.matchAll(token)]
    .filter(({ index }) => !isType(code, index))
    .map(({ index, 0: from }) => ({ file, index, from, to: CHANGES[from] ?? `(${from} + 1)` }));
}

/** Whether a place belongs to a type, which no run can notice. */
function isType(code, index) {
  const line = code.slice(code.lastIndexOf('\n', index) + 1, code.indexOf('\n', index));
  return /^\s*(export )?(type|interface|readonly \w+\??:|\| )/.test(line) && !line.includes(' = ');
}

const files = Object.keys(TESTS).flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true })
    .filter((name) => name.endsWith('.ts') && !/schema|model\.ts/.test(name))
    .toSorted()
    .map((name) => `${folder}/${name}`),
);
const places = files.flatMap(placesOf);

/** Drawn without replacement by a generator of its own, so that a seed gives the same list everywhere. */
function drawn(count) {
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

const studies = join(root, 'node_modules/.studies');
mkdirSync(studies, { recursive: true });
const log = join(studies, 'mutation.jsonl');
const known = existsSync(log)
  ? readFileSync(log, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
  : [];
const copy = join(studies, 'mutant');
rmSync(copy, { recursive: true, force: true });
mkdirSync(copy);
for (const name of ['src', 'tests', 'shared', 'scenarios', 'package.json', 'tsconfig.json'])
  cpSync(join(root, name), join(copy, name), { recursive: true });
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
symlinkSync(join(root, 'dist'), join(copy, 'dist'));
writeFileSync(
  join(copy, 'vitest.config.mjs'),
  "export default { test: { include: ['tests/**/*.test.ts'], testTimeout: 300000, maxWorkers: 1, isolate: false, reporters: ['dot'] } };\n",
);

/** What the tests say of the copy as it stands. */
function tested(folders) {
  for (const folder of folders) {
    const { status, error } = spawnSync(
      process.execPath,
      [
        join(root, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--config',
        'vitest.config.mjs',
        '--bail',
        '1',
        folder,
      ],
      { cwd: copy, timeout: LIMIT_MS, encoding: 'utf8', killSignal: 'SIGKILL' },
    );
    if (error !== undefined) return 'caught by time';
    if (status !== 0) return `caught by ${folder}`;
  }
  return 'survived';
}

const describe = ({ file, index, from, to }) => {
  const text = readFileSync(join(root, file), 'utf8');
  const line = text.slice(0, index).split('\n').length;
  return { file, line, from, to, code: text.split('\n')[line - 1].trim() };
};

const chosen = drawn(Number(most));
console.log(
  `${places.length} operators and constants in ${files.length} files; ${chosen.length} drawn with seed ${seed}`,
);
for (const place of chosen) {
  const key = `${place.file}:${place.index}:${place.from}`;
  if (known.some((one) => one.key === key)) continue;
  const original = readFileSync(join(root, place.file), 'utf8');
  writeFileSync(
    join(copy, place.file),
    original.slice(0, place.index) + place.to + original.slice(place.index + place.from.length),
  );
  const folder = Object.keys(TESTS).find((one) => place.file.startsWith(one));
  const result = { key, seed, ...describe(place), outcome: tested(TESTS[folder]) };
  writeFileSync(join(copy, place.file), original);
  known.push(result);
  appendFileSync(log, `${JSON.stringify(result)}\n`);
  console.log(
    `${result.outcome}: ${result.file}:${result.line}: ${result.from} -> ${result.to}: ${result.code}`,
  );
}
const survivors = known.filter(({ outcome }) => outcome === 'survived');
writeFileSync(
  join(root, 'reports/mutation.json'),
  `${JSON.stringify({ seed, places: places.length, tried: known.length, caught: known.length - survivors.length, survivors: survivors }, null, 1)}\n`,
);

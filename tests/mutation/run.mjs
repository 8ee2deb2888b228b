// npm run study:mutation [most] [seed]: does any test notice a changed operator or constant of src/cafe, src/sizing, src/statistics?
// Changes are drawn from all there are and tried in a copy of the project, in a runner that stays warm. Only tests that import the changed
// file are run, those of its own folder first, then the quickest; those over SLOW_S are left out. That an unchanged copy passes is seen first.
// Each result is a line of mutation.jsonl: a run that was stopped goes on where it was. Figures go to reports/mutation.json.
import { fork } from 'node:child_process';
import * as fs from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawn, placesOf } from './places.mjs';
import { equivalent } from './equivalent.mjs';

const { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } = fs;
const root = fileURLToPath(new URL('../..', import.meta.url));
const [most = '300', seed = '1'] = process.argv.slice(2);
const FOLDERS = ['src/statistics', 'src/sizing', 'src/cafe'];
/** Where tests of these folders are; what tests the built command, or a browser, sees no change of a source. */
const TESTS = ['cafe', 'engine', 'sizing', 'statistics', 'comparing', 'questions'];
/** Processor time of a test file beyond which it is not run, s. */
const SLOW_S = 15;
/** Processor time of all tests of one change, s; those of the source's own folder are run in any case. */
const MOST_S = 40;
/** A runner that uses more than so many times what the unchanged copy did, and this much more, is in a loop without end. */
const [TIMES, MORE_S] = [4, 30];

const filesIn = (folder, name) =>
  readdirSync(join(root, folder), { recursive: true })
    .filter((one) => name.test(one))
    .toSorted()
    .map((one) => `${folder}/${one}`);
const files = FOLDERS.flatMap((folder) => filesIn(folder, /^(?!.*(schema|model\.ts)).*\.ts$/));
const places = files.flatMap((file) => placesOf(join(root, file), file));

/** Every file that one leads to by its imports. */
function importsOf(file, found = new Set()) {
  if (found.has(file)) return found;
  found.add(file);
  const text = readFileSync(join(root, file), 'utf8');
  for (const [, from] of text.matchAll(/(?:from |import\()'(\.[^']+)'/g)) {
    const path = join(dirname(file), from).replace(/\.js$/, '.ts');
    if (existsSync(join(root, path)) && path.endsWith('.ts')) importsOf(path, found);
  }
  return found;
}
const tests = TESTS.flatMap((folder) => filesIn(`tests/${folder}`, /\.test\.ts$/))
  .map((file) => ({ file, imports: importsOf(file) }))
  .filter(({ imports }) => !imports.has('tests/cli/run.ts'));

const studies = join(root, 'node_modules/.studies');
const copy = join(studies, 'mutant');
fs.rmSync(copy, { recursive: true, force: true });
mkdirSync(copy, { recursive: true });
for (const name of ['src', 'tests', 'shared', 'scenarios', 'package.json', 'tsconfig.json'])
  cpSync(join(root, name), join(copy, name), { recursive: true });
fs.symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

let runner = null;
async function started() {
  if (runner !== null) return runner;
  const child = fork(join(copy, 'tests/mutation/warm.mjs'), { cwd: copy, stdio: 'inherit' });
  await new Promise((ready) => child.once('message', ready));
  runner = child;
  return child;
}

/** Processor time of a process and its threads, s. */
function usedBy({ pid }) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}

/** The file that differed in the run before: a runner that keeps what it read of it would show its change in every run that follows. */
let last = null;

/** What tests say of the copy as it stands. @param changed the file that differs, or null @param limit processor time, s */
async function tested(changed, list, limit) {
  const child = await started();
  const before = usedBy(child);
  return new Promise((done) => {
    const end = (said) => {
      clearInterval(watch);
      child.removeAllListeners();
      done(said);
    };
    const watch = setInterval(() => {
      if (usedBy(child) - before < limit) return;
      runner = null;
      end({ failed: 'time' });
      child.kill('SIGKILL');
    }, 200);
    child.once('exit', () => {
      runner = null;
      end({ failed: 'the runner ended' });
    });
    child.once('message', (said) => end({ ...said, seconds: usedBy(child) - before }));
    child.send({
      changed: [last, changed].filter(Boolean).map((file) => join(copy, file)),
      tests: list.map((file) => join(copy, file)),
    });
    last = changed;
  });
}

const linesOf = (log) =>
  existsSync(log)
    ? readFileSync(log, 'utf8')
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line))
    : [];
const log = (name, line) => fs.appendFileSync(join(studies, name), `${JSON.stringify(line)}\n`);

const chosen = drawn(places, Number(most), seed);
console.log(
  `${places.length} operators and constants in ${files.length} files; ${chosen.length} drawn with seed ${seed}`,
);

// What each test takes in an unchanged copy; one that fails there would catch everything.
const unchanged = new Map(linesOf(join(studies, 'unchanged.jsonl')).map((one) => [one.file, one]));
for (const { file } of tests) {
  if (unchanged.has(file)) continue;
  const { failed, name, seconds = SLOW_S + 1, ran } = await tested(null, [file], SLOW_S + 15);
  const one = { file, seconds, passed: failed === null && ran === 1, failed: name ?? failed };
  unchanged.set(file, one);
  log('unchanged.jsonl', one);
  console.log(`unchanged: ${file}: ${one.passed ? `${seconds.toFixed(1)} s` : one.failed}`);
}
const usable = tests.filter(({ file }) => {
  const { passed, seconds } = unchanged.get(file);
  return passed && seconds <= SLOW_S;
});

/** Tests of a source: those of its own folder first, then the quickest, for up to MOST_S. */
function testsOf(source) {
  const own = `tests/${source.split('/')[1]}/`;
  const rank = ({ file }) => (file.startsWith(own) ? 0 : 1000) + unchanged.get(file).seconds;
  let sum = 0;
  return usable
    .filter(({ imports }) => imports.has(source))
    .toSorted((a, b) => rank(a) - rank(b))
    .map(({ file }) => file)
    .filter((file) => (sum += unchanged.get(file).seconds) <= MOST_S || file.startsWith(own));
}

const known = linesOf(join(studies, 'mutation.jsonl')).filter((one) => one.seed === seed);
for (const place of chosen) {
  const key = `${place.file}:${place.index}:${place.from}`;
  if (known.some((one) => one.key === key)) continue;
  const original = readFileSync(join(root, place.file), 'utf8');
  const path = join(copy, place.file);
  const { index, from, to } = place;
  writeFileSync(path, original.slice(0, index) + to + original.slice(index + from.length));
  const list = testsOf(place.file);
  const usual = list.reduce((sum, file) => sum + unchanged.get(file).seconds, 0);
  const { failed, name, seconds } = await tested(place.file, list, usual * TIMES + MORE_S);
  writeFileSync(path, original);
  // A test that fails without the change too has caught nothing.
  const by = list.find((file) => failed === join(copy, file));
  if (by !== undefined && (await tested(null, [by], SLOW_S * TIMES)).failed !== null)
    throw new Error(`${by} fails in the unchanged copy too, after ${place.file}:${place.line}`);
  const caughtBy = failed === null ? null : `${by ?? failed}${name ? `: ${name}` : ''}`;
  const result = { key, seed, ...place, tests: list.length, seconds, caughtBy };
  known.push(result);
  log('mutation.jsonl', result);
  console.log(
    `${caughtBy === null ? 'SURVIVED' : 'caught'} ${place.file}:${place.line} ${from} -> ${to}: ${place.code}`,
  );
  write();
}
write();
runner?.kill('SIGKILL');

function write() {
  const at = ({ file, line, from, to, code }) => ({ file, line, from, to, code });
  const survivors = known.filter(({ caughtBy }) => caughtBy === null);
  const argued = (one) => equivalent(one) ?? null;
  const figures = {
    seed,
    places: places.length,
    drawn: chosen.length,
    tried: known.length,
    caught: known.length - survivors.length,
    caughtByTime: known.filter(({ caughtBy }) => caughtBy === 'time').length,
    equivalent: survivors.filter(argued).map((one) => ({ ...at(one), because: argued(one) })),
    survivors: survivors.filter((one) => !argued(one)).map(at),
    testFiles: usable.length,
    leftOut: tests
      .map(({ file }) => unchanged.get(file))
      .filter(({ file }) => !usable.some((one) => one.file === file))
      .map(({ file, passed, failed }) => ({ file, because: passed ? 'slow' : failed })),
  };
  writeFileSync(join(root, 'reports/mutation.json'), `${JSON.stringify(figures, null, 1)}\n`);
}

// npm run study:mutation [most] [seed] [part/parts]: does any test notice a changed operator or constant of src/cafe, src/sizing, src/statistics?
// Changes are drawn from all there are and made in a copy of the project in plain JavaScript. Each is tried in a fresh process, which runs
// files of tests that import the changed source, up to the first that fails: the digests and the cheap ones of its own folder, then, where
// all passed, the rest of that folder and the nearest of others. What a digest caught is tried by tests that are none at the end.
// A file is used that passes unchanged in the same way; after every GUARD changes what caught them has to pass unchanged once more.
// Each result is a line of node_modules/.studies/mutation/tried.jsonl: a run that was stopped goes on where it was, and one that survived
// is tried again by tests that it has not met; remove that folder to begin anew. Parts and seeds may run beside each other. Figures by seed go to reports/mutation.json
// (with 0/0 for the parts: figures alone, of what has been tried so far; with a fourth word, a number: nothing but so many of those that a digest
// caught, by tests that are none).
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Copy } from './copy.mjs';
import { equivalent } from './equivalent.mjs';
import { figuresOf } from './figures.mjs';
import { drawn, placesOf } from './places.mjs';
import { filesIn, isDigest, Tests } from './tests.mjs';
import { trial } from './trial.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const [most = '300', seed = '1', share = '1/1', beyondOnly] = process.argv.slice(2);
const [part, parts] = share.split('/').map(Number);
const FOLDERS = ['src/statistics', 'src/sizing', 'src/cafe'];
/** Processor time of the tests that a change is tried with first, s. */
const QUICK_S = 9.5;
/** A test that takes so many times what it took unchanged, and this much more, is held to have no end. */
const [TIMES, MORE_S] = [4, 2.5];
const GUARD = 60;

const studies = join(root, 'node_modules/.studies/mutation');
fs.mkdirSync(studies, { recursive: true });
const store = {
  lines(name) {
    const file = join(studies, `${name}.jsonl`);
    const text = fs.existsSync(file) ? fs.readFileSync(file, 'utf8').trim() : '';
    return text === '' ? [] : text.split('\n').map((line) => JSON.parse(line));
  },
  log: (name, line) =>
    fs.appendFileSync(join(studies, `${name}.jsonl`), `${JSON.stringify(line)}\n`),
};

/** The sources that a study began with, and their commit: it goes on with them, whatever is done to the project meanwhile. */
const house = join(studies, 'house');
if (!fs.existsSync(house)) {
  fs.cpSync(join(root, 'src'), join(house, 'src'), { recursive: true });
  const head = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root });
  fs.writeFileSync(join(house, 'commit'), `${head}`.trim());
}
const commit = fs.readFileSync(join(house, 'commit'), 'utf8');
const copy = new Copy(root, house, join(studies, `copy-${seed}-${part}`));
const sources = FOLDERS.flatMap((folder) =>
  filesIn(house, folder, /^(?!.*(schema|model\.ts)).*\.ts$/),
);
const places = sources.flatMap((file) => placesOf(join(house, file), file));

/** A place by what it looks like, so that a change elsewhere in its file does not make it another; of lines alike, by which of them it is. */
function keyOf({ file, line, index, from, code }) {
  const alike = places.filter((one) => one.file === file && one.code === code);
  const lines = [...new Set(alike.map((one) => one.line))];
  const at = alike.filter((one) => one.line === line).findIndex((one) => one.index === index);
  const ofLines = lines.indexOf(line) === 0 ? '' : ` (${lines.indexOf(line) + 1})`;
  return `${file}:${at}:${from}:${code}${ofLines}`;
}
const markOf = (place) => createHash('sha256').update(keyOf(place)).digest('hex').slice(0, 8);

/**
 * What a seed drew stays drawn, as far as the sources still have it. A new seed leaves out what others drew, for which tests may have been
 * written meanwhile: so it tells how tests fare with changes that nobody has looked at.
 */
const to = join(root, 'reports/mutation.json');
const reported = () =>
  fs.existsSync(to) ? (JSON.parse(fs.readFileSync(to, 'utf8')).seeds ?? {}) : {};
const earlier = reported();
const own = earlier[seed]?.marks ?? [];
const others = Object.keys(earlier).filter((one) => one !== seed);
const left = new Set(others.flatMap((one) => earlier[one].marks));
const chosen =
  own.length >= Number(most)
    ? own.slice(0, Number(most)).flatMap((mark) => places.find((one) => markOf(one) === mark) ?? [])
    : drawn(
        places.filter((place) => !left.has(markOf(place))),
        Number(most),
        seed,
      );
console.log(
  `${places.length} operators and constants in ${sources.length} files; ${chosen.length} drawn with seed ${seed}`,
);

const fileOf = (path) => path?.slice(copy.to.length + 1).replace(/\.js$/, '.ts') ?? null;
async function tried(list, limitOf) {
  const paths = list.map((file) => copy.path(file));
  const said = await trial(copy.to, paths, (path, part) => limitOf(fileOf(path), part));
  return { ...said, by: fileOf(said.by) };
}
const tests = new Tests(root, house, sources, tried, store);
const limitOf = (file, part) => tests.secondsOf(file, part) * TIMES + MORE_S;

/** What came of each so far, by whichever part. */
const results = () =>
  new Map(
    store
      .lines('tried')
      .filter((one) => one.seed === seed)
      .map((one) => [one.key, one]),
  );
const known = results();

let caughtBy = new Set();
let since = 0;
/** @throws Error where a file of tests that is held to have caught something fails unchanged too */
async function guard() {
  const files = [...caughtBy];
  [caughtBy, since] = [new Set(), 0];
  if (files.length === 0) return;
  const { caught, by, name } = await tried(files, limitOf);
  if (caught !== null) throw new Error(`${by} > ${name} fails unchanged too: ${caught}`);
  console.log(`unchanged code passes: ${files.join(', ')}`);
}

/** What files of tests say of a change; null where it gives no program, or the same one. */
async function triedWith(place, list) {
  const isOther = await copy.change(place);
  const said = isOther ? await tried(list, limitOf) : null;
  copy.restore();
  if (said !== null && said.by !== null) caughtBy.add(said.by);
  since += 1;
  if (since >= GUARD) await guard();
  return said;
}

function keep(result) {
  known.set(result.key, result);
  store.log('tried', result);
  const all = results();
  const { caught, by, beyond, file, line, from, to, code, seconds } = result;
  const verdict = caught === null ? 'SURVIVED' : `${caught} (${by})`;
  const without = beyond === undefined ? '' : `, without digests: ${beyond ?? 'NOT CAUGHT'}`;
  console.log(
    `${verdict}${without} ${file}:${line} ${from} -> ${to}: ${code} [${seconds.toFixed(1)} s, ${all.size}]`,
  );
  report(all);
}

/** @param all results by key */
function report(all) {
  const figures = figuresOf({
    places,
    chosen,
    sources,
    tests,
    results: chosen.flatMap((one) =>
      all.has(keyOf(one)) ? { ...all.get(keyOf(one)), ...one } : [],
    ),
  });
  const marks = own.length >= chosen.length ? own : chosen.map(markOf);
  const seeds = { ...reported(), [seed]: { ...figures, marks } };
  const text = JSON.stringify({ seeds }, null, 1);
  // The marks of a seed in one line.
  const short = text.replaceAll(/(?<="marks": )\[[^\]]*\]/g, (list) => list.replaceAll(/\s+/g, ''));
  fs.writeFileSync(`${to}.${process.pid}`, `${short}\n`);
  fs.renameSync(`${to}.${process.pid}`, to);
}

/** Tries those that no test has caught yet with files that they have not met. */
async function round(some, filesFor) {
  for (const place of some) {
    const key = keyOf(place);
    const before = known.get(key);
    if (before !== undefined && before.caught !== null) continue;
    const list = (await filesFor(place.file)).filter(
      (file) => !(before?.met ?? []).includes(tests.stamped(file)),
    );
    if (list.length === 0) continue;
    const said = await triedWith(place, list);
    const { caught = 'same', by = null, name = '', said: why = '', seconds = 0 } = said ?? {};
    const met = [...(before?.met ?? []), ...list.map((file) => tests.stamped(file))];
    const spent = seconds + (before?.seconds ?? 0);
    keep({ key, seed, commit, ...place, caught, by, name, why, seconds: spent, met });
  }
}

const mine = chosen.filter((_, at) => at % parts === part % parts);
const open = mine.filter((place) => !equivalent(place));
const argued = mine.filter(equivalent);
if (beyondOnly === undefined) {
  await round(open, (source) => tests.digests(source));
  await round(open, (source) => tests.near(source, QUICK_S));
  await round(open, (source) => tests.near(source));
  await round(open, (source) => tests.far(source));
  await round(argued, (source) => tests.near(source));
  await guard();
}
const byDigest = mine
  .map((place) => ({ place, result: known.get(keyOf(place)) }))
  .filter(({ result }) => result?.by != null && isDigest(result.by));
for (const { place, result } of byDigest.slice(0, Number(beyondOnly ?? Infinity))) {
  if (result.beyond !== undefined) continue;
  const list = [...(await tests.near(place.file)), ...(await tests.far(place.file))];
  const said = await triedWith(
    place,
    list.filter((file) => !isDigest(file)),
  );
  keep({
    ...result,
    ...place,
    beyond: said.by,
    beyondIn: commit,
    seconds: result.seconds + said.seconds,
  });
}
await guard();
report(results());

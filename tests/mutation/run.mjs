// npm run study:mutation [most] [seed] [part/parts]: does any test notice a changed operator or constant of src/cafe, src/sizing, src/statistics?
// Changes are drawn from all there are and made in a copy of the project in plain JavaScript. Each is tried in a fresh process, which runs
// files of tests that import the changed source, up to the first that fails: the digests and the cheap ones of its own folder, then, where
// all passed, the rest of that folder and the nearest of others. What a digest caught is tried by tests that are none at the end.
// A file is used that passes unchanged in the same way; after every GUARD changes what caught them has to pass unchanged once more.
// Each result is a line of node_modules/.studies/mutation/tried.jsonl: a run that was stopped goes on where it was, and one that survived
// is tried again by tests that it has not met; remove that folder to begin anew. Parts may run beside each other. Figures by seed go to reports/mutation.json
// (with 0/0 for the parts: figures alone, of what has been tried so far).
import { execFileSync } from 'node:child_process';
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
const [most = '300', seed = '1', share = '1/1'] = process.argv.slice(2);
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
const copy = new Copy(root, house, join(studies, `copy-${part}`));
const sources = FOLDERS.flatMap((folder) =>
  filesIn(house, folder, /^(?!.*(schema|model\.ts)).*\.ts$/),
);
const places = sources.flatMap((file) => placesOf(join(house, file), file));
/** Tests were written for what the first seed draws: other seeds leave that out, and tell how tests fare with changes that nobody has looked at. */
const FIRST = { seed: '1', most: 300 };
const first = seed === FIRST.seed ? [] : drawn(places, FIRST.most, FIRST.seed);
const chosen = drawn(
  places.filter((place) => !first.includes(place)),
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

/** A place by what it looks like, so that a change elsewhere in its file does not make it another. */
function keyOf(place) {
  const same = places.filter(({ file, line }) => file === place.file && line === place.line);
  const { file, from, code } = place;
  return `${file}:${same.indexOf(place)}:${from}:${code}`;
}
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
  const to = join(root, 'reports/mutation.json');
  const { seeds = {} } = fs.existsSync(to) ? JSON.parse(fs.readFileSync(to, 'utf8')) : {};
  seeds[seed] = { commit, ...figures };
  fs.writeFileSync(to, `${JSON.stringify({ seeds }, null, 1)}\n`);
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
    keep({ key, seed, ...place, caught, by, name, why, seconds: spent, met });
  }
}

const mine = chosen.filter((_, at) => at % parts === part % parts);
const open = mine.filter((place) => !equivalent(place));
const argued = mine.filter(equivalent);
await round(open, (source) => tests.digests(source));
await round(open, (source) => tests.near(source, QUICK_S));
await round(open, (source) => tests.near(source));
await round(open, (source) => tests.far(source));
await round(argued, (source) => tests.near(source));
await guard();
for (const place of mine) {
  const before = known.get(keyOf(place));
  if (before.by === null || !isDigest(before.by) || before.beyond !== undefined) continue;
  const list = [...(await tests.near(place.file)), ...(await tests.far(place.file))];
  const said = await triedWith(
    place,
    list.filter((file) => !isDigest(file)),
  );
  keep({ ...before, ...place, beyond: said.by, seconds: before.seconds + said.seconds });
}
await guard();
report(results());

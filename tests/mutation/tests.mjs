// Which files of tests see a source, and what they take unchanged.
import { createHash } from 'node:crypto';
import * as fs from 'node:fs';
import { dirname, join } from 'node:path';

/** Where they are; not those of the built command or of a browser, which see no change of a source. */
const TESTS =
  'cafe engine sizing statistics comparing questions published oracles scenario ordering suiting measuring till page library.test.ts'.split(
    ' ',
  );
/** Processor time of a file of tests beyond which it is not used, s. */
const SLOW_S = 20;
/** Processor time of tests of other folders that one change may be tried with, s. */
const FAR_S = 30;

/** Digests catch any change of what they are made of, right or wrong, and say nothing of which it is. */
export const isDigest = (file) => /(^|\/)(known-[^/]*|conformance)\.test\.ts$/.test(file);

/** Files below a folder, or that one file. */
export const filesIn = (root, folder, name) =>
  (folder.endsWith('.ts') ? [''] : fs.readdirSync(join(root, folder), { recursive: true }))
    .map((one) => (one === '' ? folder : `${folder}/${one}`))
    .filter((one) => name.test(one))
    .toSorted();

export class Tests {
  #imports = new Map();

  /** @param tried runs a list of files in the unchanged copy @param store of `lines` and `log` */
  constructor(root, house, sources, tried, store) {
    this.pathOf = (file) => join(file.startsWith('src/') ? house : root, file);
    this.tried = tried;
    this.store = store;
    this.unchanged = new Map(store.lines('unchanged').map((one) => [one.file, one]));
    this.all = TESTS.flatMap((folder) => filesIn(root, `tests/${folder}`, /\.test\.ts$/))
      .map((file) => ({ file, imports: this.#importsOf(file) }))
      .filter(({ imports }) => !imports.has('tests/cli/run.ts'))
      .filter(({ imports }) => sources.some((source) => imports.has(source)));
    this.stamps = new Map(this.all.map(({ file }) => [file, this.#stampOf(file)]));
  }

  #ownImportsOf(file) {
    if (!this.#imports.has(file)) {
      const text = fs.readFileSync(this.pathOf(file), 'utf8');
      const to = [...text.matchAll(/(?:from |import\()'(\.[^']+)'/g)]
        .map(([, from]) => join(dirname(file), from).replace(/\.js$/, '.ts'))
        .filter((path) => path.endsWith('.ts') && fs.existsSync(this.pathOf(path)));
      this.#imports.set(file, to);
    }
    return this.#imports.get(file);
  }

  /** Every file that one leads to by its imports, and over how many of them. */
  #importsOf(file) {
    const found = new Map([[file, 0]]);
    for (const [one, steps] of found)
      for (const to of this.#ownImportsOf(one)) if (!found.has(to)) found.set(to, steps + 1);
    return found;
  }

  /** A file and its text, by which it is known whether a change has met it. */
  stamped(file) {
    return this.stamps.get(file);
  }

  #stampOf(file) {
    const text = fs.readFileSync(this.pathOf(file));
    return `${file}@${createHash('sha256').update(text).digest('hex').slice(0, 12)}`;
  }

  /** What a file takes unchanged, measured when first wanted; one that fails there would catch everything, so it is not used. */
  async measured(file) {
    const known =
      this.unchanged.get(file) ?? this.store.lines('unchanged').find((one) => one.file === file);
    if (known !== undefined) this.unchanged.set(file, known);
    if (known?.stamp === this.stamped(file)) return known;
    const { caught, name, said, parts, seconds } = await this.tried([file], () => SLOW_S);
    const [own] = parts.values();
    const passed = caught === null && own.length > 1;
    const why = passed ? null : `${caught ?? 'no test'} ${name} ${said}`.trim();
    const line = { file, stamp: this.stamped(file), passed, seconds, parts: own, why };
    this.unchanged.set(file, line);
    this.store.log('unchanged', line);
    console.log(`unchanged: ${file}: ${why ?? `${seconds.toFixed(1)} s`}`);
    return line;
  }

  #see(source, near) {
    const own = `tests/${source.split('/')[1]}/`;
    const steps = ({ imports }) => imports.get(source);
    return this.all
      .filter(({ file, imports }) => imports.has(source) && file.startsWith(own) === near)
      .toSorted((a, b) => steps(a) - steps(b) || a.imports.size - b.imports.size);
  }

  /** Those of its own folder that pass unchanged: digests, then the cheap ones first. @param most processor time, s */
  async near(source, most = Infinity) {
    const list = [];
    for (const { file } of this.#see(source, true)) list.push(await this.measured(file));
    let sum = 0;
    return list
      .filter(({ passed }) => passed)
      .toSorted((a, b) => isDigest(b.file) - isDigest(a.file) || a.seconds - b.seconds)
      .filter(({ seconds }) => (sum += seconds) <= most)
      .map(({ file }) => file);
  }

  async digests(source) {
    return (await this.near(source)).filter(isDigest);
  }

  /** Those of other folders, the nearest by imports first. */
  async far(source) {
    const list = [];
    let sum = 0;
    for (const { file } of this.#see(source, false)) {
      if (sum > FAR_S) break;
      const { passed, seconds } = await this.measured(file);
      if (!passed) continue;
      list.push(file);
      sum += seconds;
    }
    return list;
  }

  /** Processor time of the nth part of a file, unchanged, s; the first may have to load what an earlier file of its process had loaded. */
  secondsOf(file, part) {
    const { parts, seconds } = this.unchanged.get(file);
    return part === 0 ? seconds : (parts[part] ?? seconds);
  }
}

// A copy of the project in plain JavaScript, file by file, so that one changed source is made anew in a few milliseconds.
import * as fs from 'node:fs';
import { dirname, join } from 'node:path';
import { buildSync, transform } from 'esbuild';

const FOLDERS = ['src', 'tests', 'shared', 'scenarios', 'reports'];
const FILES = ['package.json', 'README.md', 'DEVELOPERS.md', 'CHANGELOG.md'];

const AS = { format: 'esm', target: 'esnext', jsx: 'automatic', jsxImportSource: 'preact' };

const built = (file) => file.replace(/\.tsx?$/, '.js');

export class Copy {
  /** By path, the text of files that are or were changed. */
  #unchanged = new Map();

  /** @param root of the project @param house where its sources are @param to folder of the copy, made anew */
  constructor(root, house, to) {
    this.house = house;
    this.to = to;
    fs.rmSync(to, { recursive: true, force: true });
    for (const folder of FOLDERS) {
      const base = folder === 'src' ? house : root;
      const sources = [];
      for (const one of fs.readdirSync(join(base, folder), { recursive: true })) {
        const file = `${folder}/${one}`;
        const from = join(base, file);
        if (fs.statSync(from).isDirectory()) continue;
        fs.mkdirSync(join(to, dirname(file)), { recursive: true });
        if (!/\.tsx?$/.test(file) || file.endsWith('.d.ts')) fs.copyFileSync(from, join(to, file));
        else sources.push(from);
      }
      buildSync({ ...AS, entryPoints: sources, outdir: to, outbase: base, logLevel: 'error' });
    }
    for (const file of FILES) fs.copyFileSync(join(root, file), join(to, file));
    const standIn = join(to, 'node_modules/vitest');
    fs.mkdirSync(standIn, { recursive: true });
    fs.writeFileSync(join(standIn, 'package.json'), '{ "type": "module", "main": "index.js" }');
    fs.copyFileSync(join(root, 'tests/mutation/stand-in.mjs'), join(standIn, 'index.js'));
  }

  /** The copy's name of a file of tests. */
  path(file) {
    return join(this.to, built(file));
  }

  /** Changes one place. @returns false where what comes out is no program, or the same program */
  async change({ file, index, from, to }) {
    const text = fs.readFileSync(join(this.house, file), 'utf8');
    const path = join(this.to, built(file));
    this.#unchanged.set(path, this.#unchanged.get(path) ?? fs.readFileSync(path, 'utf8'));
    try {
      const other = text.slice(0, index) + to + text.slice(index + from.length);
      const { code } = await transform(other, { ...AS, loader: 'ts', logLevel: 'silent' });
      fs.writeFileSync(path, code);
      return code !== this.#unchanged.get(path);
    } catch {
      return false;
    }
  }

  /** Puts every file back. */
  restore() {
    for (const [path, text] of this.#unchanged) fs.writeFileSync(path, text);
    this.#unchanged.clear();
  }
}

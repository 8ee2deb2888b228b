import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = fileURLToPath(new URL('../src', import.meta.url));

/** From top to bottom; folders on one line are siblings that never import each other. */
const ORDER = [
  ['cli'],
  ['page'],
  ['letter'],
  ['questions'],
  ['tell'],
  ['scenario'],
  ['sizing', 'comparing', 'ordering', 'suiting', 'till', 'measuring'],
  ['cafe'],
  ['racking'],
  ['catalogue'],
  ['quantities'],
  ['engine'],
  ['statistics'],
  ['elementary'],
];
const levelOf = (folder: string): number => ORDER.findIndex((level) => level.includes(folder));

const files = (readdirSync(src, { recursive: true }) as string[]).filter((name) =>
  /\.tsx?$/.test(name),
);
const imports = files.flatMap((name) => {
  const text = readFileSync(join(src, name), 'utf8');
  return [...text.matchAll(/(?:from|import\()\s*'([^']+)'/g)].map((match) => ({
    file: name,
    target: match[1]!,
  }));
});
const known = new Set(files);
/** The files of src that a file imports. */
const targetsOf = (name: string): string[] =>
  imports
    .filter(({ file, target }) => file === name && target.startsWith('.'))
    .map(({ target }) => relative(src, resolve(dirname(join(src, name)), target)))
    .flatMap((to) => [to.replace(/\.js$/, '.ts'), to.replace(/\.js$/, '.tsx')])
    .filter((to) => known.has(to));
const folderOf = (path: string): string => path.split('/')[0]!;

/** Code without its comments, texts and patterns. */
const withoutWords = (text: string): string =>
  text
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|[^:'"`])\/\/.*$/gm, '$1')
    .replaceAll(/'(?:[^'\\\n]|\\.)*'/g, "''");

describe('the house', () => {
  it('has files to look at, in known folders', () => {
    expect(files.length).toBeGreaterThan(100);
    for (const file of files.filter((name) => name.includes('/')))
      expect(levelOf(folderOf(file)), file).toBeGreaterThanOrEqual(0);
  });

  it('imports downwards only, and siblings never each other', () => {
    const wrong = imports
      .filter(({ file, target }) => target.startsWith('.') && file.includes('/'))
      .map(({ file, target }) => ({
        file,
        to: relative(src, resolve(dirname(join(src, file)), target)),
      }))
      .filter(({ to }) => !to.startsWith('..'))
      .filter(
        ({ file, to }) =>
          folderOf(file) !== folderOf(to) && levelOf(folderOf(to)) <= levelOf(folderOf(file)),
      )
      .map(({ file, to }) => `${file} imports ${to}`);
    expect(wrong).toEqual([]);
  });

  it('has no circle of files', () => {
    const graph = new Map(files.map((file) => [file, targetsOf(file)]));
    const done = new Set<string>();
    const circles: string[] = [];
    const follow = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' > '));
      if (path.includes(file) || done.has(file)) return;
      for (const to of graph.get(file) ?? []) follow(to, [...path, file]);
      done.add(file);
    };
    for (const file of files) follow(file, []);
    expect(circles).toEqual([]);
  });

  it('declares with const at the top of a module, as the build makes constants of it; what changes is kept in an object', () => {
    const changing = files
      .filter((name) => !name.startsWith('page/'))
      .filter((name) => /^(export )?(let|var) /m.test(readFileSync(join(src, name), 'utf8')));
    expect(changing).toEqual([]);
  });

  it('counts with + − × ÷ √ and src/elementary/ alone, as engines differ in the last bit of the rest', () => {
    const exact =
      /^(abs|ceil|clz32|floor|fround|imul|max|min|round|sign|sqrt|trunc|[A-Z][A-Z0-9_]*)$/;
    // Whose code was read: sums, products and roots.
    const library = /^(mean|sampleRankCorrelation|sampleStandardDeviation|sampleVariance)$/;
    const wrong = files.flatMap((name) => {
      const text = readFileSync(join(src, name), 'utf8');
      const code = withoutWords(text);
      const named = (pattern: RegExp, of: string, allowed: RegExp): string[] =>
        [...of.matchAll(pattern)]
          .flatMap((found) => found[1]!.split(','))
          .map((one) => one.trim())
          .filter((one) => one !== '' && !allowed.test(one));
      return [
        ...named(/\bMath\.(\w+)/g, code, exact),
        ...named(/\{([^{}]*)\} = Math\b/g, code, exact),
        ...named(/import \{([^}]*)\} from 'simple-statistics'/g, text, library),
        ...named(/(\*\*)/g, code, exact),
      ].map((use) => `${name}: ${use}; take the function of src/elementary/ in its place`);
    });
    expect(wrong).toEqual([]);
  });

  it("knows Node's own modules in cli/ alone", () => {
    expect(
      imports
        .filter(({ file, target }) => target.startsWith('node:') && folderOf(file) !== 'cli')
        .map(({ file }) => file),
    ).toEqual([]);
  });

  it('starts the command without what reads scenarios, so that help comes at once', () => {
    const start = new Set(['cli/main.ts']);
    for (const file of start) {
      const text = readFileSync(join(src, file), 'utf8');
      for (const [, target] of text.matchAll(/^(?:im|ex)port (?!type )[^;]*?from '([^']+)'/gm))
        start.add(
          target!.startsWith('.')
            ? relative(src, resolve(src, dirname(file), target!)).replace(/\.js$/, '.ts')
            : '',
        );
      start.delete('');
      expect(text, file).not.toMatch(/^import (?!type )[^;]*?from '(zod|yaml)'/m);
    }
    expect(start.size).toBeGreaterThan(20);
  });

  it('reads the reference data in catalogue/ alone', () => {
    const readers = imports
      .filter(({ target }) => /\/shared\//.test(target))
      .map(({ file }) => folderOf(file));
    expect([...new Set(readers)]).toEqual(['catalogue']);
  });

  it('knows no question by name in cli/ and page/: both read the list', () => {
    const lines = ['list.ts', 'letter-list.ts']
      .map((name) => readFileSync(join(src, 'questions', name), 'utf8'))
      .join('');
    const named = [...lines.matchAll(/^ {2}question\((\w+),/gm)].map((match) => match[1]!);
    expect(named.length).toBeGreaterThan(8);
    // The letter is the answer of `size`.
    const others = named.filter((name) => name !== 'size').join('|');
    const wrong = files
      .filter((name) => ['cli', 'page'].includes(folderOf(name)))
      // A table of sites has studies of its own over what some questions answer.
      .filter((name) => !/^cli\/(commands\/|run-)?sites\b/.test(name))
      .flatMap((name) => {
        const text = readFileSync(join(src, name), 'utf8').replaceAll(/\/\*[\s\S]*?\*\//g, '');
        const found = [
          ...text.matchAll(new RegExp(`questions/(?:${others})/`, 'g')),
          ...(/^(cli|page\/engine)\//.test(name)
            ? text.matchAll(new RegExp(`['"\`](?:${others})['"\`]`, 'g'))
            : []),
        ];
        return found.map(([use]) => `${name}: ${use}; let the question's folder say it`);
      });
    expect(wrong).toEqual([]);
  });

  it('keeps files to one subject: none, of whatever kind, over 300 lines as set by the formatter', () => {
    const set = (readdirSync(src, { recursive: true }) as string[]).filter((name) =>
      /\.(tsx?|mjs|css)$/.test(name),
    );
    expect(set.length).toBeGreaterThan(files.length);
    const long = set
      .map((name) => ({
        name,
        lines: readFileSync(join(src, name), 'utf8').trimEnd().split('\n').length,
      }))
      .filter(({ lines }) => lines > 300)
      .map(
        ({ name, lines }) => `${name}: ${lines} lines; give one of its subjects a file of its own`,
      );
    expect(long).toEqual([]);
  });
});

import { execFileSync, spawnSync } from 'node:child_process';
import { isBuiltin } from 'node:module';
import { mkdirSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { bytesOfText } from '../src/page/packed-text.js';
import { emptyFolder, root } from './cli/run.js';

describe('the package', () => {
  const folder = emptyFolder();
  execFileSync('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], {
    cwd: root,
    stdio: 'ignore',
  });
  execFileSync('tar', ['-xzf', readdirSync(folder).find((name) => name.endsWith('.tgz'))!], {
    cwd: folder,
  });

  it('depends on what its programs and types import, and on nothing else', async () => {
    const dist = join(folder, 'package/dist');
    const { metafile } = await build({
      entryPoints: ['cuptide', 'worker', 'index'].map((name) => join(dist, `${name}.js`)),
      bundle: true,
      packages: 'external',
      format: 'esm',
      platform: 'node',
      outdir: folder,
      write: false,
      metafile: true,
    });
    const loaded = Object.values(metafile.inputs).flatMap(({ imports }) =>
      imports.flatMap(({ path, external }) => (external === true ? [path] : [])),
    );
    const declared = (readdirSync(join(dist, 'types'), { recursive: true }) as string[])
      .filter((name) => name.endsWith('.d.ts'))
      .flatMap((name) => [
        ...readFileSync(join(dist, 'types', name), 'utf8').matchAll(
          /(?:from |import\()['"]([^'"]+)['"]/g,
        ),
      ])
      .map(([, path]) => path!);
    expect(loaded.length).toBeGreaterThan(10);
    expect(declared.length).toBeGreaterThan(50);
    const packages = [...loaded, ...declared]
      .filter((path) => !path.startsWith('.') && !isBuiltin(path))
      .map((path) => path.split('/', path.startsWith('@') ? 2 : 1).join('/'));
    const { dependencies } = JSON.parse(
      readFileSync(join(folder, 'package/package.json'), 'utf8'),
    ) as { dependencies: Record<string, string> };
    expect([...new Set(packages)].toSorted()).toEqual(Object.keys(dependencies).toSorted());
  });

  it('carries the licences of what is bundled, each text once', () => {
    const parts = readFileSync(join(folder, 'package/dist/bundled-licences.txt'), 'utf8').split(
      `\n${'-'.repeat(72)}\n`,
    );
    expect(new Set(parts).size).toBe(parts.length);
    for (const [name, licence] of [
      ['zod', 'MIT'],
      ['vega', 'BSD-3-Clause'],
      ['yaml', 'ISC'],
      ['@stdlib/stats-base-dists-gamma-cdf', 'Apache-2.0'],
    ])
      expect(
        parts.filter(
          (part) =>
            part
              .split('\n')
              .some((line) => line.startsWith(`${name} `) && line.includes(licence!)) &&
            /without warrant|as is/i.test(part),
        ),
        name,
      ).toHaveLength(1);
  });

  it('carries no tests and no data of tests', () => {
    const names = readdirSync(join(folder, 'package'), { recursive: true }) as string[];
    expect(names).toContain('dist/index.js');
    expect(names.filter((name) => /(^|\/)(tests?|checks)(\/|$)|\.test\./.test(name))).toEqual([]);
  });

  it('has a command that works from an empty folder, reference data and examples included', () => {
    const empty = emptyFolder();
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [
        join(folder, 'package/dist/cuptide.js'),
        'size',
        join(folder, 'package/scenarios/1-commuter-bar.yaml'),
        '--days',
        '200',
      ],
      { cwd: empty, encoding: 'utf8' },
    );
    expect(status, stderr).toBe(0);
    expect(stdout).toMatch(/^Have \d+/);
    expect(readdirSync(empty)).toEqual([]);
  });

  it('calls no eval in the page, which its policy forbids, nor hands it on under another name', () => {
    const { script, page, engine } = JSON.parse(
      readFileSync(join(folder, 'package/dist/page.json'), 'utf8'),
    ) as Record<'script' | 'page' | 'engine', string>;
    const [pageCode, engineCode] = [page, engine].map((packed) =>
      inflateRawSync(bytesOfText(packed)).toString(),
    );
    const code = `${script}${pageCode}${engineCode}`;
    expect(code.length).toBeGreaterThan(500_000);
    expect(code.match(/.{0,60}(?:=eval\b|(?<![\w$.])eval\().{0,30}/g)).toBeNull();
  });

  it('has a library entry that runs, with types that check', () => {
    const user = emptyFolder();
    mkdirSync(join(user, 'node_modules'));
    symlinkSync(join(folder, 'package'), join(user, 'node_modules/cuptide'));
    symlinkSync(join(root, 'node_modules/zod'), join(user, 'node_modules/zod'));
    writeFileSync(join(user, 'package.json'), '{ "type": "module" }');
    writeFileSync(
      join(user, 'use.ts'),
      `import { readScenario, size, inThisThread, type Answer } from 'cuptide';
const read = readScenario('name: X', 'x.yaml');
if (read.ok) { const { answer } = await size(read, inThisThread()); const stock: Answer['stock'] = answer.stock; console.log(stock); }
else console.log(read.problems.length > 3);`,
    );
    const tsc = spawnSync(
      process.execPath,
      [
        join(root, 'node_modules/typescript/bin/tsc'),
        '--strict',
        '--skipLibCheck',
        '--module',
        'nodenext',
        '--target',
        'es2022',
        '--outDir',
        join(user, 'out'),
        join(user, 'use.ts'),
        '--ignoreConfig',
      ],
      { cwd: user, encoding: 'utf8' },
    );
    expect(tsc.stdout + tsc.stderr).toBe('');
    const { stdout } = spawnSync(process.execPath, [join(user, 'out/use.js')], {
      encoding: 'utf8',
      cwd: user,
    });
    expect(stdout).toBe('true\n');
  });
});

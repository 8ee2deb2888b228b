/** What we depend on: licences that may be used, and nothing that runs code when it is installed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}
const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Record<string, Locked>;
};
const all = Object.entries(packages).filter(([path]) => path !== '');

/** Of what may go into the package. */
const SHIPPED =
  /^(MIT|ISC|0BSD|BSD-3-Clause|Apache-2\.0|OFL-1\.1|Python-2\.0|Unlicense|BlueOak-1\.0\.0|MIT AND OFL-1\.1|Apache-2\.0 AND BSL-1\.0|\(MIT AND Zlib\))$/;
/** Of what only builds and tests it, used as it is. */
const BUILDS = /^(MPL-2\.0|Bitstream-Vera)$/;
/** The lock file does not name these; read in the packages' own licence files. Both serve tests alone. */
const READ: Readonly<Record<string, string>> = {
  'node_modules/jstat': 'MIT',
  // Bitstream Vera's terms, free to use and to pass on.
  'node_modules/dejavu-fonts-ttf': 'Bitstream-Vera',
};

describe('dependencies', () => {
  it('have licences that are allowed', () => {
    const wrong = all
      .map(([path, { license }]) => [path, READ[path] ?? license ?? 'none'] as const)
      .filter(([path, licence]) => {
        const shipped = packages[path]!.dev !== true;
        return !SHIPPED.test(licence) && (shipped || !BUILDS.test(licence));
      });
    expect(wrong).toEqual([]);
  });

  it('need no install script', () => {
    // That of esbuild only looks whether its program works; it comes with a package of its own.
    expect(all.filter(([, one]) => one.hasInstallScript === true).map(([path]) => path)).toEqual([
      'node_modules/esbuild',
    ]);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import examples from '../src/cli/examples.json' with { type: 'json' };
import { cuptide, emptyFolder, root } from './cli/run.js';

const scenarios = readdirSync(join(root, 'scenarios'))
  .filter((name) => /\.(ya?ml|json)$/.test(name))
  .sort();
const committed = readdirSync(join(root, 'reports'));

/** What a file says: of a letter not the programs in it, which change with every line of the house, and with the packer of the machine. */
const told = (path: string): string =>
  readFileSync(path, 'utf8')
    .replace(/(<script type="text\/plain" id="(?:page|engine)">)[^<]*/g, '$1')
    .replace(/<script>[\s\S]*?<\/script>/, '<script></script>')
    .replace(/'sha256-[^']*'/g, "'sha256-'");

/** Answers and pictures of every scenario, and the letter of the demo, as `npm run reports` leaves them. */
describe('reports/ is what the examples produce', () => {
  it('has the demo first by name', () => expect(scenarios[0]).toBe('1-commuter-bar.yaml'));

  it.each(scenarios.map((name) => [name]))('%s', (name) => {
    const folder = emptyFolder();
    const { status, err } = cuptide([
      'report',
      join('scenarios', name),
      '--out',
      folder,
      ...(name === scenarios[0] ? [] : examples.othersWith),
    ]);
    expect(status, err).toBe(0);
    const stem = basename(name, extname(name));
    const made = readdirSync(folder).filter(
      (file) => !file.endsWith('.html') || name === scenarios[0],
    );
    expect(made.length).toBeGreaterThanOrEqual(5);
    expect(committed.filter((file) => file.startsWith(`${stem}.`)).sort()).toEqual(made.sort());
    for (const file of made)
      expect(
        told(join(folder, file)) === told(join(root, 'reports', file)),
        `${file} differs; look at it and run npm run reports`,
      ).toBe(true);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cuptide, emptyFolder, root } from './cli/run.js';

const scenarios = readdirSync(join(root, 'scenarios')).filter((name) => /\.(ya?ml|json)$/.test(name)).sort();
const committed = readdirSync(join(root, 'reports'));

/** Answers and pictures of every scenario, and the letter of the demo, as `npm run reports` leaves them. */
describe('reports/ is what the examples produce', () => {
  it('has the demo first by name', () => expect(scenarios[0]).toBe('1-commuter-bar.yaml'));

  it.each(scenarios.map((name) => [name]))('%s', (name) => {
    const folder = emptyFolder();
    const { status, err } = cuptide(['report', join('scenarios', name), '--out', folder]);
    expect(status, err).toBe(0);
    const stem = basename(name, extname(name));
    const made = readdirSync(folder).filter((file) => !file.endsWith('.html') || name === scenarios[0]);
    expect(made.length).toBeGreaterThanOrEqual(6);
    expect(committed.filter((file) => file.startsWith(`${stem}.`)).sort()).toEqual(made.sort());
    for (const file of made) expect(readFileSync(join(folder, file), 'utf8') === readFileSync(join(root, 'reports', file), 'utf8'), `${file} differs; look at it and run npm run reports`).toBe(true);
  });
});

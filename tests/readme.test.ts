import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cuptide, emptyFolder, root } from './cli/run.js';

const readme = readFileSync(join(root, 'README.md'), 'utf8');
const commands = [...readme.matchAll(/^ {4}npx cuptide (.+)$/gm)].map((match) => match[1]!);

const DAYS_ASKED = new Set(['size', 'backtest']);

describe('the commands of the README, in its order', () => {
  const folder = emptyFolder();
  for (const part of ['scenarios', 'shared'])
    cpSync(join(root, part), join(folder, part), { recursive: true });

  it('has some', () => expect(commands.length).toBeGreaterThanOrEqual(5));

  it.each(commands.map((line) => [line]))('%s', (line) => {
    const words = line.match(/"[^"]*"|\S+/g)!.map((word) => word.replaceAll('"', ''));
    // On few days, as what is asked here is whether the words are taken and lead to an answer.
    const few = DAYS_ASKED.has(words[0]!) && !words.includes('--days') ? ['--days', '20'] : [];
    const { status, out, err } = cuptide([...words, ...few], folder);
    expect(status, err).toBe(0);
    expect(out.length).toBeGreaterThan(20);
  });

  it('leads from the real counts of a till to a stock', () => {
    expect(readdirSync(folder)).toContain('saturday.yaml');
    expect(readFileSync(join(folder, 'saturday.yaml'), 'utf8')).toContain('basis: measured');
  });

  it('names only files that are there', () => {
    for (const [, path] of readme.matchAll(/\]\(([\w./-]+)\)/g))
      expect(() => readFileSync(join(root, path!)), path).not.toThrow();
  });
});

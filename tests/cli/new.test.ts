import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { ask } from '../../src/cli/ask-starter.js';
import type { QuestionKey } from '../../src/scenario/starter-questions.js';
import { columnsOf } from '../../src/tell/clean-text.js';
import { cuptide, emptyFolder } from './run.js';

describe('the questions of cuptide new', () => {
  const asked = async (
    typed: readonly string[],
    open: readonly QuestionKey[] = ['name', 'seats', 'stay'],
    columns = 80,
  ) => {
    const said = Object.assign(new PassThrough(), { columns });
    const answers = await ask(open, {}, Readable.from(typed), said);
    return { ...answers, said: String(said.read() ?? '') };
  };

  it('takes answers pasted all at once, in the order of the questions', async () => {
    const { texts, said } = await asked(['Corner\n30\n45 %\n']);
    expect(texts).toEqual({ name: 'Corner', seats: '30', stay: '45 %' });
    expect(said).toMatch(/called\?.*seats.*stay in\?/s);
  });

  it('hears signals itself while it asks, as the terminal edits lines in a mode that must end too', async () => {
    const listening = (): number => process.listenerCount('SIGTERM');
    const before = listening();
    const seen: number[] = [];
    const typed = async function* () {
      seen.push(listening());
      yield 'Corner\n30\n45 %\n';
    };
    const said = Object.assign(new PassThrough(), { columns: 80 });
    await ask(['name', 'seats', 'stay'], {}, Readable.from(typed()), said);
    // Another test of this process may hold them already.
    expect(seen).toEqual([Math.max(before, 1)]);
    expect(listening()).toBe(before);
  });

  it('takes the usual answer for an empty line, and asks again after one that will not do', async () => {
    const { texts, said } = await asked(['\n', 'many\n', '12\n', '140 %\n', '40\n']);
    expect(texts).toEqual({ name: 'My café', seats: '12', stay: '40' });
    expect(said).toMatch(/"many" is not a number of seats/);
    expect(said).toMatch(/"140 %" is not a share/);
    expect(said).toMatch(/= 40 %/);
  });

  it('asks what a drink it does not know is served in', async () => {
    const { texts, served, said } = await asked(
      ['tea, golden milk\n', 'a bucket\n', '5\n'],
      ['menu'],
    );
    expect(texts).toEqual({ menu: 'tea, golden milk' });
    expect(served).toEqual({ 'golden milk': 'mug' });
    expect(said).toMatch(
      /What is "golden milk" served in\?\n {2}1 espresso cup .*\n {2}2 small cup/,
    );
    expect(said).toMatch(/"a bucket" is none of these/);
  });

  it.each([60, 80, 100])('writes no line wider than %d columns', async (columns) => {
    const all: readonly QuestionKey[] = ['shape', 'dwell', 'menu', 'machine', 'shareRacks'];
    const { said } = await asked(['\n\n\n\n\n'], all, columns);
    for (const line of said.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(columns);
    expect(said.split('\n').length).toBeGreaterThan(15);
  });

  it('says so where the answers end too soon', async () => {
    await expect(asked(['Corner\n'])).rejects.toThrow(
      /end before the last question; nothing was written/,
    );
  });
});

describe('cuptide new with options', () => {
  const enough = '--seats 40 --guests 60 --from 7am --to 11 --stay 45 --staff-hour £14'.split(' ');

  it('takes what people type, and says what it assumed', () => {
    const file = join(emptyFolder(), 'my.yaml');
    const { status, out, err } = cuptide([
      'new',
      file,
      ...enough,
      '--menu',
      'flat white, chai in a glass',
    ]);
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(out).toMatch(
      /busiest about 09:00 \(morning: .*Assumed from the hours; --shape takes\s+morning, midday, all-day/s,
    );
    expect(out).toMatch(/Assumed: one undercounter dishwasher/);
    const text = readFileSync(file, 'utf8');
    for (const part of [
      'GBP',
      'locale: en-GB',
      'from: "07:00", to: "11:00"',
      'staysIn: 45 %',
      'latte-glass',
    ])
      expect(text).toContain(part);
    const sized = cuptide(['size', file, '--days', '200']);
    expect(sized.status, sized.err).toBe(0);
  });

  it('names every answer it cannot take, and writes nothing', () => {
    const file = join(emptyFolder(), 'my.yaml');
    const { status, out, err } = cuptide([
      'new',
      file,
      ...enough.with(1, 'plenty'),
      '--menu',
      'sahlep',
      '--machine',
      'bucket',
    ]);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/--seats: "plenty" is not a number of seats/);
    expect(err).toMatch(/--menu: "sahlep" names "sahlep"; say what it is served in/);
    expect(err).toMatch(/--machine: "bucket" is neither/);
    expect(existsSync(file)).toBe(false);
  });
});

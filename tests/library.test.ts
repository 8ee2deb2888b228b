import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type * as Library from '../src/index.js';
import { cuptide, emptyFolder, root } from './cli/run.js';

// As it is built, since the order's solver lies beside it.
const { compare, inThisThread, order, racks, readScenario, size, suit } = (await import(
  pathToFileURL(`${root}dist/index.js`).href
)) as typeof Library;

function opened(file: string): Library.ReadScenario {
  const read = readScenario(readFileSync(resolve(root, file), 'utf8'), file);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read;
}
/** What the command prints, without what it says of the command itself. */
const json = (...args: readonly string[]): unknown => {
  const { made, ...answer } = JSON.parse(cuptide([...args, '--json']).out) as { made: object };
  expect(made).toHaveProperty('version');
  return answer;
};
const plain = (answer: unknown): unknown => JSON.parse(JSON.stringify(answer));

const brunch = 'scenarios/2-brunch-room.yaml';
const bar = 'scenarios/1-commuter-bar.yaml';
/** Its days are the soonest run. */
const bakery = 'scenarios/4-bakery-corner.yaml';

/** The bakery with the first of its alternatives. */
function bakeryWithOne(): string {
  const text = readFileSync(resolve(root, bakery), 'utf8');
  const start = text.indexOf('\nalternatives:\n') + 1;
  const [title, first] = text.slice(start).split('\n');
  const file = join(emptyFolder(), 'one.yaml');
  writeFileSync(
    file,
    [text.slice(0, start) + title, first, text.slice(text.indexOf('\ncosts:'))].join('\n'),
  );
  return file;
}

describe('the library gives the answer of the command', () => {
  it('size, for a house whose racks follow from the shape of its ware', async () => {
    const { answer } = await size(opened(brunch), inThisThread(), { days: 100 });
    expect(plain(answer)).toEqual(json('size', brunch, '--days', '100'));
  });

  it('compare', async () => {
    const one = bakeryWithOne();
    const answer = await compare(opened(one), inThisThread(), { days: 100 });
    expect(answer.ok && answer.value.alternatives).toHaveLength(2);
    expect(answer.ok && plain(answer.value)).toEqual(json('compare', one, '--days', '100'));
  });

  it('order, with the solver', async () => {
    const answer = await order(opened(bar), inThisThread(), { days: 100, date: '2027-03-01' });
    const printed = json('order', bar, '--days', '100', '--date', '2027-03-01');
    expect(answer.ok && plain(answer.value)).toEqual(printed);
  });

  it('racks', async () => {
    const answer = await racks(opened(bakery), inThisThread());
    expect(answer.ok && plain(answer.value)).toEqual(json('racks', bakery));
  });

  it('suit', async () => {
    const answer = await suit(opened(bakery), inThisThread(), { seed: 'another' });
    expect(answer.ok && plain(answer.value)).toEqual(json('suit', bakery, '--seed', 'another'));
  });

  it('says what is wrong, at its place in the file', () => {
    const read = readScenario('name: X\ncurrency: shells', 'mine.yaml');
    expect(read.ok ? [] : read.problems.map(({ file, line }) => [file, line])).toContainEqual([
      'mine.yaml',
      2,
    ]);
  });
});

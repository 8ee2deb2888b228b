/** The same warning of several places is read once, and none of the places is lost. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Warning } from '../../src/quantities/flaw.js';
import { together } from '../../src/quantities/warned.js';

const warning = (message: string, path: string): Warning => ({ code: 'any', message, path });

it('ten equal sentences are one that names the ten places, in the order of the first', () => {
  const menu = Array.from({ length: 10 }, (_, at) => `menu.drink-${at + 1}.making`);
  const [first, ...rest] = menu.map((path) => warning('Too long.', path));
  expect(together([warning('A', 'a'), first!, warning('B', ''), ...rest])).toEqual([
    { message: 'A', path: 'a' },
    { message: 'Too long.', path: menu.join(', ') },
    { message: 'B', path: '' },
  ]);
});

it('says each sentence once and keeps each place', () => {
  const some = fc
    .tuple(fc.constantFrom('A', 'B', 'C'), fc.constantFrom('', 'x', 'y', 'z.x'))
    .map(([message, path]) => warning(message, path));
  fc.assert(
    fc.property(fc.array(some), (warnings) => {
      const read = together(warnings);
      expect(read.map(({ message }) => message)).toEqual([
        ...new Set(warnings.map(({ message }) => message)),
      ]);
      const placed = warnings.filter(({ path }) => path !== '');
      expect(
        read.flatMap(({ message, path }) =>
          path === '' ? [] : path.split(', ').map((one) => `${message} ${one}`),
        ),
      ).toHaveLength(placed.length);
    }),
  );
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Fifo } from '../../src/cafe/fifo.js';

it('gives back what was put in, in that order, however long it grows', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ push: fc.nat(150), shift: fc.nat(150) }), { minLength: 1 }),
      (turns) => {
        const queue = new Fifo();
        for (const day of [1, 2]) {
          queue.clear();
          const plain: number[] = [];
          let next = day * 1000;
          for (const { push, shift } of turns) {
            for (let n = 0; n < push; n += 1) {
              queue.push(next);
              plain.push(next);
              next += 1;
            }
            for (let n = Math.min(shift, plain.length); n > 0; n -= 1)
              expect(queue.shift()).toBe(plain.shift());
            expect(queue.size).toBe(plain.length);
          }
        }
      },
    ),
    { seed: 41, numRuns: 20 },
  );
});

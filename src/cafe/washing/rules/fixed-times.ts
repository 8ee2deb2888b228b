/** A part rack goes if a fixed time has come since it was opened; the floor releases racks at those times. */
import { oldestOpen, type LoadRule } from '../load-rule.js';

export function fixedTimes(): LoadRule {
  return {
    name: 'fixed times',
    next: (yard) => oldestOpen(yard, (rack) => yard.bench.released[rack] === 1),
  };
}

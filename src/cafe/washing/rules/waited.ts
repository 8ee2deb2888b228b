/** A part rack goes once its oldest piece has been on the bench for the part-load wait; oldest first. */
import { oldestOpen, type LoadRule } from '../load-rule.js';

export function waited(waitMs: number): LoadRule {
  return {
    name: 'waited',
    next: (yard) => oldestOpen(yard, (rack) => yard.now - yard.bench.since[rack]! >= waitMs),
  };
}

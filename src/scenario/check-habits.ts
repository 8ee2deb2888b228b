/** Habits that only make sense together with others. */
import { problemAt, type Flaw } from './problems.js';
import { valueAt } from './tree.js';

/** Rounds for those who wait for seats need somebody who waits, and tables that hold seats until they are cleared. */
export function checkHabits(tree: unknown): Flaw[] {
  if (valueAt(tree, ['clearing', 'forSeats']) !== true) return [];
  const refuse = (rule: string, remedy: string): Flaw[] => [
    problemAt(['clearing', 'forSeats'], true, rule, remedy),
  ];
  const whenFull = valueAt(tree, ['seats', 'whenFull']);
  if (whenFull !== 'wait' && whenFull !== undefined)
    return refuse(
      'has no effect: parties do not wait for seats',
      'write seats.whenFull: wait, or leave it out',
    );
  return valueAt(tree, ['seats', 'heldUntilCleared']) === true
    ? []
    : refuse(
        'has no effect: seats are free as soon as a party leaves',
        'write seats.heldUntilCleared: true, or leave it out',
      );
}

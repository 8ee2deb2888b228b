/** The fullest quarter hour against seats counted by hand. */
import { expect, it } from 'vitest';
import { SeatQuarters } from '../../src/cafe/seat-quarters.js';

const QUARTER = 15 * 60_000;

it('counts each seat in the quarter in which it is held, to the millisecond', () => {
  const quarters = new SeatQuarters(2 * QUARTER);
  quarters.open();
  // Four seats for the first quarter, and one of them for a millisecond of the second, which others fill from its middle on.
  quarters.change(0, 4);
  quarters.change(QUARTER, -3);
  quarters.change(QUARTER + 1, -1);
  quarters.change(1.5 * QUARTER, 8);
  expect(quarters.fullest()).toBe(4 + 1 / QUARTER);
});

it('a last quarter that is shorter counts by its own length', () => {
  const quarters = new SeatQuarters(QUARTER + 60_000);
  quarters.open();
  quarters.change(QUARTER, 5);
  expect(quarters.fullest()).toBe(5);
  quarters.open();
  expect(quarters.fullest()).toBe(0);
});

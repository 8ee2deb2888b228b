/** Who sits where: seats are only counted in the model, so the picture gives each party some that are free. */
import type { DayWalk } from '../../questions/walk/day.js';

export interface SeatPlan {
  readonly seats: number;
  /** By party of the walk: numbers of its seats, side by side where there is room. */
  readonly of: readonly (readonly number[])[];
}

/**
 * Seats in rows of `columns`. A party takes the first seats side by side in a row on which nothing dirty stands, else
 * any side by side, else any that are free.
 */
export function seatPlan(walk: DayWalk, columns: number): SeatPlan {
  const { parties } = walk;
  const seats = walk.seats ?? mostAtOnce(walk);
  const takenUntil: number[] = Array.from({ length: seats }, () => 0);
  const dirtyUntil: number[] = Array.from({ length: seats }, () => 0);
  const of = parties.map(({ from, size, left, until }) => {
    const free = (seat: number): boolean => takenUntil[seat]! <= from;
    const clean = (seat: number): boolean => free(seat) && dirtyUntil[seat]! <= from;
    const chosen =
      sideBySide(seats, columns, size, clean) ??
      sideBySide(seats, columns, size, free) ??
      firstOf(takenUntil.length, size, clean, free);
    while (chosen.length < size) chosen.push(takenUntil.push(0) - 1);
    for (const seat of chosen) {
      takenUntil[seat] = left;
      dirtyUntil[seat] = Math.max(dirtyUntil[seat] ?? 0, until);
    }
    return chosen;
  });
  return { seats: takenUntil.length, of };
}

/** The first `size` seats in one row for which `may` holds; null where there are none. */
function sideBySide(
  seats: number,
  columns: number,
  size: number,
  may: (seat: number) => boolean,
): number[] | null {
  let run = 0;
  for (let seat = 0; seat < seats; seat += 1) {
    if (seat % columns === 0) run = 0;
    run = may(seat) ? run + 1 : 0;
    if (run === size) return Array.from({ length: size }, (_, n) => seat - size + 1 + n);
  }
  return null;
}

function firstOf(
  seats: number,
  size: number,
  better: (seat: number) => boolean,
  good: (seat: number) => boolean,
): number[] {
  const all = Array.from({ length: seats }, (_, seat) => seat);
  return [...all.filter(better), ...all.filter((seat) => !better(seat) && good(seat))]
    .slice(0, size)
    .sort((a, b) => a - b);
}

/** Guests and dirty places at once, at most: the seats that are drawn where the house has no number of them. */
function mostAtOnce({ parties }: DayWalk): number {
  const changes = parties
    .flatMap(
      ({ from, until, size }) =>
        [
          [from, size],
          [until, -size],
        ] as [number, number][],
    )
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  let [now, most] = [0, 1];
  for (const [, by] of changes) {
    now += by;
    most = Math.max(most, now);
  }
  return most;
}

/** The highest point of a smooth hill: compass search (R. Hooke and T. Jeeves, J. ACM 8, 1961), steps halved down to 10⁻⁴. */
const SMALLEST = 1e-4;

/** @param from where to begin; coordinates should be of order 1 */
export function climb(
  height: (point: readonly number[]) => number,
  from: readonly number[],
): readonly number[] {
  let best = [...from];
  let top = height(best);
  for (let step = 0.4; step > SMALLEST; step /= 2) {
    for (let moved = true; moved;) {
      moved = false;
      for (let axis = 0; axis < best.length; axis += 1)
        for (const way of [step, -step]) {
          const point = best.map((value, at) => (at === axis ? value + way : value));
          const there = height(point);
          if (there > top) [best, top, moved] = [point, there, true];
        }
    }
  }
  return best;
}

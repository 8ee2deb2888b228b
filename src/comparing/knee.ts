/**
 * The knee of a curve that rises ever more steeply: the point farthest below the straight line from its first point
 * to its last, both axes brought to 0..1 (Satopää et al., "Finding a kneedle in a haystack", ICDCS Workshops 2011).
 * Index of the point; null for fewer than three points, a flat curve, or one that nowhere lies below the line.
 */
export function kneeOf(
  points: readonly { readonly x: number; readonly y: number }[],
): number | null {
  const [first, last] = [points[0], points.at(-1)];
  if (
    points.length < 3 ||
    first === undefined ||
    last === undefined ||
    last.x === first.x ||
    last.y === first.y
  )
    return null;
  let best: number | null = null;
  let most = 1e-9;
  points.forEach(({ x, y }, index) => {
    const below = (x - first.x) / (last.x - first.x) - (y - first.y) / (last.y - first.y);
    if (below > most) [best, most] = [index, below];
  });
  return best;
}

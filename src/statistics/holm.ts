/**
 * Which of several chances stand when all of them are allowed for: the smallest against its own share of `alpha`, the
 * next against a larger one, until one fails (S. Holm, Scandinavian Journal of Statistics 6, 1979). With no effect
 * anywhere some stand in at most a share `alpha` of all cases, whatever their dependence.
 *
 * @returns for each chance whether it stands, in the order given
 */
export function holm(chances: readonly number[], alpha = 0.05): boolean[] {
  const order = chances.map((_, at) => at).toSorted((a, b) => chances[a]! - chances[b]!);
  const found = chances.map(() => false);
  for (const [rank, at] of order.entries()) {
    if (chances[at]! >= alpha / (chances.length - rank)) break;
    found[at] = true;
  }
  return found;
}

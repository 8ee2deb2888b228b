/**
 * The nearest name: what somebody probably meant by a word that is not in the list.
 */

/** Edits (insert, delete, replace, swap of neighbours) that turn one word into the other. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let best = Math.min(replaced, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, beforeLast[j - 2]! + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/** Folds what people mix up (case, `_`, `-`, blanks), so that `parts-size` is near `partySize`. */
const fold = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, '');

/**
 * The word of `known` nearest to `word`, or null if none is near enough to be worth suggesting
 * (more than a third of the letters, at least two, of short words one, would have to change).
 */
export function nearest(word: string, known: Iterable<string>): string | null {
  const wanted = fold(word.slice(0, 64));
  let best: string | null = null;
  let bestDistance = Infinity;
  for (const candidate of known) {
    const folded = fold(candidate);
    const distance = editDistance(wanted, folded);
    const shorter = Math.min(folded.length, wanted.length);
    const allowed =
      shorter <= 3 ? Math.min(1, shorter - 1) : Math.max(2, Math.floor(folded.length / 3));
    if (distance <= allowed && distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** `did you mean "saucer"?`, or the list of what there is (the first dozen). */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  if (near !== null) return `did you mean "${near}"?`;
  if (known.length === 0) return 'there are none to choose from';
  const shown = known.slice(0, 12).join(', ');
  return `choose one of ${shown}${known.length > 12 ? ', ...' : ''}`;
}

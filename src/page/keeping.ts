/**
 * The scenario as it is being changed, kept in the browser where that is allowed: a letter opened from a disk may have
 * no storage, and then nothing is kept and nothing is said. Nothing leaves the machine.
 */
import type { Kept, PageState, Store } from './store.js';

const key = (): string => `cuptide ${location.pathname}`;

/** What was kept of work on this letter; null: nothing. */
export function keptFor(from: string): Kept | null {
  try {
    const kept = JSON.parse(localStorage.getItem(key()) ?? 'null') as Kept | null;
    if (kept === null || kept.from !== from) return null;
    return kept.text !== from || kept.beside !== undefined || kept.counts != null ? kept : null;
  } catch {
    return null;
  }
}

export function forget(): void {
  try {
    localStorage.removeItem(key());
  } catch {
    // No storage, nothing to forget.
  }
}

/**
 * Keeps every change of the scenario from now on, with its tables and with counts that were not read yet; what was
 * saved, or is as it was sent, is forgotten.
 */
export function keepWork(store: Store, from: string): void {
  let last = store.state;
  const same = (one: PageState, other: PageState): boolean =>
    (['text', 'kept', 'beside', 'keptBeside', 'counts', 'keptCounts'] as const).every(
      (key) => one[key] === other[key],
    );
  store.subscribe(() => {
    const { state } = store;
    if (same(state, last)) return;
    last = state;
    const { text, kept, fileName, options, beside, keptBeside, counts, keptCounts } = state;
    const isLaid = beside !== keptBeside;
    if ((text === kept || text === from) && !isLaid && counts === keptCounts) return forget();
    try {
      const own = { text, fileName, options, at: Date.now(), from, counts };
      const entry: Kept = isLaid ? { ...own, beside } : own;
      localStorage.setItem(key(), JSON.stringify(entry));
    } catch {
      // No storage, or no room in it: the warning on leaving stays.
    }
  });
}

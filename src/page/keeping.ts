/**
 * The scenario as it is being changed, kept in the browser where that is allowed: a letter opened from a disk may have
 * no storage, and then nothing is kept and nothing is said. Nothing leaves the machine.
 */
import type { Kept, Store } from './store.js';

const key = (): string => `cuptide ${location.pathname}`;

/** What was kept of work on this letter; null: nothing. */
export function keptFor(from: string): Kept | null {
  try {
    const kept = JSON.parse(localStorage.getItem(key()) ?? 'null') as Kept | null;
    return kept !== null && kept.from === from && kept.text !== from ? kept : null;
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

/** Keeps every change of the scenario from now on; what was saved, or is as it was sent, is forgotten. */
export function keepWork(store: Store, from: string): void {
  let last = store.state.text;
  let saved = store.state.kept;
  store.subscribe(() => {
    const { text, kept, fileName, options } = store.state;
    if (text === last && kept === saved) return;
    [last, saved] = [text, kept];
    if (text === kept || text === from) return forget();
    try {
      const entry: Kept = { text, fileName, options, at: Date.now(), from };
      localStorage.setItem(key(), JSON.stringify(entry));
    } catch {
      // No storage, or no room in it: the warning on leaving stays.
    }
  });
}

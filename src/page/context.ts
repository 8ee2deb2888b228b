/** The page's own things, for its islands: what is known, what can be done, how it is worded. */
import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import { formatsFor, type Formats } from '../tell/format.js';
import type { Actions } from './actions.js';
import type { PageState, Store } from './store.js';

export interface Page {
  readonly store: Store;
  readonly actions: Actions;
}

export const PageContext = createContext<Page | null>(null);

/** Days are counted several times a second: who does not show them need not draw anew. */
const isCountAlone = (one: PageState, other: PageState): boolean =>
  (Object.keys(other) as (keyof PageState)[]).every(
    (key) => key === 'progress' || one[key] === other[key],
  );

/** @param counts whether it shows the days that are counted */
export function usePage(counts = false): Page & { state: PageState; formats: Formats } {
  const page = useContext(PageContext);
  if (page === null) throw new Error('an island outside the page');
  const [state, setState] = useState(page.store.state);
  useEffect(() => {
    const look = (): void =>
      setState((before) =>
        !counts && isCountAlone(before, page.store.state) ? before : page.store.state,
      );
    // What came between the first drawing and now.
    look();
    return page.store.subscribe(look);
  }, [page]);
  const { view } = state;
  return {
    ...page,
    state,
    formats: formatsFor({
      locale: state.look.locale ?? view?.locale ?? 'en',
      currency: view?.currency ?? 'EUR',
      openingMinute: view?.openingMinute ?? null,
    }),
  };
}

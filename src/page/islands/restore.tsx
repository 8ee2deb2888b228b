/** Work on this letter that was not saved, kept by the browser: taken up again, or dropped. */
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { forget } from '../keeping.js';
import { safeLocale } from '../../tell/format.js';

export function Restore() {
  const { state, store, actions } = usePage();
  const { restorable, look, view } = state;
  if (restorable === null) return null;
  const say = english.page;
  const when = new Intl.DateTimeFormat(safeLocale(look.locale ?? view?.locale ?? 'en'), {
    dateStyle: 'long',
    timeStyle: 'short',
  }).format(new Date(restorable.at));
  const done = (): void => store.set({ restorable: null });
  return (
    <div class="changed" id="restore">
      <p>{say.restore(when)}</p>
      <div class="row">
        <button
          type="button"
          onClick={() => {
            const { text, fileName, options, beside, counts = null } = restorable;
            done();
            store.set({ counts, ...(beside === undefined ? {} : { beside }) });
            if (text !== state.text) actions.replace(text, fileName, options);
          }}
        >
          {say.restoreTake}
        </button>
        <button
          type="button"
          onClick={() => {
            forget();
            done();
          }}
        >
          {say.restoreDrop}
        </button>
      </div>
    </div>
  );
}

/** Work under way: how far it has come, and a button to give it up. Who listens hears that it began, and no count. */
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { waitInWords, type Wait } from '../wait.js';

export function Waiting({ wait, onCancel }: { wait: Wait | null; onCancel(): void }) {
  const { formats } = usePage();
  return (
    <>
      <p role="status" class="unseen">
        {wait === null ? '' : english.page.working}
      </p>
      <p class="small wait">
        {wait === null ? '' : english.page.workingDays(...waitInWords(wait, formats))}
      </p>
      {wait === null ? null : (
        <p>
          <button type="button" class="plain" onClick={onCancel}>
            {english.page.cancel}
          </button>
        </p>
      )}
    </>
  );
}

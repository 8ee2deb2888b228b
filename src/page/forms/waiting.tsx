/** Work under way: how far it has come, and a button to give it up. */
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { waitInWords, type Wait } from '../wait.js';

export function Waiting({ wait, onCancel }: { wait: Wait | null; onCancel(): void }) {
  const { formats } = usePage();
  return (
    <>
      <p role="status" class="small">
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

/** A law of durations: mean and spread in two boxes, and "about" as a tick. */
import type { Units } from '../../quantities/us-units.js';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { FormField } from '../../scenario/input-forms.js';
import { useContext, useEffect, useRef } from 'preact/hooks';
import { Box } from './box.js';
import { UntakenContext, useChosen } from './draft.js';
import { lawEdit, type Law } from './law.js';

export interface LawBoxProps {
  readonly id: string;
  readonly field: FormField;
  readonly law: Law;
  readonly label: string;
  readonly problem: string | null;
  readonly hint: string;
  readonly units: Units;
  onEdit(edit: Edit | null): void;
}

export function LawBox({ id, field, law, label, problem, hint, units, onEdit }: LawBoxProps) {
  const say = english.forms;
  const untaken = useContext(UntakenContext);
  // Mean and spread are typed one after the other and make one change.
  const typed = useRef<Partial<Law>>({});
  useEffect(() => {
    if (!untaken) typed.current = {};
  }, [untaken]);
  const [about, setAbout] = useChosen(law.about);
  const change = (part: Partial<Law>): boolean => {
    typed.current = { ...typed.current, ...part };
    if (part.about !== undefined) setAbout(part.about);
    const edit = lawEdit(field, law, { ...law, ...typed.current }, units);
    onEdit(edit);
    return edit !== null;
  };
  return (
    <fieldset class="law">
      <legend>{label}</legend>
      <Box
        id={id}
        label={say.lawMean}
        value={law.mean}
        problem={problem}
        hint={hint}
        placeholder={law.mean === '' ? say.notSaid : ''}
        onCommit={(mean) => change({ mean })}
      />
      <Box
        id={`${id}-sd`}
        label={say.lawSpread}
        value={law.sd}
        placeholder={law.about ? say.lawOfAbout : say.lawNone}
        onCommit={(sd) => change({ sd, about: false })}
      />
      <label class="tick">
        <input
          type="checkbox"
          checked={about}
          onChange={(event) => change({ about: event.currentTarget.checked, sd: '' })}
        />{' '}
        {say.lawAbout}
      </label>
    </fieldset>
  );
}

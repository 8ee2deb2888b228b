/** The few boxes under a sentence. */
import type { Units } from '../../quantities/us-units.js';
import type { Words } from '../../tell/words.js';
import type { Edit } from '../../scenario/edit-scenario.js';
import type { FormField } from '../../scenario/input-forms.js';
import { FieldBox } from './field-box.js';
import { labelOf } from './labels.js';
import { problemOf, type FormProblem } from './problems.js';
import { formStyle } from './style.js';

export interface LeadField {
  readonly field: FormField;
  /** In place of the field's own words. */
  readonly label?: string;
  /** Beneath the box, such as how far it moves the answer; in place of what the value rests on. */
  readonly hint?: string;
}

export interface LeadBoxesProps {
  readonly fields: readonly LeadField[];
  readonly problems: readonly FormProblem[];
  readonly units: Units;
  readonly words: Words;
  /** Unique among rows of boxes on the page. */
  readonly id?: string;
  /** One change, or none: [] takes back what was refused. */
  onEdit(edits: readonly Edit[]): void;
}

export function LeadBoxes({ fields, problems, units, words, id = 'lead', onEdit }: LeadBoxesProps) {
  return (
    <div class="boxes">
      <style>{formStyle}</style>
      {fields.map(({ field, label, hint }) => (
        <FieldBox
          key={field.path}
          field={field}
          label={label ?? labelOf(field, { at: [] }, words)}
          problem={problemOf(field, problems)}
          units={units}
          words={words}
          prefix={id}
          {...(hint === undefined ? {} : { hint })}
          onEdit={(_, edit) => onEdit(edit === null ? [] : [edit])}
        />
      ))}
    </div>
  );
}

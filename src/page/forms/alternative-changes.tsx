/** What an alternative changes: a value of the house is chosen by its name, and another is typed. */
import { useState } from 'preact/hooks';
import type { Units } from '../../quantities/us-units.js';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { FormField, FormGroup } from '../../scenario/input-forms.js';
import { dotted } from '../../scenario/path.js';
import { freshId, heldFor } from './edit-of.js';
import { shownValue } from './field-box.js';
import { labelOf, partName } from './labels.js';
import { NeedBox } from './part-additions.js';
import { isBelow, type FormProblem } from './problems.js';

/** Groups and kinds of value that an alternative leaves as they are. */
const FIXED_GROUPS: ReadonlySet<string> = new Set(['house', 'supply', 'suit', 'alternatives']);
const FIXED: ReadonlySet<string> = new Set(['text', 'currency']);

export interface AlternativeChangesProps {
  readonly groups: readonly FormGroup[];
  /** The alternative; null: a new one. */
  readonly at: FormField['at'] | null;
  readonly problems: readonly FormProblem[];
  readonly units: Units;
  onEdit(path: string, edit: Edit | null): void;
}

interface Candidate {
  readonly value: string;
  readonly label: string;
  readonly field: FormField;
}

/** The values that can be changed, by group. */
function candidatesOf(
  groups: readonly FormGroup[],
): readonly { readonly title: string; readonly of: readonly Candidate[] }[] {
  return groups
    .filter(({ id }) => !FIXED_GROUPS.has(id))
    .map(({ id, parts, furtherMachine }) => ({
      title: english.forms.groups[id],
      of: [
        ...(furtherMachine === undefined
          ? []
          : [
              {
                value: furtherMachine.path,
                label: english.forms.furtherMachine,
                field: furtherMachine,
              },
            ]),
        ...parts.flatMap((part) =>
          part.fields
            .filter(({ origin, kind }) => origin !== 'none' && !FIXED.has(kind))
            .map((field) => ({
              value: field.path,
              label:
                part.at.length === 0
                  ? labelOf(field, part)
                  : `${partName(part)}: ${labelOf(field, part)}`,
              field,
            })),
        ),
      ],
    }))
    .filter(({ of }) => of.length > 0);
}

export function AlternativeChanges({
  groups,
  at,
  problems,
  units,
  onEdit,
}: AlternativeChangesProps) {
  const say = english.forms;
  const [name, setName] = useState('');
  const [place, setPlace] = useState('');
  const [text, setText] = useState('');
  const [missing, setMissing] = useState(false);
  const [sent, setSent] = useState<string | null>(null);
  const id = `change-${at === null ? 'new' : String(at[1])}`;
  const sets = candidatesOf(groups);
  const field = sets.flatMap(({ of }) => of).find(({ value }) => value === place)?.field;
  const choose = (path: string): void => {
    const next = sets.flatMap(({ of }) => of).find(({ value }) => value === path)?.field;
    setPlace(path);
    setText(
      next === undefined
        ? ''
        : next.written === ''
          ? (next.options[0]?.word ?? '')
          : shownValue(next, units),
    );
  };
  const add = (event: Event): void => {
    event.preventDefault();
    const lacks = field === undefined || text.trim() === '' || (at === null && name.trim() === '');
    setMissing(lacks);
    if (lacks) return;
    const option = field.options.find(({ word }) => word === text.trim());
    const value =
      field.kind === 'choice' && option !== undefined
        ? JSON.stringify(option.value)
        : heldFor(field, text, units);
    const taken = groups
      .find((group) => group.id === 'alternatives')!
      .parts.filter((part) => part.at.length > 0)
      .map((part) => String(part.at[1]));
    const edit: Edit & { readonly flow: string } =
      at === null
        ? {
            kind: 'set',
            path: ['alternatives', freshId(name, taken)],
            flow: `{ name: ${JSON.stringify(name.trim())}, change: { ${JSON.stringify(field.path)}: ${value} } }`,
          }
        : { kind: 'set', path: [...at, 'change', field.path], flow: value };
    setSent(dotted(edit.path));
    onEdit(`${id} change`, edit);
    setPlace('');
    setText('');
    setName('');
  };
  const wrong = [
    ...(missing ? [at === null ? say.alternativeFirst : say.valuesFirst] : []),
    ...(sent === null ? [] : problems.filter(({ path }) => isBelow(path, sent))).map(
      ({ message }) => message,
    ),
  ];
  return (
    <form onSubmit={add} novalidate>
      <fieldset class="rests">
        <legend>{at === null ? say.addAlternative : say.changeMore}</legend>
        <div class="boxes">
          {at !== null ? null : (
            <div class="box">
              <label for={`${id}-name`}>{say.newName}</label>
              <input
                id={`${id}-name`}
                type="text"
                autocomplete="off"
                maxLength={80}
                value={name}
                onInput={(event) => setName(event.currentTarget.value)}
              />
            </div>
          )}
          <div class="box">
            <label for={`${id}-place`}>{say.changeWhat}</label>
            <select
              id={`${id}-place`}
              value={place}
              onChange={(event) => choose(event.currentTarget.value)}
            >
              <option value="">{say.changeChoose}</option>
              {sets.map(({ title, of }) => (
                <optgroup key={title} label={title}>
                  {of.map(({ value, label }) => (
                    <option key={value} value={value}>
                      {label}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
          </div>
          {field === undefined ? null : (
            <NeedBox
              id={`${id}-to`}
              need={field}
              label={say.changeTo}
              value={text}
              onText={setText}
            />
          )}
          <div class="box">
            <button type="submit">{at === null ? say.add : say.changeAdd}</button>
          </div>
        </div>
        <p class="wrong" role="alert" hidden={wrong.length === 0}>
          {[...new Set(wrong)].join('. ')}
        </p>
      </fieldset>
    </form>
  );
}

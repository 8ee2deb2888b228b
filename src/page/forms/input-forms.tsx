/** All inputs of the scenario, folded by group; drinks, ware and machines come and go. */
import { useContext, useEffect, useState } from 'preact/hooks';
import type { Units } from '../../quantities/us-units.js';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { FieldMark, FormField, FormGroup, FormPart } from '../../scenario/input-forms.js';
import { generalPath } from '../../scenario/name-maps.js';
import { AddThing, RemoveThing } from './adding.js';
import { AlternativeChanges } from './alternative-changes.js';
import { UntakenContext } from './draft.js';
import { FieldBox, MarkBoxes } from './field-box.js';
import { labelOf, partName, placeName } from './labels.js';
import { PartAdditions } from './part-additions.js';
import { hasProblem, problemOf, type FormProblem } from './problems.js';
import { usePending } from './pending.js';
import { formStyle } from './style.js';

const MOST_PROBLEMS = 8;

export interface InputFormsProps {
  readonly groups: readonly FormGroup[];
  /** What is wrong with the last change; empty once it is taken. */
  readonly problems: readonly FormProblem[];
  readonly units: Units;
  /** All changes that are not yet taken, to be made together: shares of a menu only add up after the last of them. */
  onEdit(place: string, edits: readonly Edit[]): void;
}

export function InputForms({ groups, problems, units, onEdit }: InputFormsProps) {
  const say = english.forms;
  const { waiting, epoch, change, drop } = usePending(groups, problems, onEdit);
  const untaken = useContext(UntakenContext);
  const shared = { groups, problems: waiting ? problems : [], units, epoch, onEdit: change };
  return (
    <div class="forms">
      <style>{formStyle}</style>
      <div role="alert">
        {waiting ? (
          <div class="waiting">
            <p class="wrong">{say.waiting}</p>
            <ul>
              {problems.slice(0, MOST_PROBLEMS).map(({ path, message }) => (
                <li key={path + message} class="wrong">
                  {path === '' ? message : `${path}: ${message}`}
                </li>
              ))}
            </ul>
            <button type="button" onClick={drop}>
              {say.dropWaiting}
            </button>
          </div>
        ) : null}
      </div>
      <UntakenContext.Provider value={untaken || shared.problems.length > 0}>
        {groups.map((group) => (
          <Group key={group.id} group={group} {...shared} />
        ))}
      </UntakenContext.Provider>
    </div>
  );
}

interface SharedProps {
  readonly groups: readonly FormGroup[];
  readonly problems: readonly FormProblem[];
  readonly units: Units;
  /** Another number once boxes are to forget what was typed in them. */
  readonly epoch: number;
  onEdit(path: string, edit: Edit | null): void;
}

function Group({ group, ...shared }: SharedProps & { readonly group: FormGroup }) {
  const say = english.forms;
  const isWrong = group.parts.some((part) => hasProblem(part, shared.problems));
  const { open, toggle } = useFold(isWrong);
  const marked = group.parts.flatMap(({ fields }) => fields).filter(({ mark }) => mark !== null);
  const assumed = marked.filter(({ mark }) => mark!.basis === 'assumed').length;
  const own = group.parts.filter(({ at }) => at.length === 0);
  const things = group.parts.filter(({ at }) => at.length > 0);
  const adds = group.adds;
  return (
    <details class="ask" open={open} onToggle={toggle}>
      <summary>
        {say.groups[group.id]}
        {marked.length === 0 ? null : (
          <small class="hint">{say.assumedOf(String(assumed), String(marked.length))}</small>
        )}
      </summary>
      {open ? (
        <div>
          {own.map((part) => (
            <Fields key="own" part={part} {...shared} />
          ))}
          {things.map((part) => (
            <Thing key={part.at.join('.')} part={part} {...shared} />
          ))}
          {group.id === 'alternatives' ? <AlternativeChanges at={null} {...shared} /> : null}
          {own.map((part) => (
            <PartAdditions key="adds" part={part} {...shared} />
          ))}
          {adds === null ? null : (
            <AddThing
              adds={adds}
              onAdd={(edit) => shared.onEdit(`${adds.at.join('.')} new`, edit)}
            />
          )}
        </div>
      ) : null}
    </details>
  );
}

/** A fold that opens by itself when something in it is wrong. */
function useFold(isWrong: boolean): { open: boolean; toggle(event: Event): void } {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    if (isWrong) setOpen(true);
  }, [isWrong]);
  return { open, toggle: (event) => setOpen((event.currentTarget as HTMLDetailsElement).open) };
}

/** A drink, a ware, a machine, a supplier. */
function Thing({ part, ...shared }: SharedProps & { readonly part: FormPart }) {
  const { open, toggle } = useFold(hasProblem(part, shared.problems));
  const name = partName(part);
  return (
    <details class="thing" open={open} onToggle={toggle}>
      <summary>
        <bdi>{name}</bdi>
      </summary>
      {open ? (
        <div>
          <Fields part={part} {...shared} />
          {part.at[0] === 'alternatives' ? <AlternativeChanges at={part.at} {...shared} /> : null}
          <PartAdditions part={part} {...shared} />
          {part.canGo ? (
            <RemoveThing
              name={name}
              uses={[...new Set(part.usedBy.map((at) => placeName(at, shared.groups)))]}
              instead={part.at[0] === 'ware' ? othersOf(part, shared.groups) : []}
              onRemove={(instead) =>
                shared.onEdit(
                  `${part.at.join('.')} gone`,
                  part.usedBy.length === 0
                    ? { kind: 'remove', path: part.at }
                    : { kind: 'retire', path: part.at, instead },
                )
              }
            />
          ) : null}
        </div>
      ) : null}
    </details>
  );
}

/** The other ware. */
const othersOf = (
  { at }: FormPart,
  groups: readonly FormGroup[],
): { readonly id: string; readonly name: string }[] =>
  groups
    .flatMap(({ parts }) => parts)
    .filter((part) => part.at[0] === at[0] && part.at.length === 2 && part.at[1] !== at[1])
    .map((part) => ({ id: String(part.at[1]), name: part.name }));

/** It says something, or the thing is of no use before it does. */
const isAtHand = ({ origin, at }: FormField): boolean =>
  origin !== 'none' || generalPath(at) === 'collections.*.standsFor.*';

/** The fields of a part: those that say something, then what could be said, folded. */
function Fields({ part, ...shared }: SharedProps & { readonly part: FormPart }) {
  const say = english.forms;
  const said = part.fields.filter(isAtHand);
  const unsaid = part.fields.filter((field) => !isAtHand(field));
  const unsaidWrong = unsaid.some((field) => problemOf(field, shared.problems) !== null);
  const { open, toggle } = useFold(unsaidWrong);
  return (
    <>
      <div class="boxes">
        {said.map((field) => (
          <OneField key={`${field.path} ${shared.epoch}`} field={field} part={part} {...shared} />
        ))}
      </div>
      <Rests fields={said} part={part} {...shared} />
      {unsaid.length === 0 ? null : (
        <details class="more" open={open} onToggle={toggle}>
          <summary>{say.moreFields(String(unsaid.length))}</summary>
          {open ? (
            <div class="boxes">
              {unsaid.map((field) => (
                <OneField
                  key={`${field.path} ${shared.epoch}`}
                  field={field}
                  part={part}
                  {...shared}
                />
              ))}
            </div>
          ) : null}
        </details>
      )}
    </>
  );
}

function OneField({
  field,
  part,
  problems,
  units,
  onEdit,
}: SharedProps & { readonly field: FormField; readonly part: FormPart }) {
  return (
    <FieldBox
      field={field}
      label={labelOf(field, part)}
      problem={problemOf(field, problems)}
      units={units}
      prefix="all"
      apart
      onEdit={onEdit}
    />
  );
}

const isMarked = (field: FormField): field is FormField & { readonly mark: FieldMark } =>
  field.mark !== null;

/** What the values of a part rest on, folded. */
function Rests({
  fields,
  part,
  units,
  epoch,
  onEdit,
}: SharedProps & { readonly fields: readonly FormField[]; readonly part: FormPart }) {
  const { open, toggle } = useFold(false);
  const marked = fields.filter(isMarked);
  if (marked.length === 0) return null;
  return (
    <details class="more" open={open} onToggle={toggle}>
      <summary>{english.forms.restsSummary}</summary>
      {open
        ? marked.map((field) => (
            <MarkBoxes
              key={`${field.path} ${epoch}`}
              field={field}
              label={labelOf(field, part)}
              units={units}
              prefix="all"
              onEdit={onEdit}
            />
          ))
        : null}
    </details>
  );
}

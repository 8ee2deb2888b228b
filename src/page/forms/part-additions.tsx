/** One more of something within a part (a quote, a lower price, a shelf), or one less. */
import { useEffect, useState } from 'preact/hooks';
import type { Units } from '../../quantities/us-units.js';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { FormField, FormPart, PartAddition } from '../../scenario/input-forms.js';
import { Choice } from './box.js';
import { choiceWord, labelOf, titleOfAddition, titleOfEntry } from './labels.js';
import { newThing } from './new-thing.js';
import { isBelow, type FormProblem } from './problems.js';
import { generalPath } from '../../scenario/name-maps.js';
import { dotted } from '../../scenario/path.js';

export interface PartAdditionsProps {
  readonly part: FormPart;
  readonly problems: readonly FormProblem[];
  readonly units: Units;
  onEdit(path: string, edit: Edit | null): void;
}

export function PartAdditions({ part, ...shared }: PartAdditionsProps) {
  const order = Object.keys(english.forms.addable);
  const placeOf = ({ at }: PartAddition): number => order.indexOf(generalPath(at));
  const adds = part.adds
    .filter((one) => placeOf(one) >= 0)
    .toSorted((a, b) => placeOf(a) - placeOf(b));
  const entries = part.entries.filter((at) => titleOfEntry(at, part) !== null);
  const [chosen, setChosen] = useState('');
  if (adds.length === 0) return null;
  const addition = adds.find(({ at }) => dotted(at) === chosen) ?? adds[0]!;
  const id = `add-${part.at.join('-')}-${generalPath(adds[0]!.at)}`;
  return (
    <>
      {entries.length === 0 ? null : <TakeOut id={id} part={part} entries={entries} {...shared} />}
      <fieldset class="rests">
        <legend>{english.forms.addWhat}</legend>
        <div class="boxes">
          {adds.length === 1 ? null : (
            <Choice
              id={`${id}-what`}
              label={english.forms.addKind}
              value={dotted(addition.at)}
              choices={adds.map((one) => ({
                value: dotted(one.at),
                label: titleOfAddition(one, part)!,
              }))}
              onCommit={(value) => (setChosen(value), true)}
            />
          )}
        </div>
        <NewThing
          key={`${dotted(addition.at)} ${addition.taken.join()}`}
          id={id}
          title={titleOfAddition(addition, part)!}
          addition={addition}
          {...shared}
        />
      </fieldset>
    </>
  );
}

function NewThing({
  id,
  title,
  addition,
  problems,
  units,
  onEdit,
}: Omit<PartAdditionsProps, 'part'> & {
  readonly id: string;
  readonly title: string;
  readonly addition: PartAddition;
}) {
  const say = english.forms;
  const { by, names, needs } = addition;
  const [name, setName] = useState(names[0]?.id ?? '');
  const [texts, setTexts] = useState<readonly string[]>(needs.map(firstText));
  const [sent, setSent] = useState<string | null>(null);
  const [missing, setMissing] = useState(false);
  const isNamed = Object.hasOwn(english.fields, `${generalPath([...addition.at, '*'])}.name`);
  const add = (event: Event): void => {
    event.preventDefault();
    const lacks = texts.some((text) => text.trim() === '') || (by === 'name' && name.trim() === '');
    setMissing(lacks);
    if (lacks) return;
    const edit = newThing(addition, name, isNamed, texts, units);
    setSent(dotted(edit.path));
    onEdit(`${dotted(addition.at)} new`, edit);
  };
  const wrong = [
    ...(missing ? [say.valuesFirst] : []),
    ...(sent === null ? [] : problems.filter(({ path }) => isBelow(path, sent))).map(
      ({ message }) => message,
    ),
  ];
  return (
    <form onSubmit={add} novalidate>
      <div class="boxes">
        {by !== 'name' ? null : names.length > 0 ? (
          <Choice
            id={`${id}-name`}
            label={say.addFor}
            value={name}
            choices={names.map((one) => ({ value: one.id, label: one.name }))}
            onCommit={(value) => (setName(value), true)}
          />
        ) : (
          <Typed id={`${id}-name`} label={say.newName} value={name} onText={setName} />
        )}
        {needs.map((need, i) => (
          <NeedBox
            key={need.path}
            id={`${id}-${i}`}
            need={need}
            label={labelOf({ at: need.at, path: need.path }, { at: need.at })}
            value={texts[i] ?? ''}
            onText={(text) => setTexts(texts.map((one, k) => (k === i ? text : one)))}
          />
        ))}
        <div class="box">
          <button type="submit">{say.addThis(title)}</button>
        </div>
      </div>
      <p class="wrong" role="alert" hidden={wrong.length === 0}>
        {[...new Set(wrong)].join('. ')}
      </p>
    </form>
  );
}

const firstText = (need: FormField): string =>
  need.kind === 'choice' ? (need.options[0]?.word ?? '') : '';

/** A value of something new: nothing is sent until all of them are there. */
export function NeedBox({
  id,
  need,
  label,
  value,
  onText,
}: {
  readonly id: string;
  readonly need: FormField;
  readonly label: string;
  readonly value: string;
  onText(text: string): void;
}) {
  if (need.kind === 'choice')
    return (
      <Choice
        id={id}
        label={label}
        value={value}
        choices={need.options.map((option) => ({
          value: option.word,
          label: choiceWord(option),
        }))}
        onCommit={(text) => (onText(text), true)}
      />
    );
  const list = need.options.map(({ word }) => word).join(', ');
  return (
    <Typed
      id={id}
      label={label}
      value={value}
      hint={list === '' ? (english.forms.examples[need.kind] ?? '') : english.forms.pieces(list)}
      onText={onText}
    />
  );
}

function Typed({
  id,
  label,
  value,
  hint = '',
  onText,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  onText(text: string): void;
}) {
  return (
    <div class="box">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        maxLength={200}
        value={value}
        aria-describedby={`${id}-hint`}
        onInput={(event) => onText(event.currentTarget.value)}
      />
      <small id={`${id}-hint`} class="hint">
        {hint}
      </small>
    </div>
  );
}

function TakeOut({
  id,
  part,
  entries,
  onEdit,
}: PartAdditionsProps & { readonly id: string; readonly entries: FormPart['entries'] }) {
  const [chosen, setChosen] = useState('');
  useEffect(() => setChosen(''), [entries.length]);
  const say = english.forms;
  const at = entries.find((one) => dotted(one) === chosen);
  return (
    <div class="boxes">
      <Choice
        id={`${id}-out`}
        label={say.takeOut}
        value={chosen}
        choices={[
          { value: '', label: say.takeOutNone },
          ...entries.map((one) => ({
            value: dotted(one),
            label: titleOfEntry(one, part)!,
          })),
        ]}
        onCommit={(value) => (setChosen(value), true)}
      />
      <div class="box">
        <button
          type="button"
          disabled={at === undefined}
          onClick={() => at !== undefined && onEdit(`${chosen} gone`, { kind: 'remove', path: at })}
        >
          {say.takeOutButton}
        </button>
      </div>
    </div>
  );
}

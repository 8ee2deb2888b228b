/** A drink, ware or a machine more, or one less. */
import { useEffect, useRef, useState } from 'preact/hooks';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { Addition } from '../../scenario/input-forms.js';
import { additionOf } from './edit-of.js';

export interface AddThingProps {
  readonly adds: Addition;
  onAdd(edit: Edit): void;
}

export function AddThing({ adds, onAdd }: AddThingProps) {
  const say = english.forms;
  const { thing, classes } = adds;
  const [name, setName] = useState('');
  const [choice, setChoice] = useState(classes[0]?.id ?? '');
  const [wrong, setWrong] = useState(false);
  const title = { drink: say.addDrink, ware: say.addWare, machine: say.addMachine }[thing];
  const id = `add-${thing}`;
  // What was added and does not stand in the scenario yet has its place too.
  const added = useRef({ to: adds, ids: [] as string[] });
  if (added.current.to !== adds) added.current = { to: adds, ids: [] };
  const add = (event: Event): void => {
    event.preventDefault();
    const nameless = thing !== 'machine' && name.trim() === '';
    setWrong(nameless);
    if (nameless || choice === '') return;
    const { ids } = added.current;
    const edit = additionOf({ ...adds, taken: [...adds.taken, ...ids] }, name, choice);
    ids.push(String(edit.path.at(-1)));
    onAdd(edit);
    setName('');
  };
  return (
    <form onSubmit={add} novalidate>
      <fieldset class="rests">
        <legend>{title}</legend>
        <div class="boxes">
          {thing === 'machine' ? null : (
            <div class="box">
              <label for={`${id}-name`}>{say.newName}</label>
              <input
                id={`${id}-name`}
                type="text"
                autocomplete="off"
                maxLength={60}
                value={name}
                aria-invalid={wrong}
                aria-describedby={`${id}-wrong`}
                onInput={(event) => setName(event.currentTarget.value)}
              />
              <p id={`${id}-wrong`} class="wrong">
                {wrong ? say.nameFirst : null}
              </p>
            </div>
          )}
          <div class="box">
            <label for={`${id}-class`}>{thing === 'drink' ? say.servedIn : say.classLabel}</label>
            <select
              id={`${id}-class`}
              value={choice}
              onChange={(event) => setChoice(event.currentTarget.value)}
            >
              {classes.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
            </select>
            <p class="wrong" />
          </div>
          <div class="box">
            <button type="submit">{say.add}</button>
            <p class="wrong" />
          </div>
        </div>
        {thing === 'drink' ? <p class="small">{say.newDrinkHint}</p> : null}
      </fieldset>
    </form>
  );
}

export interface RemoveThingProps {
  readonly name: string;
  /** What else changes when it goes, in words. */
  readonly uses: readonly string[];
  /** What may take its place there. */
  readonly instead: readonly { readonly id: string; readonly name: string }[];
  onRemove(instead: string | null): void;
}

/** Places that are named one by one. */
const MOST_USES = 12;

/** Asks before it takes something out; the question has the focus, and Escape keeps the thing. */
export function RemoveThing({ name, uses, instead, onRemove }: RemoveThingProps) {
  const say = english.forms;
  const [other, setOther] = useState('');
  const [asked, setAsked] = useState(false);
  const keep = useRef<HTMLButtonElement>(null);
  const first = useRef<HTMLButtonElement>(null);
  const wasAsked = useRef(false);
  useEffect(() => {
    if (asked) keep.current?.focus();
    else if (wasAsked.current) first.current?.focus();
    wasAsked.current = asked;
  }, [asked]);
  if (!asked) {
    return (
      <p class="row">
        <button type="button" ref={first} onClick={() => setAsked(true)}>
          {say.remove(name)}
        </button>
      </p>
    );
  }
  return (
    <div
      role="group"
      aria-label={say.remove(name)}
      onKeyDown={(event) => event.key === 'Escape' && setAsked(false)}
    >
      <p>{uses.length === 0 ? say.removeSure(name) : say.removeUsed(name)}</p>
      {uses.length === 0 ? null : (
        <ul>
          {uses.slice(0, MOST_USES).map((use) => (
            <li key={use}>{use}</li>
          ))}
          {uses.length > MOST_USES ? (
            <li>{say.removeMore(String(uses.length - MOST_USES))}</li>
          ) : null}
        </ul>
      )}
      {uses.length === 0 || instead.length === 0 ? null : (
        <div class="box">
          <label for="remove-instead">{say.removeInstead}</label>
          <select
            id="remove-instead"
            value={other}
            onChange={(event) => setOther(event.currentTarget.value)}
          >
            <option value="">{say.removeNothing}</option>
            {instead.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <p class="row">
        <button type="button" ref={keep} onClick={() => setAsked(false)}>
          {say.removeNo}
        </button>
        <button
          type="button"
          onClick={() => {
            setAsked(false);
            onRemove(other === '' ? null : other);
          }}
        >
          {say.removeYes}
        </button>
      </p>
    </div>
  );
}

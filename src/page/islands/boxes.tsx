/**
 * Six boxes in a fixed order, each a thing that a house knows or decides; then how safe it is to be, and
 * pieces of one's own. A box stays where it is whatever the answer says.
 */
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { Box } from '../forms/box.js';
import { UntakenContext } from '../forms/draft.js';
import { FieldBox } from '../forms/field-box.js';
import { problemOf } from '../forms/problems.js';
import { formStyle } from '../forms/style.js';
import { readLevel, readMachines, readPositive, UNITS } from '../forms/typed-numbers.js';
import { scaledDurations, scaledNumbers } from '../forms/scaled.js';
import { Pieces } from './pieces.js';
import type { FormField } from '../../scenario/input-forms.js';
import type { Edit } from '../../scenario/edit.js';
import type { GivenOptions } from '../../letter/live.js';
import { useState } from 'preact/hooks';

/** What a box's text comes to. */
interface Taken {
  readonly edits: readonly Edit[];
  /** What the answer is asked with from now on, where that changes. */
  readonly options?: GivenOptions;
}

export function Boxes() {
  const { state, formats, actions } = usePage();
  const { view, groups, mistakes, look } = state;
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  if (view === null || groups.length === 0) return null;
  const say = english.page;
  const all = groups.flatMap(({ parts }) => parts.flatMap(({ fields }) => fields));
  const fieldAt = (path: string): FormField | undefined => all.find((one) => one.path === path);
  const under = (path: string, kinds: readonly string[]): FormField[] =>
    all.filter(
      (one) => one.path.startsWith(path) && kinds.includes(one.kind) && one.written !== '',
    );
  /** A box of our own: what is wrong with it stands beneath it, and the answer stays. */
  const own = (
    id: string,
    label: string,
    value: string,
    read: (text: string) => Taken | { readonly wrong: string },
  ) => (
    <Box
      id={id}
      label={label}
      value={value}
      problem={wrong[id] ?? null}
      onCommit={(text) => {
        const { [id]: _, ...others } = wrong;
        const isBack = text.trim() === value && (id !== 'box-level' || !state.untaken);
        const taken: Taken | { wrong: string } = isBack ? { edits: [] } : read(text);
        setWrong('wrong' in taken ? { ...others, [id]: taken.wrong } : others);
        if ('edits' in taken) actions.edit(id, taken.edits, taken.options);
        return 'wrong' in taken || taken.edits.length > 0;
      }}
    />
  );
  const box = (path: string, label: string) => {
    const field = fieldAt(path);
    return field === undefined ? null : (
      <FieldBox
        field={field}
        label={label}
        problem={problemOf(field, mistakes)}
        units={look.units}
        prefix="lead"
        onEdit={(place, edit) => actions.edit(place, edit === null ? [] : [edit])}
      />
    );
  };
  const set = ({ at, kind }: FormField, text: string): Edit =>
    kind === 'rate' || kind === 'duration'
      ? { kind: 'set', path: at, value: text }
      : { kind: 'set', path: at, flow: text };
  const guests = formats.decimal(view.busiestHour, view.busiestHour < 10 ? 1 : 0);
  const stay = formats.decimal(view.stayMinutes, 1);
  const scaleAll =
    (
      fields: readonly FormField[],
      was: number,
      scaled: (text: string, factor: number) => string,
      unit: RegExp,
    ) =>
    (text: string) => {
      const wanted = readPositive(text, state.look.locale ?? view.locale, unit);
      if (wanted === null) return { wrong: say.positiveWrong };
      return {
        edits: fields.map((field): Edit => {
          const by = scaled(field.written, wanted / was);
          return set(field, field.kind === 'numbers' ? `[${by}]` : by);
        }),
      };
    };
  return (
    <section>
      <h2>{say.boxesHead}</h2>
      <style>{formStyle}</style>
      <UntakenContext.Provider value={state.untaken}>
        <div class="boxes six">
          {box('arrivals.peak.guests', say.six.guests) ??
            own(
              'box-guests',
              say.six.guests,
              guests,
              scaleAll(
                [
                  ...under('arrivals.slots.parties', ['numbers']),
                  ...under('arrivals.steps', ['rate']),
                ],
                view.busiestHour,
                scaledNumbers,
                UNITS.guests,
              ),
            )}
          {box('seats.count', say.six.seats)}
          {own(
            'box-stay',
            say.six.stay,
            stay,
            scaleAll(
              under('guests.dwell', ['durationLaw', 'duration']),
              view.stayMinutes,
              scaledDurations,
              UNITS.minutes,
            ),
          )}
          {box('guests.staysIn', say.six.staysIn)}
          {view.machines === null ? (
            <Still id="machines" label={say.machines} text={say.asManyAsNeeded} />
          ) : (
            own('machines', say.machines, String(view.machines.length), (text) =>
              readMachines(text, view.machines ?? []),
            )
          )}
          {view.clearedAtOnce ? (
            <Still id="box-clearing" label={say.six.clearing} text={say.clearedAtOnce} />
          ) : (
            box('clearing.every', say.six.clearing)
          )}
        </div>
        <div class="boxes level">
          {own(
            'box-level',
            say.six.level,
            formats.percent(view.level, view.level * 100 === Math.round(view.level * 100) ? 0 : 2),
            (text) => {
              // A level asked for on the command's line would hide the file's.
              const { level, ...options } = state.options;
              const taken = readLevel(text);
              if ('edits' in taken && level !== undefined) return { ...taken, options };
              return taken;
            },
          )}
        </div>
      </UntakenContext.Provider>
      <Pieces />
    </section>
  );
}

/** A box's place where there is nothing to type. */
function Still({ id, label, text }: { id: string; label: string; text: string }) {
  return (
    <div class="box">
      <label for={id}>{label}</label>
      <input id={id} type="text" disabled value={text} />
    </div>
  );
}

/** One value of the scenario in its box, with what it is based on folded beneath. */
import { shownIn, type Units } from '../../quantities/us-units.js';
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';
import type { FieldMark, FormField } from '../../scenario/input-forms.js';
import { useState } from 'preact/hooks';
import { withoutBrackets } from './bare-text.js';
import { Box, Choice } from './box.js';
import { editOf, isMeasured, markEditOf, type MarkChange } from './edit-of.js';
import { choiceWord } from './labels.js';
import { LawBox } from './law-box.js';
import { lawOf } from './law.js';

export interface FieldBoxProps {
  readonly field: FormField;
  readonly label: string;
  readonly problem: string | null;
  readonly units: Units;
  /** Unique among the places on the page that show this field. */
  readonly prefix: string;
  /** Beside the box in place of what it is based on. */
  readonly hint?: string;
  /** A law of durations as mean and spread, each in a box of its own. */
  readonly apart?: boolean;
  /** null: nothing is to change after all. */
  onEdit(path: string, edit: Edit | null): void;
}

const textual = new Set([
  'text',
  'list',
  'map',
  'numbers',
  'partySize',
  'durationLaw',
  'currency',
  'date',
  'clock',
  'moment',
]);
const stepping = (kind: string): boolean => !textual.has(kind) || kind === 'durationLaw';

/** The field's value in the reader's units. */
export const shownValue = ({ kind, written, at }: FormField, units: Units): string =>
  isMeasured(kind) ? shownIn(written, units) : withoutBrackets(written, kind, String(at.at(-1)));

export function FieldBox({
  field,
  label,
  problem,
  units,
  prefix,
  hint,
  apart = false,
  onEdit,
}: FieldBoxProps) {
  const say = english.forms;
  const id = `${prefix}-${field.path}`;
  const shown = shownValue(field, units);
  const commit = (text: string): boolean => {
    const edit = editOf(field, text, units, shown);
    onEdit(field.path, edit);
    return edit !== null;
  };
  const beside = hint ?? hintOf(field);
  if (field.kind === 'choice') {
    const choices = field.options.map((option) => ({
      value: option.word,
      label: choiceWord(option),
    }));
    const silent =
      field.origin === 'none' || (field.optional && field.origin === 'file')
        ? [{ value: '', label: field.origin === 'none' ? say.notSaid : say.asUsual }]
        : [];
    return (
      <Choice
        id={id}
        label={label}
        value={field.written}
        choices={[...silent, ...choices]}
        problem={problem}
        hint={beside}
        onCommit={commit}
      />
    );
  }
  const law = field.kind === 'durationLaw' && apart ? lawOf(field.written) : null;
  if (law !== null)
    return (
      <LawBox
        id={id}
        field={field}
        law={law}
        label={label}
        problem={problem}
        hint={beside}
        units={units}
        onEdit={(edit) => onEdit(field.path, edit)}
      />
    );
  return (
    <Box
      id={id}
      label={label}
      value={shown}
      problem={problem}
      hint={beside}
      placeholder={field.origin === 'none' ? say.notSaid : ''}
      steps={stepping(field.kind)}
      wide={textual.has(field.kind)}
      onCommit={commit}
    />
  );
}

/** What stands beside a box: whether its value is assumed, and the words that may be typed. */
function hintOf({ mark, origin, options, kind }: FormField): string {
  const say = english.forms;
  const rests =
    mark === null
      ? []
      : [
          origin === 'default'
            ? `${say.basis[mark.basis]}, ${say.filledIn}`
            : say.basis[mark.basis],
        ];
  const list = options.map(({ word }) => word).join(', ');
  const beside =
    kind === 'choice' || list === ''
      ? []
      : [kind === 'list' ? say.pieces(list) : say.wordsBeside(list)];
  return [...rests, ...beside].join(' · ');
}

/** What a value is based on: basis, source, plausible range. */
export function MarkBoxes({
  field,
  label,
  units,
  prefix,
  onEdit,
}: Omit<FieldBoxProps, 'problem' | 'hint'> & {
  readonly field: FormField & { readonly mark: FieldMark };
}) {
  const say = english.forms;
  const { mark, kind } = field;
  const id = `${prefix}-${field.path}-rests`;
  const ends = (isMeasured(kind) ? mark.range?.map((end) => shownIn(end, units)) : mark.range) ?? [
    '',
    '',
  ];
  const shown = [ends[0]!, ends[1]!] as const;
  const [half, setHalf] = useState<readonly [string, string]>(['', '']);
  const change = (what: MarkChange, known?: readonly [string, string]): boolean => {
    onEdit(
      `${field.path} rests ${Object.keys(what).join()}`,
      markEditOf(field, what, units, known),
    );
    return true;
  };
  /** A range has both ends or none: one alone waits for the other. */
  const setEnd = (at: 0 | 1, text: string): boolean => {
    const next = (at === 0 ? [text, half[1] || shown[1]] : [half[0] || shown[0], text]) as [
      string,
      string,
    ];
    setHalf(next);
    const [low, high] = [next[0].trim(), next[1].trim()];
    if (low === '' && high === '') return change({ range: null });
    return low !== '' && high !== '' ? change({ range: [low, high] }, shown) : true;
  };
  const steps = kind !== 'durationLaw' && stepping(kind);
  const wide = !steps;
  return (
    <fieldset class="rests">
      <legend>{say.basisOf(label)}</legend>
      <div class="boxes">
        <Choice
          id={`${id}-basis`}
          label={say.basisLabel}
          value={mark.basis}
          choices={(['measured', 'published', 'practice', 'assumed'] as const).map((basis) => ({
            value: basis,
            label: say.basis[basis],
          }))}
          onCommit={(basis) => change({ basis: basis as FieldMark['basis'] })}
        />
        <Box
          id={`${id}-low`}
          label={say.lowLabel}
          value={shown[0]}
          steps={steps}
          wide={wide}
          hint={(half[0] === '') !== (half[1] === '') && mark.range === null ? say.both : ''}
          onCommit={(text) => setEnd(0, text)}
        />
        <Box
          id={`${id}-high`}
          label={say.highLabel}
          value={shown[1]}
          steps={steps}
          wide={wide}
          onCommit={(text) => setEnd(1, text)}
        />
        <Box
          id={`${id}-source`}
          label={say.sourceLabel}
          value={mark.source}
          steps={false}
          wide
          onCommit={(text) => change({ source: text.trim() })}
        />
      </div>
    </fieldset>
  );
}

/** A labelled text box: type a value, or step its number by the arrow keys. */
import { useDraft } from './draft.js';

export interface BoxProps {
  /** Unique on the page. */
  readonly id: string;
  readonly label: string;
  /** As shown, with its unit. */
  readonly value: string;
  /** What is wrong with it, or null. */
  readonly problem?: string | null;
  /** Beside the label: what may be typed, what it rests on. */
  readonly hint?: string;
  readonly placeholder?: string;
  /** Arrow keys step the number; off for names and lists. */
  readonly steps?: boolean;
  readonly wide?: boolean;
  /** Takes a text; false if it means what stands there already. */
  onCommit(text: string): boolean;
}

const LONG = 34;

export function Box({ id, label, value, problem = null, hint = '', placeholder = '', steps = true, wide = false, onCommit }: BoxProps) {
  const { text, handlers } = useDraft(value, problem !== null, steps, onCommit);
  const shared = {
    id,
    placeholder,
    spellcheck: false,
    autocomplete: 'off',
    'aria-invalid': problem !== null,
    'aria-describedby': `${id}-hint ${id}-problem`,
    ...handlers,
  } as const;
  const isLong = wide && text.length > LONG;
  return (
    <div class={isLong ? 'box long' : 'box'}>
      <label for={id}>{label}</label>
      {isLong ? <textarea {...shared} rows={Math.min(6, Math.ceil(text.length / LONG))} value={text} /> : <input {...shared} type="text" class={wide ? 'wide' : undefined} value={text} />}
      <small id={`${id}-hint`} class="hint">
        {hint}
      </small>
      <p id={`${id}-problem`} class="wrong">
        {problem}
      </p>
    </div>
  );
}

export interface ChoiceProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly problem?: string | null;
  readonly hint?: string;
  onCommit(value: string): boolean;
}

/** A labelled choice of words. */
export function Choice({ id, label, value, choices, problem = null, hint = '', onCommit }: ChoiceProps) {
  return (
    <div class="box">
      <label for={id}>{label}</label>
      <select id={id} value={value} aria-invalid={problem !== null} aria-describedby={`${id}-hint ${id}-problem`} onChange={(event) => onCommit(event.currentTarget.value)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      <small id={`${id}-hint`} class="hint">
        {hint}
      </small>
      <p id={`${id}-problem`} class="wrong">
        {problem}
      </p>
    </div>
  );
}

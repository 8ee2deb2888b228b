/** A labelled text box: type a value, or step its number by the arrow keys. */
import { useChosen, useDraft } from './draft.js';

export interface BoxProps {
  /** Unique on the page. */
  readonly id: string;
  readonly label: string;
  /** As shown, with its unit. */
  readonly value: string;
  /** What is wrong with it, or null. */
  readonly problem?: string | null;
  /** Beside the label: what may be typed, what it is based on. */
  readonly hint?: string;
  readonly placeholder?: string;
  /** Arrow keys step the number; off for names and lists. */
  readonly steps?: boolean;
  /** Names, laws and lists: as wide as what they say, on several lines if need be. */
  readonly wide?: boolean;
  /** Takes a text; false if it means what stands there already. */
  onCommit(text: string): boolean;
}

/** Characters that fit a wide box, and a line of a long one. */
const WIDE = 30;
const LONG = 44;
const SHORT = 12;

/** By what it says, not by what is being typed: a box does not jump under the hands. */
const widthOf = (value: string): string =>
  value.length > WIDE ? 'long' : value.length > SHORT ? 'wide' : 'short';

export function Box({
  id,
  label,
  value,
  problem = null,
  hint = '',
  placeholder = '',
  steps = true,
  wide = false,
  onCommit,
}: BoxProps) {
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
  return (
    <div class={wide ? `box ${widthOf(value)}` : 'box'}>
      <label for={id}>{label}</label>
      {wide ? (
        <textarea
          {...shared}
          rows={Math.min(
            6,
            Math.max(1, Math.ceil(text.length / (value.length > WIDE ? LONG : WIDE))),
          )}
          value={text}
        />
      ) : (
        <input {...shared} type="text" value={text} />
      )}
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
export function Choice({
  id,
  label,
  value,
  choices,
  problem = null,
  hint = '',
  onCommit,
}: ChoiceProps) {
  const [shown, choose] = useChosen(value);
  return (
    <div class="box">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={shown}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-hint ${id}-problem`}
        onChange={(event) => {
          choose(event.currentTarget.value);
          onCommit(event.currentTarget.value);
        }}
      >
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

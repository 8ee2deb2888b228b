/**
 * What is typed in a box and not yet taken: sent after a pause, and kept until the scenario says it, whatever is drawn
 * meanwhile; dropped on Escape.
 */
import { createContext } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { stepped } from './step.js';

/** Quiet time after which what is typed is sent, in ms. */
export const QUIET_MS = 250;
const LONG_STEP = 10;

/** Whether something typed does not stand in the scenario yet. */
export const UntakenContext = createContext(false);

/** What was chosen last, until the scenario says so or refuses it. */
export function useChosen<T>(value: T): readonly [T, (chosen: T) => void] {
  const untaken = useContext(UntakenContext);
  const [chosen, choose] = useState<{ readonly of: T } | null>(null);
  useEffect(() => {
    if (!untaken) choose(null);
  }, [value, untaken]);
  return [chosen === null ? value : chosen.of, (of) => choose({ of })];
}

type BoxElement = HTMLInputElement | HTMLTextAreaElement;

export interface Draft {
  readonly text: string;
  readonly handlers: {
    onFocus(event: FocusEvent): void;
    onInput(event: Event): void;
    onKeyDown(event: KeyboardEvent): void;
    onBlur(): void;
  };
}

const isBox = (target: EventTarget | null): target is BoxElement =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;

/**
 * @param value what the box says when nothing is typed; when it changes, it takes the place of what was typed
 * @param onCommit takes a text; false if it means what stands there already
 * @param steps whether arrow keys step the number
 */
export function useDraft(
  value: string,
  isWrong: boolean,
  steps: boolean,
  onCommit: (text: string) => boolean,
): Draft {
  const [draft, setDraft] = useState<string | null>(null);
  const box = useRef({ timer: 0, focused: false, before: value, sent: null as string | null });
  const state = box.current;
  const untaken = useContext(UntakenContext);

  const commit = (text: string): void => {
    window.clearTimeout(state.timer);
    if (text === (state.sent ?? value)) return;
    state.sent = text;
    if (!onCommit(text) && !state.focused) setDraft(null);
  };
  const later = (text: string): void => {
    setDraft(text);
    window.clearTimeout(state.timer);
    state.timer = window.setTimeout(() => latest.current(text), QUIET_MS);
  };
  // The timer must see the value and the handler of the latest drawing, not of the one it was set in.
  const latest = useRef(commit);
  latest.current = commit;

  const valued = useRef(value);
  useEffect(() => {
    const isNew = valued.current !== value;
    valued.current = value;
    // Another change was taken, this one not yet; or what is wrong stands there until it is put right.
    if (untaken || (isWrong && !isNew) || (state.sent === null && !isNew)) return;
    state.sent = null;
    if (!state.focused) setDraft(null);
  }, [value, isWrong, untaken]);
  useEffect(() => () => window.clearTimeout(state.timer), []);

  return {
    text: draft ?? value,
    handlers: {
      onFocus() {
        state.focused = true;
        state.before = value;
      },
      onInput(event) {
        if (isBox(event.target)) later(event.target.value);
      },
      onKeyDown(event) {
        if (event.isComposing || !isBox(event.target)) return;
        if (event.key === 'Enter') {
          event.preventDefault();
          commit(event.target.value);
        } else if (event.key === 'Escape') {
          window.clearTimeout(state.timer);
          setDraft(null);
          if (state.sent !== null || value !== state.before) onCommit(state.before);
          state.sent = null;
        } else if (steps && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
          const next = stepped(
            event.target.value,
            event.key === 'ArrowUp' ? 1 : -1,
            event.shiftKey ? LONG_STEP : 1,
          );
          if (next === null) return;
          event.preventDefault();
          later(next);
        }
      },
      onBlur() {
        state.focused = false;
        if (draft === null) return;
        if (state.sent !== draft) commit(draft);
        else if (!isWrong && !untaken) setDraft(null);
      },
    },
  };
}

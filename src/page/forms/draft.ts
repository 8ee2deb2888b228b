/** What is typed in a box and not yet taken: kept while somebody types, sent after a pause, dropped on Escape. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { stepped } from './step.js';

/** Quiet time after which what is typed is sent, in ms. */
export const QUIET_MS = 250;
const LONG_STEP = 10;

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

  useEffect(() => {
    state.sent = null;
    if (!state.focused) setDraft(null);
  }, [value]);
  useEffect(() => {
    if (!isWrong && !state.focused && state.sent !== null) setDraft(null);
  }, [isWrong]);
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
        if (state.sent === draft && !isWrong) setDraft(null);
        else commit(draft);
      },
    },
  };
}

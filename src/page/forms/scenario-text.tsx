/** The whole scenario file as text, for what boxes cannot say. */
import { useEffect, useState } from 'preact/hooks';
import * as english from '../../tell/english.js';
import type { FormProblem } from './problems.js';
import { formStyle } from './style.js';

export interface ScenarioTextProps {
  readonly text: string;
  readonly problems: readonly FormProblem[];
  onText(text: string): void;
}

const MOST_PROBLEMS = 20;

export function ScenarioText({ text, problems, onText }: ScenarioTextProps) {
  const say = english.forms;
  const [typed, setTyped] = useState<string | null>(null);
  /** The text that what is typed began from. */
  const [from, setFrom] = useState(text);
  const changed = typed !== null && typed !== text;
  useEffect(() => {
    // What is typed here stays when a box changes the scenario meanwhile.
    if (!changed || typed === from) setTyped(null);
  }, [text]);
  /** To the line of a problem, with the whole line chosen. */
  const show = (line: number): void => {
    const box = document.getElementById('scenario-text');
    if (!(box instanceof HTMLTextAreaElement)) return;
    const lines = box.value.split('\n');
    const from = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
    box.focus();
    box.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
    box.scrollTop = (box.scrollHeight * Math.max(0, line - 5)) / Math.max(1, lines.length);
  };
  return (
    <div class="whole-text">
      <style>{formStyle}</style>
      <p class="small">{say.wholeTextHint}</p>
      <label for="scenario-text">{say.textLabel}</label>
      <textarea
        id="scenario-text"
        rows={24}
        spellcheck={false}
        autocomplete="off"
        wrap="off"
        value={typed ?? text}
        aria-invalid={problems.length > 0}
        aria-describedby="scenario-text-problems"
        onInput={(event) => {
          if (!changed) setFrom(text);
          setTyped(event.currentTarget.value);
        }}
      />
      <div id="scenario-text-problems">
        {problems.length === 0 ? null : (
          <>
            <p class="wrong">{say.textProblems}</p>
            <ul>
              {problems.slice(0, MOST_PROBLEMS).map(({ line, path, message }) => (
                <li key={`${line} ${path} ${message}`} class="wrong">
                  <button type="button" class="to-line" onClick={() => show(line)}>
                    {say.line(String(line))}
                  </button>{' '}
                  {path === '' ? message : `${path}: ${message}`}
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      {changed && from !== text ? <p class="wrong">{say.textOlder}</p> : null}
      <p class="row">
        <button type="button" disabled={!changed} onClick={() => onText(typed ?? text)}>
          {say.takeText}
        </button>
        <button type="button" disabled={!changed} onClick={() => setTyped(null)}>
          {say.dropText}
        </button>
      </p>
    </div>
  );
}

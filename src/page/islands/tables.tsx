/** Tables that the scenario names and a question reads: those that the letter carries, and those it asks for. */
import { useState } from 'preact/hooks';
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';

const LARGEST = 1_000_000;

export function Tables({ names }: { readonly names: readonly string[] }) {
  const { state, actions } = usePage();
  const [wrong, setWrong] = useState<string | null>(null);
  const say = english.fillIn;
  const take = async (name: string, file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setWrong(file.size > LARGEST ? say.tooLarge : null);
    if (file.size <= LARGEST) actions.lay(name, await file.text());
  };
  return names.length === 0 ? null : (
    <div class="boxes">
      {[...new Set(names)].map((name) => {
        const id = `table-${name}`;
        return (
          <div class="box" key={name}>
            <label for={id}>{say.table(name)}</label>
            <input
              id={id}
              type="file"
              accept=".csv"
              aria-describedby={`${id}-hint`}
              onChange={(event) => void take(name, event.currentTarget.files?.[0])}
            />
            <small id={`${id}-hint`} class="hint">
              {name in state.beside ? say.tableThere : say.tableMissing}
            </small>
          </div>
        );
      })}
      {wrong === null ? null : (
        <p role="alert" class="wrong">
          {wrong}
        </p>
      )}
    </div>
  );
}

/** Two saved letters side by side; one alone is held against the letter on show. */
import * as english from '../../tell/english.js';
import { useState } from 'preact/hooks';
import { formatsFor } from '../../tell/format.js';
import { usePage } from '../context.js';
import { settledOf } from '../store.js';
import {
  answersBeside,
  differentInputs,
  scenarioIn,
  type DifferentRow,
  type LetterRead,
} from '../two-letters.js';

/** A letter is half of this. */
const LARGEST = 4_000_000;

export function Beside() {
  const { state, store, actions } = usePage();
  const [pair, setPair] = useState<readonly [LetterRead, LetterRead] | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const say = english.page;
  const read = async (file: File): Promise<LetterRead | null> => {
    const scenario = file.size > LARGEST ? null : scenarioIn(await file.text());
    const found = scenario === null ? null : await actions.read(scenario);
    return found === null ? null : { ...found, name: file.name };
  };
  const take = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    setPair(null);
    const settled = settledOf(store.state);
    const here = settled === null ? [] : [{ ...settled, name: say.besideHere }];
    const found: (LetterRead | null)[] = files.length === 1 ? [...here] : [];
    for (const file of files.slice(0, 2)) found.push(await read(file));
    const [one, other] = found;
    setWrong(one && other ? null : say.besideNone);
    if (one && other) setPair([one, other]);
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    void take([...(event.dataTransfer?.files ?? [])]);
  };
  return (
    <div class="beside-letters" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
      <div class="box">
        <label for="beside-letters">{say.besideLabel}</label>
        <input
          id="beside-letters"
          type="file"
          accept=".html"
          multiple
          aria-describedby="beside-wrong"
          onChange={(event) => void take([...(event.currentTarget.files ?? [])])}
        />
        <p class="wrong" id="beside-wrong" role="alert">
          {wrong}
        </p>
      </div>
      {pair === null ? null : <Pair pair={pair} look={state.look} />}
    </div>
  );
}

function Pair({
  pair: [one, other],
  look,
}: {
  readonly pair: readonly [LetterRead, LetterRead];
  readonly look: Parameters<typeof differentInputs>[2];
}) {
  const say = english.page;
  const formats = [one, other].map(({ view }) =>
    formatsFor({ ...view, locale: look.locale ?? view.locale }),
  );
  const inputs = differentInputs(one, other, look);
  const names = [one.name, other.name] as const;
  return (
    <div role="status">
      <Rows
        caption={say.besideAnswers}
        names={names}
        rows={answersBeside(one, other, [formats[0]!, formats[1]!])}
      />
      {inputs.length === 0 ? (
        <p>{say.besideSame}</p>
      ) : (
        <Rows caption={say.besideInputs} names={names} rows={inputs} />
      )}
    </div>
  );
}

function Rows({
  caption,
  names,
  rows,
}: {
  readonly caption: string;
  readonly names: readonly [string, string];
  readonly rows: readonly DifferentRow[];
}) {
  return (
    <div class="scroll" role="group" tabIndex={0} aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <td />
            {names.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, one, other }) => (
            <tr key={label} class={one === other ? undefined : 'differs'}>
              <th scope="row">
                <bdi>{label}</bdi>
              </th>
              <td>{one}</td>
              <td>{other}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

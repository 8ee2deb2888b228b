/**
 * The blank letter: begin with a few answers, or with an example. Once it is written the questions stay at hand, folded,
 * with what was answered: another answer writes the letter anew, and undo brings back what stood before.
 */
import * as english from '../../tell/english.js';
import { useRef, useState } from 'preact/hooks';
import { starter } from '../../scenario/starter.js';
import { starterDrinks } from '../../scenario/starter-drinks.js';
import { questionKeys, questions, type QuestionKey } from '../../scenario/starter-questions.js';
import { readAll } from '../../scenario/starter-reading.js';
import { usePage } from '../context.js';
import { HousePicture } from './house-picture.js';

/** With so much help that it would make a tall column of a narrow box. */
const BROAD: readonly QuestionKey[] = ['shape', 'menu'];

type Given = Readonly<Partial<Record<QuestionKey, string>>>;

export function Start() {
  const { state, actions } = usePage();
  const say = english.page;
  const [given, setGiven] = useState<Given>({});
  const [asked, setAsked] = useState(false);
  const boxes = useRef<HTMLFormElement>(null);
  if (state.given.scenario !== null) return null;
  const { texts, wrong, answers } = readAll(given);
  /** The answer is written at the top, and there the reader is to be. */
  const begin = (text: string, fileName: string): void => {
    actions.replace(text, fileName);
    window.scrollTo({ top: 0 });
  };
  const write = (): void => {
    setAsked(true);
    if (answers !== null) return begin(starter(answers), 'cafe.yaml');
    const first = questionKeys.find((key) => wrong[key] !== undefined);
    boxes.current?.querySelector<HTMLElement>(`#start-${first}`)?.focus();
  };
  const form = (
    <>
      <form
        ref={boxes}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <div class="boxes begin">
          {questionKeys.map((key) => (
            <Box
              key={key}
              name={key}
              value={texts[key]}
              wrong={asked || given[key] !== undefined ? wrong[key] : undefined}
              onInput={(text) => setGiven({ ...given, [key]: text })}
            />
          ))}
        </div>
        <p class="row">
          <button type="submit">{say.startButton}</button>
          {Object.keys(given).length === 0 ? null : (
            <button
              type="button"
              onClick={() => {
                setGiven({});
                setAsked(false);
              }}
            >
              {say.startOver}
            </button>
          )}
        </p>
      </form>
      <h3>{say.startWith}</h3>
      <div class="houses">
        {state.given.templates.map(({ fileName, name, text, glance }) => (
          <button key={fileName} type="button" onClick={() => begin(text, fileName)}>
            <bdi>{name}</bdi>
            {glance === null ? null : <HousePicture glance={glance} />}
          </button>
        ))}
      </div>
    </>
  );
  return state.view === null ? (
    <section>
      <h2>{say.startHead}</h2>
      {form}
    </section>
  ) : (
    <details id="begin-again">
      <summary>{say.startAgain}</summary>
      <p>{say.startAgainMeans}</p>
      {form}
    </details>
  );
}

/** One question: choices where there is nothing else, else a text as a person types it. */
function Box({
  name,
  value,
  wrong,
  onInput,
}: {
  readonly name: QuestionKey;
  readonly value: string;
  readonly wrong: string | undefined;
  readonly onInput: (text: string) => void;
}) {
  const { ask, help, choices } = questions[name];
  const id = `start-${name}`;
  const shared = {
    id,
    value,
    'aria-describedby': [help === '' ? '' : `${id}-help`, wrong === undefined ? '' : `${id}-wrong`]
      .filter((one) => one !== '')
      .join(' '),
    'aria-invalid': wrong !== undefined,
  };
  return (
    <div class={BROAD.includes(name) ? 'box broad' : 'box'}>
      <label for={id}>{ask}</label>
      {choices === undefined ? (
        <input {...shared} type="text" onInput={(event) => onInput(event.currentTarget.value)} />
      ) : (
        <select {...shared} onChange={(event) => onInput(event.currentTarget.value)}>
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      )}
      {help !== '' && (
        <small id={`${id}-help`} class="hint">
          {name === 'menu'
            ? `${help} Known: ${starterDrinks.map((drink) => drink.name.toLowerCase()).join(', ')}.`
            : choices === undefined
              ? help
              : aboutChoices(help)}
        </small>
      )}
      {wrong !== undefined && (
        <p id={`${id}-wrong`} class="wrong">
          “{value}” {wrong}.
        </p>
      )}
    </div>
  );
}

/** A terminal's choices go by number; here they are chosen, so that neither numbers nor how to type them are of use. */
const aboutChoices = (help: string): string =>
  help
    .split('\n')
    .filter((line) => !line.startsWith('With a number'))
    .map((line) => line.replace(/^\d /, ''))
    .join('\n');

/** The blank letter: begin with an example, or with a few answers. */
import { useState } from 'preact/hooks';
import { starter, starterDrinks } from '../../scenario/starter.js';
import { usePage } from '../context.js';

type Answers = Readonly<
  Record<'name' | 'seats' | 'guests' | 'from' | 'to' | 'stay' | 'currency' | 'staffHour', string>
>;

const USUAL: Answers = {
  name: '',
  seats: '30',
  guests: '50',
  from: '07:00',
  to: '11:00',
  stay: '50',
  currency: 'EUR',
  staffHour: '20',
};
const USUAL_MENU = ['flat-white', 'cappuccino', 'black-coffee', 'tea'];
const QUESTIONS: readonly {
  readonly key: keyof Answers;
  readonly type: 'text' | 'number';
  readonly after?: string;
}[] = [
  { key: 'name', type: 'text' },
  { key: 'seats', type: 'number' },
  { key: 'guests', type: 'number' },
  { key: 'from', type: 'text' },
  { key: 'to', type: 'text' },
  { key: 'stay', type: 'number', after: '%' },
  { key: 'currency', type: 'text' },
  { key: 'staffHour', type: 'text' },
];

export function Start() {
  const { state, words, actions } = usePage();
  const say = words.page;
  const [answers, setAnswers] = useState<Answers>(USUAL);
  const [menu, setMenu] = useState<readonly string[]>(USUAL_MENU);
  if (state.given.scenario !== null || state.view !== null) return null;
  const write = (): void => {
    const { seats, guests, stay, ...rest } = answers;
    const text = starter({
      ...rest,
      name: answers.name.trim() === '' ? say.startName : answers.name,
      seats: Number(seats),
      guestsPeakHour: Number(guests),
      staysIn: Number(stay) / 100,
      menu,
    });
    actions.replace(text, 'cafe.yaml');
  };
  return (
    <section>
      <h2>{say.startHead}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <div class="boxes">
          {QUESTIONS.map(({ key, type, after }) => (
            <div class="box" key={key}>
              <label for={`start-${key}`}>
                {say.start[key]}
                {after === undefined ? '' : ` (${after})`}
              </label>
              <input
                id={`start-${key}`}
                type={type as 'text'}
                min="0"
                value={answers[key]}
                onInput={(event) => setAnswers({ ...answers, [key]: event.currentTarget.value })}
              />
            </div>
          ))}
        </div>
        <fieldset class="choices">
          <legend>{say.start.menu}</legend>
          {starterDrinks.map((drink) => (
            <label key={drink}>
              <input
                type="checkbox"
                checked={menu.includes(drink)}
                onChange={(event) =>
                  setMenu(
                    event.currentTarget.checked
                      ? [...menu, drink]
                      : menu.filter((one) => one !== drink),
                  )
                }
              />{' '}
              {say.startDrinks[drink] ?? drink}
            </label>
          ))}
        </fieldset>
        <p>
          <button type="submit" disabled={menu.length === 0}>
            {say.startButton}
          </button>
        </p>
      </form>
      <h3>{say.startWith}</h3>
      <div class="row">
        {state.given.templates.map(({ fileName, name, text }) => (
          <button key={fileName} type="button" onClick={() => actions.replace(text, fileName)}>
            <bdi>{name}</bdi>
          </button>
        ))}
      </div>
    </section>
  );
}

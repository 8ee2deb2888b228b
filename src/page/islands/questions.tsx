/** What else can be asked of the letter: each is worked out when it is unfolded. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { fillElement } from '../letter.js';
import type { Question, Reply, View } from '../messages.js';

const QUESTIONS: readonly {
  readonly question: Exclude<Question, 'cards'>;
  readonly asked: (view: View) => boolean;
}[] = [
  { question: 'alternatives', asked: () => true },
  { question: 'map', asked: ({ machines }) => machines !== null },
  { question: 'moves', asked: () => true },
  { question: 'racks', asked: () => true },
  { question: 'suit', asked: ({ has }) => has.suit },
  { question: 'order', asked: () => true },
  { question: 'guide', asked: () => true },
];

/** What a question can be asked with in the page, by the names of its settings. */
const BOXES: Partial<Record<Question, readonly ('seats' | 'takeaway')[]>> = {
  guide: ['seats', 'takeaway'],
};

export function Questions() {
  const { state, words } = usePage();
  const { view } = state;
  if (view === null) return null;
  return (
    <section>
      <h2>{words.page.questionsHead}</h2>
      <div class="asks">
        {QUESTIONS.filter(({ asked }) => asked(view)).map(({ question }) => (
          <Asked key={question} question={question} />
        ))}
      </div>
    </section>
  );
}

function Asked({ question }: { readonly question: Exclude<Question, 'cards'> }) {
  const { words, actions, formats } = usePage();
  const [open, setOpen] = useState(false);
  const [days, setDays] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [asked, setAsked] = useState(typed);
  const boxes = BOXES[question] ?? [];
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    setDays(0);
    const onReply = (reply: Reply): void => {
      if (reply.kind === 'progress') setDays((before) => (before ?? 0) + reply.days);
      const said =
        reply.kind === 'fault'
          ? reply.message
          : reply.kind === 'mistakes'
            ? reply.mistakes.map(({ message }) => message).join('; ')
            : null;
      if (said !== null) {
        setFault(said);
        setDays(null);
      }
      if (reply.kind === 'section' && place.current !== null) {
        fillElement(place.current, reply.html);
        setDays(null);
        setFault(null);
      }
    };
    actions.openQuestion(question, onReply, asked);
    return () => actions.closeQuestion(question);
  }, [open, asked]);
  return (
    <details
      class="ask"
      id={`ask-${question}`}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{words.page.ask[question]}</summary>
      {boxes.length === 0 ? null : (
        <form
          class="boxes"
          onSubmit={(event) => {
            event.preventDefault();
            setAsked(typed);
          }}
        >
          {boxes.map((name) => (
            <div class="box" key={name}>
              <label for={`ask-${question}-${name}`}>{words.page.askWith[name]}</label>
              <input
                id={`ask-${question}-${name}`}
                type="text"
                value={typed[name] ?? ''}
                onInput={({ currentTarget: { value } }) => setTyped({ ...typed, [name]: value })}
              />
            </div>
          ))}
          <button type="submit">{words.page.askAgain}</button>
        </form>
      )}
      <p role="status" class="small">
        {open && days !== null ? words.page.workingDays(formats.count(days)) : ''}
      </p>
      {fault === null ? null : (
        <p role="alert" class="wrong">
          {fault}
        </p>
      )}
      <div ref={place} />
    </details>
  );
}

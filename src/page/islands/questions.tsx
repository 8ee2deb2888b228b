/** What else can be asked of the letter: each is worked out when it is unfolded. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { fillElement } from '../letter.js';
import type { Reply, ViewOffer } from '../messages.js';

export function Questions() {
  const { state, words } = usePage();
  const { view } = state;
  if (view === null) return null;
  return (
    <section>
      <h2>{words.page.questionsHead}</h2>
      <div class="asks">
        {view.offers.map(({ title, ...offer }) =>
          title === null ? null : <Asked key={offer.id} title={title} {...offer} />,
        )}
      </div>
    </section>
  );
}

function Asked({ id, title, boxes }: ViewOffer) {
  const { words, actions, formats } = usePage();
  const [open, setOpen] = useState(false);
  const [days, setDays] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [asked, setAsked] = useState(typed);
  const labels = Object.entries(boxes);
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
    actions.openQuestion(id, onReply, asked);
    return () => actions.closeQuestion(id);
  }, [open, asked]);
  return (
    <details class="ask" id={`ask-${id}`} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {labels.length === 0 ? null : (
        <form
          class="boxes"
          onSubmit={(event) => {
            event.preventDefault();
            setAsked(typed);
          }}
        >
          {labels.map(([name, label]) => (
            <div class="box" key={name}>
              <label for={`ask-${id}-${name}`}>{label}</label>
              <input
                id={`ask-${id}-${name}`}
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

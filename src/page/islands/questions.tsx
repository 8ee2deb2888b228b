/** What else can be asked of the letter: each is worked out when it is unfolded. */
import * as english from '../../tell/english.js';
import { useEffect, useRef, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { fillElement } from '../letter.js';
import { stemOf } from '../file-name.js';
import type { OutFile } from '../../questions/question.js';
import type { Reply, ViewOffer } from '../messages.js';
import { save } from '../saving.js';
import { begun, further, type Wait } from '../wait.js';
import { Waiting } from '../forms/waiting.js';
import { FillInSheet } from './fill-in.js';
import { Tables } from './tables.js';

export function Questions() {
  const { state } = usePage();
  const { view } = state;
  if (view === null) return null;
  return (
    <section>
      <h2>{english.page.questionsHead}</h2>
      <div class="asks">
        {view.offers.map((offer) =>
          offer.title === null ? null : offer.fillIn ? (
            <FillInSheet key={offer.id} offer={offer.id} title={offer.title} />
          ) : (
            <Asked key={offer.id} {...offer} />
          ),
        )}
      </div>
    </section>
  );
}

function Asked({ id, title, boxes, tables }: ViewOffer) {
  const { state, actions } = usePage();
  const [open, setOpen] = useState(false);
  const [wait, setWait] = useState<Wait | null>(null);
  const [figures, setFigures] = useState<OutFile | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [stale, setStale] = useState(false);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [asked, setAsked] = useState(typed);
  const labels = Object.entries(boxes);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    setWait(begun());
    setStale(true);
    const onReply = (reply: Reply): void => {
      if (reply.kind === 'progress') setWait((before) => further(before ?? begun(), reply));
      if (reply.kind === 'anew') {
        setWait(begun());
        setStale(true);
      }
      const said =
        reply.kind === 'fault'
          ? reply.message
          : reply.kind === 'mistakes'
            ? reply.mistakes.map(({ message }) => message).join('; ')
            : null;
      if (said !== null) {
        setFault(said);
        setWait(null);
      }
      if (place.current === null) return;
      if (reply.kind === 'interim' || reply.kind === 'section') setStale(false);
      if (reply.kind === 'interim') fillElement(place.current, reply.html);
      if (reply.kind === 'section') {
        fillElement(place.current, reply.html);
        setFigures(reply.figures ?? null);
        setWait(null);
        setFault(null);
      }
    };
    actions.openQuestion({ offer: id, typed: asked }, onReply);
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
          <button type="submit">{english.page.askAgain}</button>
        </form>
      )}
      <Tables names={tables} />
      <Waiting
        wait={open ? wait : null}
        onCancel={() => place.current?.closest('details')?.removeAttribute('open')}
      />
      {fault === null ? null : (
        <p role="alert" class="wrong">
          {fault}
        </p>
      )}
      <div ref={place} data-stale={stale ? '' : undefined} />
      {figures === null || wait !== null || stale ? null : (
        <p>
          <button
            type="button"
            onClick={() =>
              save(
                `${stemOf(state.view?.name ?? '')}.${figures.ending}`,
                'text/csv',
                figures.content,
              )
            }
          >
            {english.page.tableCsv}
          </button>
        </p>
      )}
    </details>
  );
}

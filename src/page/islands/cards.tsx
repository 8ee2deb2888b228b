/** The trainer's cards: shown, and printed a page each. */
import * as english from '../../tell/english.js';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { fill, markStale } from '../letter.js';

export function Cards() {
  const { state, actions, formats } = usePage();
  const { view, reader } = state;
  const say = english.page;
  const offer = view?.offers.find(({ title }) => title === null)?.id;
  const [open, setOpen] = useState(false);
  const [paper, setPaper] = useState<'a4' | 'letter'>('a4');
  const [days, setDays] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    if (reader === 'trainer') setOpen(true);
  }, [reader]);
  useEffect(() => {
    if (!open) return fill('cards', '');
    setDays(0);
    if (offer === undefined) return;
    actions.openQuestion({ offer, typed: {} }, (reply) => {
      if (reply.kind === 'progress') setDays((before) => (before ?? 0) + reply.days);
      if (reply.kind === 'anew') {
        setDays(0);
        markStale('cards', true);
      }
      if (reply.kind === 'fault') {
        setFault(reply.message);
        setDays(null);
      }
      if (reply.kind === 'section') {
        fill('cards', reply.html);
        markStale('cards', false);
        setDays(null);
        setFault(null);
      }
    });
    return () => actions.closeQuestion(offer);
  }, [open, offer]);
  // At once: a reader may print in the next moment.
  useLayoutEffect(() => {
    document.body.dataset['paper'] = paper;
  }, [paper]);
  /** The cards alone: a mark on the body says that they are what is printed. */
  const print = (): void => {
    document.body.dataset['print'] = 'cards';
    window.print();
    delete document.body.dataset['print'];
  };
  if (view === null) return null;
  return (
    <section>
      <h2>{say.cardsHead}</h2>
      <p>{say.cardsIntro}</p>
      <div class="row">
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? say.cardsHide : say.cardsShow}
        </button>
        <label for="paper">{say.paper}</label>
        <select
          id="paper"
          value={paper}
          onChange={(event) => setPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
        >
          <option value="a4">{say.papers.a4}</option>
          <option value="letter">{say.papers.letter}</option>
        </select>
        <button type="button" disabled={!open || days !== null} onClick={print}>
          {say.cardsPrint}
        </button>
      </div>
      <p role="status" class="unseen">
        {open && days !== null ? say.working : ''}
      </p>
      <p class="small">
        {open && days !== null ? say.workingDays(formats.count(days), null, null) : ''}
      </p>
      {fault === null ? null : (
        <p role="alert" class="wrong">
          {fault}
        </p>
      )}
    </section>
  );
}

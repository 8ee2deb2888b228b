/**
 * A sheet as a form: people type counts, or drop the filled file, and read it. Nothing of the scenario changes while it has
 * mistakes; those stand at their boxes. What it comes to goes into the scenario like any other change.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import { filledFile, headKey, type FillIn, type FilledFile } from '../../questions/fill-in.js';
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { stemOf } from '../file-name.js';
import { FillInTable } from '../forms/fill-in-part.js';
import { Waiting } from '../forms/waiting.js';
import { fillElement } from '../letter.js';
import type { Mistake, Reply } from '../messages.js';
import { save } from '../saving.js';
import { begun, further, type Wait } from '../wait.js';

const LARGEST = 1_000_000;
const NAME = 'sheet.csv';
const KEEP_AFTER_MS = 400;

export function FillInSheet({ offer, title }: { readonly offer: string; readonly title: string }) {
  const { state, store, actions, formats } = usePage();
  const say = english.fillIn;
  const [open, setOpen] = useState(false);
  // Counts that were kept are shown where they were typed.
  const isKept = state.counts?.offer === offer;
  const [form, setForm] = useState<FillIn | null>(null);
  const [more, setMore] = useState<Readonly<Record<string, number>>>({});
  const [mistakes, setMistakes] = useState<readonly Mistake[]>([]);
  const [places, setPlaces] = useState<FilledFile['places']>(new Map());
  const [note, setNote] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [wait, setWait] = useState<Wait | null>(null);
  const typed = useRef<Record<string, string>>({});
  const timer = useRef(0);
  /** Counts are kept a while after the last was typed, as each keeping draws the page. */
  const keepCounts = (): void => {
    clearTimeout(timer.current);
    if (Object.keys(typed.current).length > 0)
      store.set({ counts: { offer, typed: { ...typed.current }, more } });
  };
  const keepSoon = (): void => {
    clearTimeout(timer.current);
    timer.current = window.setTimeout(keepCounts, KEEP_AFTER_MS);
  };
  const forgetCounts = (): void => {
    clearTimeout(timer.current);
    if (store.state.counts !== null) store.set({ counts: null });
  };
  const place = useRef<HTMLDivElement>(null);
  const whole = useRef<HTMLDetailsElement>(null);

  /** What any answer may be besides the one hoped for. */
  const isAmiss = (reply: Reply, at: FilledFile['places']): boolean => {
    if (reply.kind === 'fault') setFault(reply.message);
    if (reply.kind === 'mistakes') {
      setPlaces(at);
      setMistakes(reply.mistakes);
      setFault(say.wrong(formats.count(reply.mistakes.length), reply.mistakes.length === 1));
    }
    return reply.kind === 'fault' || reply.kind === 'mistakes';
  };
  const show = (table?: { name: string; bytes: Uint8Array }): void =>
    actions.askNow({ offer, typed: {}, table, fill: table !== undefined }, (reply) => {
      if (isAmiss(reply, new Map()) || reply.kind !== 'section') return;
      const { counts } = store.state;
      const kept = table === undefined && counts?.offer === offer ? counts : null;
      typed.current = { ...kept?.typed };
      if (kept === null) forgetCounts();
      setForm(reply.form ?? null);
      setMore(kept?.more ?? {});
      setMistakes([]);
      setFault(null);
      setNote(table === undefined ? null : say.taken(table.name));
    });
  useEffect(() => {
    if (open && form === null) show();
  }, [open]);
  useEffect(() => {
    if (isKept && form === null && whole.current !== null) whole.current.open = true;
  }, [isKept]);
  useEffect(() => {
    whole.current?.querySelector<HTMLElement>('[aria-invalid=true]')?.focus();
  }, [mistakes]);

  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    if (file.size > LARGEST) return setFault(say.tooLarge);
    show({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  };
  const read = (): void => {
    if (form === null) return;
    const { text, places: at, filled } = filledFile(form, typed.current, more);
    setMistakes([]);
    setFault(filled === 0 ? say.nothing : null);
    setNote(null);
    if (filled === 0) return;
    setWait(begun());
    const table = { name: NAME, bytes: new TextEncoder().encode(text) };
    actions.askOnce({ offer, typed: {}, table }, (reply) => {
      if (reply.kind === 'anew') return setWait(begun());
      if (reply.kind === 'progress') return setWait((before) => further(before ?? begun(), reply));
      setWait(null);
      if (isAmiss(reply, at) || reply.kind !== 'section' || place.current === null) return;
      fillElement(place.current, reply.html);
      forgetCounts();
      actions.edit('sheet', reply.edits ?? []);
    });
  };
  /** Mistakes by part and row; those that stand nowhere in the boxes have the line of the file. */
  const atRows = (part: string): Map<number, Mistake[]> => {
    const rows = new Map<number, Mistake[]>();
    for (const one of mistakes) {
      const at = places.get(one.line);
      if (at !== undefined && 'part' in at && at.part === part)
        rows.set(at.row, [...(rows.get(at.row) ?? []), one]);
    }
    return rows;
  };
  const elsewhere = mistakes.filter(({ line, path }) => {
    const at = places.get(line);
    return at === undefined || ('head' in at && at.head !== path);
  });
  return (
    <details
      ref={whole}
      class="ask"
      id={`ask-${offer}`}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{title}</summary>
      {form === null ? null : (
        <form
          noValidate
          onInput={keepSoon}
          onChange={keepCounts}
          onSubmit={(event) => {
            event.preventDefault();
            read();
          }}
        >
          <div
            class="box"
            onDragOver={(event) => event.preventDefault()}
            onDrop={(event) => {
              event.preventDefault();
              void take(event.dataTransfer?.files[0]);
            }}
          >
            <label for={`${offer}-file`}>{say.file}</label>
            <input
              id={`${offer}-file`}
              type="file"
              accept=".csv,.xlsx"
              onChange={(event) => void take(event.currentTarget.files?.[0])}
            />
          </div>
          {form.head.map(({ name, value, label }) => {
            const id = `${offer}-${name}`;
            const wrong = mistakes.find(
              ({ line, path }) => path === name && 'head' in (places.get(line) ?? {}),
            );
            return label === null ? null : (
              <div class="box" key={name}>
                <label for={id}>{label}</label>
                <input
                  id={id}
                  type="date"
                  aria-invalid={wrong !== undefined}
                  aria-describedby={`${id}-problem`}
                  value={typed.current[headKey(name)] ?? value}
                  onInput={(event) => (typed.current[headKey(name)] = event.currentTarget.value)}
                />
                <p id={`${id}-problem`} class="wrong">
                  {wrong?.message}
                </p>
              </div>
            );
          })}
          {form.parts.map((part, at) => (
            <FillInTable
              key={part.id}
              part={part}
              open={
                at === 0 || Object.keys(typed.current).some((key) => key.startsWith(`${part.id}/`))
              }
              more={more[part.id] ?? 0}
              typed={typed.current}
              mistakes={atRows(part.id)}
              onMore={() => setMore({ ...more, [part.id]: (more[part.id] ?? 0) + 1 })}
            />
          ))}
          <div class="row">
            <button type="submit" disabled={wait !== null}>
              {say.read}
            </button>
            <button
              type="button"
              onClick={() =>
                save(
                  `${stemOf(state.view?.name ?? '')}.${say.saveFile}`,
                  'text/csv',
                  filledFile(form, typed.current, more, true).text,
                )
              }
            >
              {say.save}
            </button>
          </div>
        </form>
      )}
      <Waiting
        wait={wait}
        onCancel={() => {
          actions.closeQuestion(offer);
          setWait(null);
        }}
      />
      <p role="status" class="small">
        {note}
      </p>
      <div role="alert" class="wrong">
        {fault}
        <ul>
          {elsewhere.map(({ line, path, message }) => (
            <li key={`${line} ${path} ${message}`}>
              {[say.line(formats.count(line)), path, message]
                .filter((one) => one !== '')
                .join(': ')}
            </li>
          ))}
        </ul>
      </div>
      <div ref={place} />
    </details>
  );
}

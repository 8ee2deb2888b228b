/** The page: the letter wakes up. What it needs is in the document; nothing is fetched. */
import { render, type ComponentType } from 'preact';
import type { Given } from '../letter/live.js';
import { Actions } from './actions.js';
import { PageContext, type Page } from './context.js';
import { startEngines } from './engines.js';
import { Boxes } from './islands/boxes.js';
import { Cards } from './islands/cards.js';
import { Changed } from './islands/changed.js';
import { Files } from './islands/files.js';
import { Forms } from './islands/all-forms.js';
import { Head, Sender } from './islands/head.js';
import { Questions } from './islands/questions.js';
import { Start } from './islands/start.js';
import { Status } from './islands/status.js';
import { WalkThrough } from './islands/walk-through.js';
import { addPictureTools } from './picture-tools.js';
import { keepWork, keptFor } from './keeping.js';
import { markDocument } from './mark-document.js';
import { orderFor } from './reading-order.js';
import { Store, type Reader } from './store.js';

const islands: Readonly<Record<string, ComponentType>> = {
  head: Head,
  sender: Sender,
  start: Start,
  status: Status,
  changed: Changed,
  boxes: Boxes,
  questions: Questions,
  walk: WalkThrough,
  forms: Forms,
  cards: Cards,
  files: Files,
};

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? '';

async function wake(): Promise<void> {
  const given = JSON.parse(textOf('given')) as Given;
  const { scenario, version } = given;
  const { beside = {}, counts = null } = scenario ?? {};
  const store = new Store({
    given,
    fileName: scenario?.fileName ?? 'cafe.yaml',
    text: scenario?.text ?? '',
    options: scenario?.options ?? {},
    look: given.look ?? { units: 'metric', locale: null },
    beside,
    reader: readerOf(location.hash.slice(1)) ?? readerOf(given.reader) ?? 'owner',
    sender: given.sender ?? { name: '', logo: null },
    phase: scenario === null ? 'blank' : 'as-sent',
    untaken: false,
    progress: 0,
    view: null,
    groups: [],
    mistakes: [],
    fault: null,
    answer: scenario?.answer ?? null,
    curves: scenario?.curves ?? [],
    before: null,
    safety: null,
    kept: scenario?.text ?? '',
    keptBeside: beside,
    counts,
    keptCounts: counts,
    restorable: keptFor(scenario?.text ?? ''),
    waiting: false,
  });
  const engines = await startEngines(textOf('engine'), version);
  const page: Page = { store, actions: new Actions(store, engines) };
  const breathe = breathing();
  for (const element of document.querySelectorAll<HTMLElement>('[data-island]')) {
    const Island = islands[element.dataset['island'] ?? ''];
    if (Island === undefined) continue;
    render(
      <PageContext.Provider value={page}>
        <Island />
      </PageContext.Provider>,
      element,
    );
    await breathe();
  }
  for (const part of document.querySelectorAll<HTMLElement>('[data-part]')) {
    addPictureTools(part);
    await breathe();
  }
  orderFor(store.state.reader);
  addEventListener('beforeprint', () => orderFor(store.state.reader, true));
  addEventListener('afterprint', () => orderFor(store.state.reader));
  let { reader } = store.state;
  store.subscribe(() => {
    markDocument(store.state);
    if (store.state.reader !== reader) orderFor((reader = store.state.reader));
  });
  for (const event of ['dragover', 'drop'] as const) addEventListener(event, keepFromLeaving);
  keepWork(store, scenario?.text ?? '');
  markDocument(store.state);
  await page.actions.begin();
  // Who only reads or prints the letter need not wait for work that is of no use to them, nor pay for it in battery.
  onFirstSign(() => page.actions.warmUp());
  document.documentElement.dataset['ready'] = '';
}

/** Work without a pause for longer than this, ms, is felt by a reader who scrolls meanwhile. */
const BREATH_MS = 8;

/** @returns lets the browser draw and the reader act, where it is time */
function breathing(): () => Promise<void> {
  let since = -Infinity;
  return async () => {
    if (performance.now() - since < BREATH_MS) return;
    // A timer would wait for a second in a tab that nobody looks at.
    await new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = resolve;
      port2.postMessage(null);
    });
    since = performance.now();
  };
}

/** A file dropped beside its box would take the page's place. */
function keepFromLeaving(event: DragEvent): void {
  const isFile = event.dataTransfer?.types.includes('Files') === true;
  if (isFile && !(event.target instanceof HTMLInputElement)) event.preventDefault();
}

/** Does it once, when somebody is seen to be there: a pointer moves, a key goes down, a finger touches. */
function onFirstSign(act: () => void): void {
  const signs = ['pointermove', 'pointerdown', 'keydown', 'wheel'] as const;
  const seen = (): void => {
    for (const sign of signs) removeEventListener(sign, seen);
    act();
  };
  for (const sign of signs) addEventListener(sign, seen, { passive: true });
}

/** `letter.html#trainer` opens as the trainer reads it. */
const readerOf = (word: string | undefined): Reader | null =>
  word === 'owner' || word === 'consultant' || word === 'trainer' ? word : null;

wake().catch((error: unknown) => {
  const sentence = document.getElementById('asleep');
  if (sentence !== null) sentence.hidden = false;
  console.error(error);
});

/** What the page asks of its engines as changes follow one another. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Actions } from '../../src/page/actions.js';
import type { Engine } from '../../src/page/engines.js';
import type { Reply, Request } from '../../src/page/messages.js';
import { Store, type PageState } from '../../src/page/store.js';
import type { Edit } from '../../src/scenario/edit.js';

/** An engine that works on what it is asked until it is to stop. */
function slowEngine(): { engine: Engine; asked: Request[]; givenUp(): void } {
  const asked: Request[] = [];
  let open: (() => void)[] = [];
  const givenUp = (): void => open.splice(0).forEach((done) => done());
  return {
    asked,
    givenUp,
    engine: {
      ask(request) {
        if (request.kind === 'stop') return Promise.resolve(givenUp());
        asked.push(request);
        return new Promise((done) => (open = [...open, done]));
      },
    },
  };
}

const setTo = (path: readonly string[], value: unknown): Edit => ({ kind: 'set', path, value });
const seats = setTo(['seats', 'count'], 18);
const makers = setTo(['counter', 'makers'], 3);

describe('a change while the one before is being worked out', () => {
  it('takes along what a run that was given up was to change', async () => {
    const state = { text: 'name: x', fileName: 'x.yaml', options: {}, phase: 'as-sent' };
    const quick = slowEngine();
    const actions = new Actions(new Store(state as unknown as PageState), {
      quick: quick.engine,
      sure: slowEngine().engine,
      widen() {},
    });
    const now = vi.spyOn(performance, 'now').mockReturnValue(0);
    try {
      actions.edit('seats', [seats]);
      // After longer than a reader waits, so that the first run is given up.
      now.mockReturnValue(10_000);
      actions.edit('makers', [makers]);
      await vi.waitFor(() => expect(quick.asked).toHaveLength(2));
      expect(quick.asked[1]).toMatchObject({ kind: 'quick', edits: [[seats], [makers]] });
      // Another file takes the place of both.
      now.mockReturnValue(20_000);
      actions.replace('name: y', 'y.yaml');
      await vi.waitFor(() => expect(quick.asked).toHaveLength(3));
      expect(quick.asked[2]).toMatchObject({ asked: { text: 'name: y' }, edits: [] });
    } finally {
      now.mockRestore();
      quick.givenUp();
    }
  });
});

/** An engine that answers when it is told to. */
function promptedEngine() {
  const open: { request: Request; onReply(reply: Reply): void; done(): void }[] = [];
  const asked: Request[] = [];
  const engine: Engine = {
    ask(request, onReply = () => {}) {
      asked.push(request);
      if (request.kind === 'stop') {
        for (const { done } of open.splice(0)) done();
        return Promise.resolve();
      }
      return new Promise((done) => open.push({ request, onReply, done }));
    },
  };
  /** The oldest ask of a kind says these things; `done`: and is done with. */
  const say = async (kind: Request['kind'], replies: readonly Reply[], done = true) => {
    await vi.waitFor(() => expect(open.some(({ request }) => request.kind === kind)).toBe(true));
    const at = open.findIndex(({ request }) => request.kind === kind);
    for (const reply of replies) open[at]!.onReply(reply);
    if (done) open.splice(at, 1)[0]!.done();
    await Promise.resolve();
  };
  /** Whoever asked last may still be told something, though it was given up. */
  const lastSays = () => {
    const { onReply } = open.at(-1)!;
    return (replies: readonly Reply[]) => replies.forEach(onReply);
  };
  return { engine, asked, say, lastSays };
}

const view = (pieces: number) =>
  ({ ware: [{ id: 'cup', name: 'Cup', pieces }], stockGiven: false }) as never;
const answerOf = (pieces: number) => ({ pieces }) as never;
const text = (value: string): Reply => ({ kind: 'text', text: value, groups: [] });
const figures = (pieces: number, certified: boolean): Reply => ({
  kind: 'answer',
  certified,
  view: view(pieces),
  parts: {},
});
const whole = (pieces: number): Reply => ({
  kind: 'whole',
  parts: {},
  answer: answerOf(pieces),
  curves: [],
});

function page(options: object = { level: 0.9 }) {
  vi.stubGlobal('document', { querySelector: () => null });
  const sent = { text: 'sent', fileName: 'x.yaml', options, answer: answerOf(1), curves: [] };
  const store = new Store({
    ...sent,
    given: { scenario: sent },
    look: { units: 'metric', locale: null },
    phase: 'as-sent',
    untaken: false,
    view: view(1),
    groups: [],
    mistakes: [],
    before: null,
    safety: null,
    progress: 0,
  } as unknown as PageState);
  const [quick, sure] = [promptedEngine(), promptedEngine()];
  const actions = new Actions(store, { quick: quick.engine, sure: sure.engine, widen() {} });
  return { store, quick, sure, actions };
}

describe('undo', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('of a change of level brings back the level that was asked for on the command’s line', async () => {
    const { store, quick, sure, actions } = page();
    actions.edit('seats', [seats], {});
    await quick.say('quick', [figures(2, false), text('changed')]);
    await sure.say('sure', [figures(2, true), whole(2)]);
    expect(store.state).toMatchObject({ options: {}, text: 'changed', phase: 'certified' });
    expect(store.state.before).toMatchObject({ options: { level: 0.9 }, text: 'sent' });
    actions.undo();
    expect(quick.asked.at(-1)).toMatchObject({ kind: 'retell', answer: { pieces: 1 } });
    await quick.say('retell', [figures(1, true), text('sent'), whole(1)]);
    expect(store.state).toMatchObject({ options: { level: 0.9 }, text: 'sent', phase: 'as-sent' });
  });

  it('of a stock of one’s own asks for the stock that is needed again', async () => {
    const { store, quick, actions } = page({});
    actions.tryStock({ cup: 5 });
    await quick.say('quick', [figures(5, false), text('sent')]);
    expect(store.state.options).toEqual({ stock: { cup: 5 } });
    actions.undo();
    expect(store.state.options).toEqual({});
  });

  it('knows the letter as sent by what was asked, not by which object says so', async () => {
    const { store, quick, actions } = page({ level: 0.9, seed: 'a' });
    store.set({ options: { seed: 'a', level: 0.9 } });
    actions.look({ units: 'us' });
    await quick.say('retell', [figures(1, true), text('sent'), whole(1)]);
    expect(store.state.phase).toBe('as-sent');
  });
});

describe('what a change is compared with', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is what stands, also while it is written in other units; that flips back without a day run', async () => {
    const { store, quick, actions } = page();
    actions.look({ units: 'us' });
    actions.look({ units: 'metric' });
    expect(quick.asked.map(({ kind }) => kind)).toEqual(['retell', 'retell']);
    actions.edit('seats', [seats]);
    expect(store.state.before).toMatchObject({ text: 'sent', answer: { pieces: 1 } });
    await quick.say('quick', [figures(2, false), text('changed')]);
    actions.cancel();
    expect(store.state.text).toBe('sent');
  });

  it('is the certified answer on show, also before its pictures are there; undo works that out again', async () => {
    const { store, quick, sure, actions } = page({});
    actions.edit('seats', [seats]);
    await quick.say('quick', [figures(2, false), text('first')]);
    await sure.say('sure', [figures(2, true)], false);
    actions.edit('makers', [makers]);
    expect(store.state.before).toMatchObject({ text: 'first', view: view(2), answer: null });
    await quick.say('quick', [figures(3, false), text('second')]);
    actions.undo();
    await vi.waitFor(() =>
      expect(quick.asked.at(-1)).toMatchObject({
        kind: 'quick',
        asked: { text: 'first' },
        edits: [],
      }),
    );
  });

  it('brings its pictures after all, where a mistake came before them', async () => {
    const { store, quick, sure, actions } = page({});
    actions.edit('seats', [seats]);
    await quick.say('quick', [figures(2, false), text('first')]);
    await sure.say('sure', [figures(2, true)], false);
    actions.edit('makers', [makers]);
    await quick.say('quick', [
      { kind: 'mistakes', mistakes: [{ path: '', line: 1, message: 'no' }] },
    ]);
    await sure.say('sure', [figures(2, true), whole(2)]);
    expect(store.state).toMatchObject({ text: 'first', phase: 'certified', answer: { pieces: 2 } });
  });
});

describe('what is typed while an engine is at work', () => {
  afterEach(() => vi.unstubAllGlobals());
  const more = setTo(['seats', 'count'], 20);
  const said = [figures(2, false), text('changed')];
  const refused: Reply = { kind: 'mistakes', mistakes: [{ path: '', line: 1, message: 'no' }] };

  it('takes the place of what was typed in the same box; other boxes keep theirs, and the older is not listened to', async () => {
    const { store, quick, actions } = page({});
    actions.edit('makers', [makers]);
    await quick.say('quick', said);
    actions.edit('seats', [seats]);
    actions.edit('makers', [makers]);
    const old = quick.lastSays();
    actions.edit('seats', [more]);
    await vi.waitFor(() =>
      expect(quick.asked.at(-1)).toMatchObject({ kind: 'quick', edits: [[makers], [more]] }),
    );
    old([text('too late')]);
    expect(store.state).toMatchObject({ text: 'changed', untaken: true });
    await quick.say('quick', [figures(3, false), text('newest')]);
    expect(store.state).toMatchObject({ text: 'newest', untaken: false });
  });

  it('and taken back leaves the letter as it stood, with nothing more to work out', async () => {
    const { store, quick, actions } = page({});
    actions.edit('seats', [seats]);
    expect(store.state).toMatchObject({ phase: 'working', untaken: true });
    actions.edit('seats', []);
    await vi.waitFor(() =>
      expect(store.state).toMatchObject({ phase: 'as-sent', untaken: false, before: null }),
    );
    expect(store.state).toMatchObject({ text: 'sent', answer: { pieces: 1 } });
    expect(quick.asked.map(({ kind }) => kind)).toEqual(['quick', 'stop']);
  });

  it('and refused with what was given up for it leaves what stood, not a letter that works for ever', async () => {
    const { store, quick, actions } = page({});
    const now = vi.spyOn(performance, 'now').mockReturnValue(0);
    actions.edit('seats', [seats]);
    now.mockReturnValue(10_000);
    actions.edit('makers', [makers]);
    now.mockRestore();
    await vi.waitFor(() => expect(quick.asked).toHaveLength(3));
    await quick.say('quick', [refused]);
    await vi.waitFor(() => expect(store.state).toMatchObject({ phase: 'as-sent', untaken: false }));
  });

  it('and given up does not come back with the next change', async () => {
    const { store, quick, actions } = page({});
    actions.edit('seats', [seats]);
    actions.cancel();
    actions.edit('makers', [makers]);
    await vi.waitFor(() =>
      expect(quick.asked.at(-1)).toMatchObject({ kind: 'quick', edits: [[makers]] }),
    );
    expect(store.state.text).toBe('sent');
  });

  it('is not covered by a certified answer to what stood before', async () => {
    const { store, quick, sure, actions } = page({});
    actions.edit('seats', [seats]);
    await quick.say('quick', said);
    await vi.waitFor(() => expect(sure.asked.at(-1)).toMatchObject({ kind: 'sure' }));
    const old = sure.lastSays();
    actions.edit('makers', [makers]);
    await quick.say('quick', [figures(3, false), text('newest')], false);
    old([figures(2, true), whole(2)]);
    expect(store.state).toMatchObject({ text: 'newest', phase: 'provisional', answer: null });
  });

  it('is in the scenario that is saved meanwhile', async () => {
    const { store, quick, actions } = page({});
    const saved: string[] = [];
    actions.edit('seats', [seats]);
    actions.onceTaken(() => saved.push(store.state.text));
    expect(saved).toEqual([]);
    await quick.say('quick', said);
    expect(saved).toEqual(['changed']);
  });
});

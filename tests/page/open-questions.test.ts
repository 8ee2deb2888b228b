/** Sections that stand open while the house changes: none of a house before is taken for one of the house as it stands. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Actions } from '../../src/page/actions.js';
import type { Engine } from '../../src/page/engines.js';
import type { Reply, Request } from '../../src/page/messages.js';
import { Store, type PageState } from '../../src/page/store.js';

afterEach(() => vi.unstubAllGlobals());

interface Held {
  readonly request: Request;
  say(...replies: Reply[]): void;
  /** It is done with this one. */
  end(): void;
}

/** An engine whose asks stand open until they are ended. */
function heldEngine() {
  const open: Held[] = [];
  const engine: Engine = {
    ask: ({ ...request }, onReply = () => {}) =>
      request.kind === 'stop'
        ? Promise.resolve()
        : new Promise((end) =>
            open.push({ request, say: (...replies) => replies.forEach(onReply), end }),
          ),
  };
  const next = (kind: Request['kind']): Promise<Held> =>
    vi.waitFor(() => {
      const at = open.findIndex(({ request }) => request.kind === kind);
      if (at < 0) throw new Error(`no ${kind} was asked`);
      return open.splice(at, 1)[0]!;
    });
  return { engine, next };
}

const settled = { view: { ware: [], stockGiven: false }, answer: { of: 'sent' } } as never as {
  view: never;
  answer: never;
};
const whole: Reply = { kind: 'whole', parts: {}, answer: { of: 'now' } as never, curves: [] };
const sectionOf = (html: string): Reply => ({ kind: 'section', html });

function page() {
  vi.stubGlobal('document', { querySelector: () => null });
  const sent = { text: 'sent', fileName: 'x.yaml', options: {}, ...settled, curves: [] };
  const store = new Store({
    ...sent,
    given: { scenario: sent },
    look: { units: 'metric', locale: null },
    phase: 'as-sent',
    waiting: false,
    untaken: false,
    groups: [],
    mistakes: [],
    before: null,
    safety: null,
    progress: 0,
  } as unknown as PageState);
  const [quick, sure] = [heldEngine(), heldEngine()];
  const actions = new Actions(store, { quick: quick.engine, sure: sure.engine, widen() {} });
  const heard: string[] = [];
  const ask = (): void =>
    actions.openQuestion({ offer: 'alternatives', typed: {} }, (reply) =>
      heard.push('html' in reply ? reply.html : reply.kind),
    );
  const change = async (text: string, meanwhile = (): void => {}): Promise<void> => {
    actions.replace(text, 'x.yaml');
    meanwhile();
    const run = await quick.next('quick');
    run.say(
      { kind: 'answer', certified: false, view: settled.view, parts: {} },
      { kind: 'text', text, groups: [] },
    );
    run.end();
    const sure_ = await sure.next('sure');
    sure_.say({ kind: 'answer', certified: true, view: settled.view, parts: {} }, whole);
    sure_.end();
  };
  return { store, sure, actions, ask, heard, change };
}

describe('a section that stands open', () => {
  it('begins anew with each house; what is still said of the one before is not listened to', async () => {
    const { sure, ask, heard, change } = page();
    ask();
    const first = await sure.next('question');
    first.say({ kind: 'progress', days: 900 });
    expect(heard).toEqual(['anew', 'progress']);
    await change('other', () => {
      first.say(sectionOf('of before'), { kind: 'progress', days: 100 });
      first.end();
      expect(heard).toEqual(['anew', 'progress', 'anew']);
    });
    const second = await sure.next('question');
    // What is known of the house goes along, so that it is not worked out again.
    expect(first.request).toMatchObject({ asked: { text: 'sent' }, answer: { of: 'sent' } });
    expect(second.request).toMatchObject({ asked: { text: 'other' }, answer: { of: 'now' } });
    second.say(sectionOf('of now'));
    expect(heard.filter((one) => one !== 'anew')).toEqual(['progress', 'of now']);
  });

  it('is waited for by what is printed, not by what is saved', async () => {
    const { store, sure, actions, ask, change } = page();
    const done: string[] = [];
    const print = (): void => actions.onceCertified(() => done.push('printed'), true);
    print();
    ask();
    const first = await sure.next('question');
    print();
    expect(done).toEqual(['printed']);
    actions.onceCertified(() => done.push('saved'));
    expect(done).toEqual(['printed', 'saved']);
    expect(store.state.waiting).toBe(true);
    first.say(sectionOf('of before'));
    first.end();
    await vi.waitFor(() => expect(done).toEqual(['printed', 'saved', 'printed']));
    expect(store.state.waiting).toBe(false);

    // After a change it is the section of the new house that is waited for; what is folded is not.
    await change('other');
    print();
    const second = await sure.next('question');
    expect(done).toHaveLength(3);
    actions.closeQuestion('alternatives');
    expect(done).toHaveLength(4);
    second.end();
  });

  it('and what was to be saved, are given up with a change that is cancelled', async () => {
    const { store, actions } = page();
    const done: string[] = [];
    actions.replace('other', 'x.yaml');
    await vi.waitFor(() => expect(store.state.phase).toBe('working'));
    actions.onceCertified(() => done.push('saved'));
    actions.cancel();
    expect(store.state.waiting).toBe(false);
    expect(done).toEqual([]);
  });
});

/** What the page asks of its engines as changes follow one another. */
import { describe, expect, it, vi } from 'vitest';
import { Actions } from '../../src/page/actions.js';
import type { Engine } from '../../src/page/engines.js';
import type { Request } from '../../src/page/messages.js';
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
      actions.edit([seats]);
      // After longer than a reader waits, so that the first run is given up.
      now.mockReturnValue(10_000);
      actions.edit([makers]);
      await vi.waitFor(() => expect(quick.asked).toHaveLength(2));
      expect(quick.asked[1]).toMatchObject({ kind: 'quick', edits: [seats, makers] });
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

import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Reply } from '../../src/page/messages.js';
import { Store, type PageState } from '../../src/page/store.js';
import { takeReply } from '../../src/page/take-reply.js';

beforeEach(() => void vi.stubGlobal('document', { querySelector: () => null }));
afterEach(() => void vi.unstubAllGlobals());

const mistakes = [{ path: 'counter.makers', line: 3, message: 'is no number' }];
const answer = (certified: boolean): Reply =>
  ({ kind: 'answer', certified, view: {}, parts: {} }) as unknown as Reply;

it('keeps what was typed wrong in sight while the answer before it is certified', () => {
  const store = new Store({ mistakes: [], progress: 0 } as unknown as PageState);
  takeReply(store, { kind: 'mistakes', mistakes });
  takeReply(store, answer(true));
  expect(store.state.mistakes).toEqual(mistakes);
  // A quick answer is of what was typed since.
  takeReply(store, answer(false));
  expect(store.state.mistakes).toEqual([]);
});

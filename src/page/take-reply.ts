/** What an engine says, taken into the letter and its state. */
import type { LetterPart } from '../letter/letter.js';
import { fill, markOlder } from './letter.js';
import type { Reply } from './messages.js';
import type { Store } from './store.js';

/** Parts that only the certified answer brings. */
const UNTIL_CERTIFIED = ['pictures', 'findings'] as const;

function fillAll(parts: Readonly<Partial<Record<LetterPart, string>>>): void {
  for (const [part, html] of Object.entries(parts)) fill(part as LetterPart, html);
}

export function takeReply(store: Store, reply: Reply): void {
  switch (reply.kind) {
    case 'mistakes':
      return store.set({ mistakes: reply.mistakes });
    case 'fault':
      return store.set({ fault: reply.message });
    case 'text':
      return store.set({ text: reply.text, groups: reply.groups });
    case 'view':
      return store.set({ view: reply.view });
    case 'safety':
      return store.set({ safety: reply.share });
    case 'progress':
      return store.set({ progress: store.state.progress + reply.days });
    case 'parts':
      return fillAll(reply.parts);
    case 'answer':
      fillAll(reply.parts);
      markOlder(UNTIL_CERTIFIED, true);
      return store.set({
        phase: reply.certified ? 'certified' : 'provisional',
        view: reply.view,
        // A certified answer is of what stood before a mistake was typed: it puts nothing right.
        mistakes: reply.certified ? store.state.mistakes : [],
        fault: null,
        progress: 0,
        answer: null,
      });
    case 'whole':
      fillAll(reply.parts);
      markOlder(UNTIL_CERTIFIED, false);
      return store.set({ answer: reply.answer, curves: reply.curves });
    default:
  }
}

/**
 * Changes that were sent and not taken. They are sent again with the next one, as some only hold
 * together: shares of a menu add up after the last of them, a ware goes once no drink names it.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Edit } from '../../scenario/edit.js';
import type { FormGroup } from '../../scenario/input-forms.js';
import { dotted } from '../../scenario/path.js';
import type { FormProblem } from './problems.js';

/** By box: its latest change. */
export type Changes = ReadonlyMap<string, Edit>;

/** A box's change put in, last in order; null takes it out. */
export function withChange(changes: Changes, box: string, edit: Edit | null): Changes {
  const next = new Map(changes);
  next.delete(box);
  if (edit !== null) next.set(box, edit);
  return next;
}

export const joined = (one: Changes, other: Changes): Changes =>
  [...other].reduce<Changes>((all, [box, edit]) => withChange(all, box, edit), one);

/** Removals last and from the end of lists, so that places named by others still hold. */
export function inOrder(changes: Changes): readonly Edit[] {
  const all = [...changes.values()];
  const last = (edit: Edit): number => Number(edit.path.at(-1)) || 0;
  const gone = all.filter(({ kind }) => kind === 'remove').toSorted((a, b) => last(b) - last(a));
  return [...all.filter(({ kind }) => kind !== 'remove'), ...gone];
}

const none: Changes = new Map();

export interface Pending {
  /** Some changes were refused and wait for others. */
  readonly waiting: boolean;
  /** Changes when boxes are to forget what was typed in them. */
  readonly epoch: number;
  change(box: string, edit: Edit | null): void;
  drop(): void;
}

/** Where a change comes from: things that are added one after the other at one place are changes of their own. */
const placeOf = (box: string, edit: Edit | null): string =>
  edit !== null && / (?:new|change)$/.test(box) ? `${box} ${dotted(edit.path)}` : box;

/** @param groups another object once changes are taken */
export function usePending(
  groups: readonly FormGroup[],
  problems: readonly FormProblem[],
  onEdit: (place: string, edits: readonly Edit[]) => void,
): Pending {
  const held = useRef({ sent: none, refused: none });
  const [waiting, setWaiting] = useState(false);
  const [epoch, setEpoch] = useState(0);
  useEffect(() => {
    held.current = { sent: none, refused: none };
    setWaiting(false);
  }, [groups]);
  useEffect(() => {
    const { sent, refused } = held.current;
    if (problems.length === 0 || sent.size === 0) return;
    held.current = { sent: none, refused: joined(refused, sent) };
    setWaiting(true);
  }, [problems]);
  return {
    waiting: waiting && problems.length > 0,
    epoch,
    change(box, edit) {
      const { sent, refused } = held.current;
      if (edit === null && !sent.has(box) && !refused.has(box)) return;
      const next = withChange(refused, box, edit);
      held.current = { sent: joined(sent, next), refused: none };
      if (edit === null) held.current.sent = withChange(held.current.sent, box, null);
      onEdit(placeOf(box, edit), inOrder(next));
    },
    drop() {
      held.current = { sent: none, refused: none };
      setWaiting(false);
      setEpoch(epoch + 1);
      onEdit('', []);
    },
  };
}

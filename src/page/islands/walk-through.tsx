/** A walk through one day, with the pieces of the answer or fewer. Worked out when it is unfolded. */
import * as english from '../../tell/english.js';
import { useEffect, useState } from 'preact/hooks';
import type { DayWalk } from '../../questions/walk/day.js';
import type { WalkLayout } from '../../questions/walk/layouts.js';
import { usePage } from '../context.js';
import { Walk } from '../walk/walk.js';

interface Walked {
  readonly walk: DayWalk;
  readonly layouts: Readonly<Record<string, WalkLayout>>;
}

export function WalkThrough() {
  const { state, formats, actions } = usePage();
  const { view, reader } = state;
  const [open, setOpen] = useState(false);
  const [asked, setAsked] = useState<{
    readonly day: number | null;
    readonly fewer: Readonly<Record<string, number>>;
  }>({ day: null, fewer: {} });
  const [walked, setWalked] = useState<Walked | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => setOpen((before) => before || reader === 'trainer'), [reader]);
  useEffect(() => {
    if (!open || view === null) return;
    const stock = Object.fromEntries(
      view.ware.map(({ id, pieces }) => [id, Math.max(0, pieces - (asked.fewer[id] ?? 0))]),
    );
    actions.walk(view.tightestKind, asked.day ?? view.tightest.day, stock, (reply) => {
      if (reply.kind === 'walk') setWalked(reply);
      setFault(reply.kind === 'fault' ? reply.message : null);
    });
  }, [open, view, asked]);
  if (view === null) return null;
  return (
    <details
      class="ask"
      id="walk"
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h2>{english.page.walkHead}</h2>
      </summary>
      {fault === null ? null : (
        <p role="alert" class="wrong">
          {fault}
        </p>
      )}
      {open ? (
        <Walk
          walk={walked?.walk ?? null}
          names={Object.fromEntries(view.ware.map(({ id, name }) => [id, name]))}
          formats={formats}
          layouts={walked?.layouts ?? {}}
          reducedMotion={matchMedia('(prefers-reduced-motion: reduce)').matches}
          onAsk={(day, fewer) => setAsked({ day, fewer })}
        />
      ) : null}
    </details>
  );
}

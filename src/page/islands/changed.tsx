/** What the last change did: the values, and the answer before and after; undone or kept as an alternative. */
import type { ComponentChildren } from 'preact';
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { alternativeOf } from '../alternative.js';
import { isAsSent } from '../store.js';
import { changesInWords } from '../changes-in-words.js';

/** Values that a sentence still names one by one. */
const MOST_NAMED = 3;

export function Changed() {
  const { state, formats, actions } = usePage();
  const { before, view, groups, safety, phase, given } = state;
  const say = english.page;
  const backToSent =
    given.scenario === null || isAsSent(state) ? null : (
      <button type="button" onClick={() => actions.backToSent()}>
        {say.backToSent}
      </button>
    );
  if (before === null || view === null)
    return backToSent === null ? null : <div class="changed">{backToSent}</div>;
  const named = changesInWords(before, state, formats);
  const what = named.slice(0, MOST_NAMED);
  const more = named.length - what.length;
  const was = new Map(before.view.ware.map((one) => [one.id, one.pieces]));
  const pieces = view.ware
    .map(({ id, name, pieces: now }) => ({ name, by: now - (was.get(id) ?? 0) }))
    .filter(({ by }) => by !== 0);
  const lost = before.view.ware.filter(({ id }) => !view.ware.some((one) => one.id === id));
  const money = view.cost - before.view.cost;
  const change = [
    ...pieces.map(
      ({ name, by }) =>
        `${by < 0 ? '−' : '+'}${english.answer.pieces(formats.count(Math.abs(by)), name, Math.abs(by) === 1)}`,
    ),
    ...lost.map(
      ({ name, pieces: count }) =>
        `−${english.answer.pieces(formats.count(count), name, count === 1)}`,
    ),
    ...(Math.abs(money) < 0.005
      ? []
      : [`${money < 0 ? '−' : '+'}${formats.money(Math.abs(money))}`]),
  ];
  const share = (value: number): string => formats.percent(value);
  const shares =
    view.stockGiven && view.share !== null && before.view.share !== null
      ? say.changedSafety(share(before.view.share.level), share(view.share.level))
      : null;
  const outcome: ComponentChildren =
    phase === 'working'
      ? say.working
      : (shares ??
        (change.length === 0
          ? say.changedNothing
          : // A figure and its sign stay on one line.
            change.map((part, index) => (
              <>
                {index === 0 ? '' : ', '}
                <span class="part">{part}</span>
              </>
            ))));
  const canKeep = !view.stockGiven && alternativeOf('x', before, groups) !== null;
  return (
    <div class="changed" data-phase={phase}>
      <p>
        {what.length === 0 ? null : (
          <b>
            {[...what, ...(more > 0 ? [say.changedMore(formats.count(more))] : [])].join('; ')}
            :{' '}
          </b>
        )}
        <span class="outcome">{outcome}</span>
        {safety === null || phase !== 'certified'
          ? ''
          : ` ${say.changedStock(share(safety), formats.percent(view.level, 0))}`}
        {phase === 'provisional' ? ` ${say.changedProvisional}` : ''}
      </p>
      <div class="row">
        <button type="button" onClick={() => actions.undo()}>
          {say.undo}
        </button>
        {canKeep ? (
          <button
            type="button"
            disabled={phase !== 'certified'}
            onClick={() => actions.keepAsAlternative(what.join('; ').slice(0, 80))}
          >
            {say.keepAlternative}
          </button>
        ) : null}
        {backToSent}
      </div>
    </div>
  );
}

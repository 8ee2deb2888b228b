/** The stations that pieces pass on their way from the tables back to the shelf. What moves by itself is in `moving.tsx`. */
import * as english from '../../tell/english.js';
import type { ComponentChildren } from 'preact';
import type { DayWalk } from '../../questions/walk/day.js';
import { loneMark, SLICE, STACK, STACK_PITCH, stacksHeight, stacksPath } from './marks.js';
import { piecesAt, type Moment } from './moment.js';
import type { View } from './parts.js';
import { ALL, type Stop } from './stops.js';

export interface StationProps {
  readonly walk: DayWalk;
  readonly moment: Moment;
  readonly view: View;
}

/** A station with its heading; `most`: most of the ware followed waits here. */
export function Station({
  title,
  most,
  wide,
  children,
}: {
  readonly title: string;
  readonly most: boolean;
  readonly wide?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <section class={`walk-station${most ? ' walk-most' : ''}${wide === true ? ' walk-wide' : ''}`}>
      <h3>
        {title}
        {most ? <span class="walk-note"> – {english.walk.most}</span> : null}
      </h3>
      {children}
    </section>
  );
}

const A_ROW = 16;
const STEP = 17;
const MOST_MARKS = 96;

/** Pieces of several ware side by side in rows; the ware followed is filled and comes first. */
export function Pile({
  walk,
  pieces,
  view,
}: {
  readonly walk: DayWalk;
  readonly pieces: readonly number[];
  readonly view: View;
}) {
  if (pieces.length === 0) return null;
  const { follow, layouts, formats } = view;
  const mine = (ware: number): boolean => follow === ALL || ware === follow;
  const inOrder = [...pieces.filter(mine), ...pieces.filter((ware) => !mine(ware))];
  const drawn = inOrder.slice(0, MOST_MARKS);
  const paths = { mine: '', others: '' };
  drawn.forEach((ware, n) => {
    paths[mine(ware) ? 'mine' : 'others'] += loneMark(
      layouts[walk.wares[ware]!],
      ((n % A_ROW) + 0.5) * STEP,
      (Math.floor(n / A_ROW) + 0.5) * STEP,
      STEP * 0.44,
    );
  });
  const [width, height] = [A_ROW * STEP, Math.ceil(drawn.length / A_ROW) * STEP];
  return (
    <div>
      <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
        <path class="w-other" d={paths.others} />
        <path class="w-followed" d={paths.mine} />
      </svg>
      {inOrder.length > drawn.length ? (
        <p class="walk-small">{english.walk.more(formats.count(inOrder.length - drawn.length))}</p>
      ) : null}
    </div>
  );
}

/** Pieces of every ware at some places, as a list of ware. */
export const piecesIn = (walk: DayWalk, index: number, places: readonly number[]): number[] =>
  walk.wares.flatMap((_, ware) =>
    Array.from(
      { length: places.reduce((sum, place) => sum + piecesAt(walk, index, ware, place), 0) },
      () => ware,
    ),
  );

/** "Medium cup 3, Saucer 5": what the marks of a pile are. */
export function Named({
  walk,
  pieces,
  view: { name, formats },
}: {
  readonly walk: DayWalk;
  readonly pieces: readonly number[];
  readonly view: View;
}) {
  const counts = walk.wares.map((_, ware) => pieces.filter((one) => one === ware).length);
  const items = counts.flatMap((count, ware) =>
    count === 0 ? [] : [`${name(ware)}: ${formats.count(count)}`],
  );
  return items.length === 0 ? null : <p class="walk-small">{items.join(' · ')}</p>;
}

export function Counter({ walk, moment, view }: StationProps) {
  const { formats, name } = view;
  const say = english.walk;
  const waiting = walk.drinksWaiting[moment.index]!;
  const making = makingOf(walk, moment);
  const lacked = moment.short.flatMap((drinks, ware) =>
    drinks === 0 ? [] : [`${name(ware)}: ${formats.count(drinks)}`],
  );
  const short = moment.short.reduce((sum, drinks) => sum + drinks, 0);
  return (
    <Station title={say.counterHead} most={false}>
      <p class="walk-small">
        {say.makers(formats.count(walk.makersBusy[moment.index]!))} ·{' '}
        {say.drinksWaiting(formats.count(waiting))}
      </p>
      {waiting > 0 ? (
        <svg
          class="w-queue"
          viewBox={`0 0 ${16 * 14} 14`}
          width={16 * 14}
          height={14}
          aria-hidden="true"
        >
          <path
            class="w-waits"
            d={Array.from(
              { length: Math.min(16, waiting) },
              (_, n) => `M${n * 14 + 2} 2h10l-2 10h-6z`,
            ).join('')}
          />
        </svg>
      ) : null}
      <Pile walk={walk} pieces={making} view={view} />
      <Named walk={walk} pieces={making} view={view} />
      {short > 0 ? (
        <p class="walk-short">
          {say.short(formats.count(short))} ({lacked.join(' · ')})
        </p>
      ) : null}
    </Station>
  );
}

/** Ware of the pieces in use that stand before nobody yet. */
function makingOf(walk: DayWalk, { index, tables }: Moment): number[] {
  const before = walk.wares.map(() => 0);
  for (const { party, dirty, pieces } of tables)
    if (!dirty) for (const piece of pieces) before[party.ware[piece]!]! += 1;
  return walk.wares.flatMap((_, ware) =>
    Array.from({ length: Math.max(0, piecesAt(walk, index, ware, 1) - before[ware]!) }, () => ware),
  );
}

export function Drying({
  walk,
  moment,
  view,
  most,
}: StationProps & { readonly most: Stop | null }) {
  const pieces = piecesIn(walk, moment.index, [7, 8]);
  return (
    <Station title={english.walk.dryHead} most={most === 'drying' || most === 'polishing'}>
      {pieces.length === 0 ? <p class="walk-small">{english.walk.nothingDries}</p> : null}
      <Pile walk={walk} pieces={pieces} view={view} />
      <Named walk={walk} pieces={pieces} view={view} />
    </Station>
  );
}

const STACKS_A_ROW = 16;

export function Shelf({ walk, moment, view }: StationProps) {
  const { formats, name, follow } = view;
  const say = english.walk;
  return (
    <Station title={say.shelfHead} most={false}>
      <div class="walk-shelf">
        {walk.wares.map((id, ware) => {
          const [there, stock] = [piecesAt(walk, moment.index, ware, 0), walk.stock[ware]!];
          const height = stacksHeight(stock, STACKS_A_ROW);
          const width = Math.max(2, Math.min(STACKS_A_ROW, Math.ceil(stock / STACK))) * STACK_PITCH;
          return (
            <div key={id} class={follow === ware ? 'walk-followed' : ''}>
              <span>
                <bdi>{name(ware)}</bdi>:{' '}
                {there === 0 && stock > 0 ? (
                  <strong class="walk-bare">{say.empty}</strong>
                ) : (
                  say.onShelf(formats.count(there), formats.count(stock))
                )}
              </span>
              <svg
                viewBox={`0 0 ${width} ${height}`}
                width={width}
                height={height}
                aria-hidden="true"
              >
                <path
                  class="w-gone"
                  stroke-width={SLICE - 2}
                  d={stacksPath(there, stock, STACKS_A_ROW)}
                />
                <path
                  class={follow === ware || follow === ALL ? 'w-stack' : 'w-stack-other'}
                  stroke-width={SLICE - 1}
                  d={stacksPath(0, there, STACKS_A_ROW)}
                />
              </svg>
            </div>
          );
        })}
      </div>
      <p class="walk-small">{say.stacks}</p>
    </Station>
  );
}

/** The room from above: seats, guests, the ware before them, and dirty tables, told apart by shape as well as by colour. */
import * as english from '../../tell/english.js';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { DayWalk } from '../../questions/walk/day.js';
import { cross, disc, loneMark, markOf, pieceMark, type Layouts } from './marks.js';
import type { Moment, TableNow } from './moment.js';
import type { View } from './parts.js';
import { seatPlan, type SeatPlan } from './seat-plan.js';
import { ALL } from './stops.js';

/** Edge of a seat's square, CSS pixels: what lets the room fill its width to a like height, within what can be read. */
const edgeFor = (seats: number, width: number): number =>
  Math.round(Math.min(58, Math.max(24, Math.sqrt((width * HIGH) / seats))));
const HIGH = 220;

interface Paths {
  seats: string;
  guests: string;
  tables: string;
  dirtyTables: string;
  followed: string;
  others: string;
  dirtyFollowed: string;
  dirtyOthers: string;
}

export function Room({
  walk,
  moment,
  view,
}: {
  readonly walk: DayWalk;
  readonly moment: Moment;
  readonly view: View;
}) {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(640);
  useEffect(() => {
    const element = box.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const found = Math.floor(entry!.contentRect.width);
      if (found > 0) setWidth(found);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const edge = edgeFor(walk.seats ?? Math.max(1, walk.parties.length), width);
  const columns = Math.max(4, Math.floor(width / edge));
  const plan = useMemo(() => seatPlan(walk, columns), [walk, columns]);
  const indexOf = useMemo(
    () => new Map(walk.parties.map((party, number) => [party, number])),
    [walk],
  );
  const paths = useMemo(
    () => roomPaths(walk, moment, view, plan, indexOf, columns, edge),
    [walk, moment, view.follow, view.layouts, plan],
  );
  const { formats } = view;
  const say = english.walk;
  const seated = moment.tables.filter(({ dirty }) => !dirty);
  const guests = formats.count(seated.reduce((sum, { party }) => sum + party.size, 0));
  const waiting = walk.partiesWaiting[moment.index]!;
  const rows = Math.ceil(plan.seats / columns);
  return (
    <div class="walk-room">
      <h3>
        {say.roomHead}:{' '}
        {walk.seats === null
          ? say.roomUnlimited(guests)
          : say.room(guests, formats.count(walk.seats))}
        {waiting > 0 ? <span class="walk-note">, {say.line(formats.count(waiting))}</span> : null}
      </h3>
      <div ref={box}>
        <svg
          viewBox={`0 0 ${columns * edge} ${rows * edge}`}
          width={columns * edge}
          height={rows * edge}
          role="img"
          aria-label={say.roomPicture(
            guests,
            formats.count(seated.length),
            formats.count(moment.tables.length - seated.length),
          )}
        >
          <path class="w-seat" d={paths.seats} />
          <path class="w-table" d={paths.tables} />
          <path class="w-table-dirty" d={paths.dirtyTables} />
          <path class="w-guest" d={paths.guests} />
          <path class="w-other" d={paths.others} />
          <path class="w-other" d={paths.dirtyOthers} />
          <path class="w-followed" d={paths.followed} />
          <path class="w-dirty" d={paths.dirtyFollowed} />
        </svg>
      </div>
      <Legend />
    </div>
  );
}

function Legend() {
  const say = english.walk.legend;
  const item = (picture: preact.JSX.Element, text: string) => (
    <span class="walk-key">
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        {picture}
      </svg>
      {text}
    </span>
  );
  return (
    <p class="walk-legend">
      {item(<path class="w-guest" d={disc(10, 10, 4)} />, say.guest)}
      {item(<path class="w-followed" d={disc(10, 10, 5)} />, say.followed)}
      {item(<path class="w-other" d={disc(10, 10, 7) + disc(10, 10, 4)} />, say.inUse)}
      {item(
        <g>
          <path class="w-table-dirty" d="M2 2h16v16h-16z" />
          <path class="w-dirty" d={disc(10, 10, 5) + cross(10, 10, 6)} />
        </g>,
        say.dirty,
      )}
    </p>
  );
}

function roomPaths(
  walk: DayWalk,
  moment: Moment,
  { follow, layouts }: View,
  plan: SeatPlan,
  indexOf: ReadonlyMap<unknown, number>,
  columns: number,
  edge: number,
): Paths {
  const paths: Paths = {
    seats: '',
    guests: '',
    tables: '',
    dirtyTables: '',
    followed: '',
    others: '',
    dirtyFollowed: '',
    dirtyOthers: '',
  };
  for (let seat = 0; seat < plan.seats; seat += 1)
    paths.seats += disc(
      (seat % columns) * edge + edge / 2,
      Math.floor(seat / columns) * edge + edge * 0.2,
      edge * 0.12,
    );
  const taken = new Set<number>();
  for (const { party, dirty } of moment.tables)
    if (!dirty) for (const seat of plan.of[indexOf.get(party)!]!) taken.add(seat);
  for (const table of moment.tables) {
    const seats = plan.of[indexOf.get(table.party)!]!;
    // Dirty ware of those who left stands aside where others have sat down.
    const aside = table.dirty && seats.some((seat) => taken.has(seat));
    for (const run of runsOf(seats, columns)) {
      const [x, y] = [
        (run[0]! % columns) * edge + 1.5,
        Math.floor(run[0]! / columns) * edge + edge * 0.36,
      ];
      const outline = `M${x} ${y}h${run.length * edge - 3}v${edge * 0.6}h${-(run.length * edge - 3)}z`;
      if (!table.dirty) paths.tables += outline;
      else if (!aside) paths.dirtyTables += outline;
    }
    if (!table.dirty)
      for (const seat of seats)
        paths.guests += disc(
          (seat % columns) * edge + edge / 2,
          Math.floor(seat / columns) * edge + edge * 0.2,
          edge * 0.12,
        );
    layTable(walk, table, seats, aside, paths, follow, layouts, columns, edge);
  }
  return paths;
}

/** A drink's pieces stand together, the drinks before the party's seats in turn. */
function layTable(
  walk: DayWalk,
  { party, pieces, dirty }: TableNow,
  seats: readonly number[],
  aside: boolean,
  paths: Paths,
  follow: number,
  layouts: Layouts,
  columns: number,
  edge: number,
): void {
  const drinks = [...new Set(party.drink)];
  const slots = Math.ceil(drinks.length / party.size);
  const half = (edge * 0.26) / (slots > 1 || aside ? 1.35 : 1);
  for (const piece of pieces) {
    const turn = drinks.indexOf(party.drink[piece]!);
    const seat = seats[turn % party.size]!;
    const shift = aside
      ? edge * 0.26
      : slots > 1
        ? (Math.min(2, Math.floor(turn / party.size)) - 0.5) * edge * 0.42
        : 0;
    const x = (seat % columns) * edge + edge / 2 + shift;
    const y = Math.floor(seat / columns) * edge + edge * (aside ? 0.74 : 0.66);
    const ware = party.ware[piece]!;
    const layout = layouts[walk.wares[ware]!];
    const alone =
      party.drink.filter((drink, other) => drink === party.drink[piece] && pieces.includes(other))
        .length === 1;
    const mark = (alone ? loneMark : pieceMark)(layout, x, y, half);
    const struck =
      dirty && (markOf(layout) !== 'cutlery' || alone) ? mark + cross(x, y, half * 0.75) : mark;
    const followed = follow === ALL || follow === ware;
    if (dirty) paths[followed ? 'dirtyFollowed' : 'dirtyOthers'] += struck;
    else paths[followed ? 'followed' : 'others'] += mark;
  }
}

/** Seats next to each other in a row. */
function runsOf(seats: readonly number[], columns: number): number[][] {
  const runs: number[][] = [];
  for (const seat of seats) {
    const last = runs.at(-1);
    if (last !== undefined && last.at(-1) === seat - 1 && seat % columns !== 0) last.push(seat);
    else runs.push([seat]);
  }
  return runs;
}

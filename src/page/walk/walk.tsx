/**
 * A walk through a day, to look at: it plays, stops and steps, goes to the tightest moment or the first
 * shortage, and asks for another day or fewer pieces. The day itself comes ready made.
 */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Formats } from '../../tell/format.js';
import * as english from '../../tell/english.js';
import type { DayWalk } from '../../questions/walk/day.js';
import { Ask, type OnAsk } from './ask.js';
import { useClock } from './clock.js';
import { Controls, FiguresFolded, TimeOfDay } from './controls.js';
import type { Layouts } from './marks.js';
import { indexAt, momentAt } from './moment.js';
import { Carried, Machines } from './moving.js';
import { namer, type View } from './parts.js';
import { Room } from './room.js';
import { BenchAndRacks } from './bench-and-racks.js';
import { Counter, Drying, Shelf } from './stations.js';
import { ALL, stockOf, stopCounts, stuckAt, tell } from './stops.js';
import { walkStyle } from './style.js';
import { Course, coursePath, Figures, Where } from './where.js';

export interface WalkProps {
  /** Null: not there yet; the walk before stays to be seen. */
  readonly walk: DayWalk | null;
  /** Names for people by id of ware. */
  readonly names: Readonly<Record<string, string>>;
  readonly formats: Formats;
  readonly layouts?: Layouts;
  /** Nothing moves by itself. */
  readonly reducedMotion: boolean;
  /** Another day (from 0), or fewer pieces by id of ware. */
  readonly onAsk: OnAsk;
}

const NO_LAYOUTS: Layouts = {};

export function Walk(props: WalkProps) {
  const last = useRef<DayWalk | null>(null);
  if (props.walk !== null) last.current = props.walk;
  const say = english.walk;
  return (
    <div
      class={`walk${props.walk === null && last.current !== null ? ' walk-older' : ''}`}
      aria-busy={props.walk === null}
    >
      <style>{walkStyle}</style>
      <p>{say.intro}</p>
      {last.current === null ? (
        <p role="status">{say.coming}</p>
      ) : (
        <Day {...props} walk={last.current} />
      )}
    </div>
  );
}

function Day({
  walk,
  names,
  formats,
  layouts = NO_LAYOUTS,
  reducedMotion,
  onAsk,
}: WalkProps & { readonly walk: DayWalk }) {
  const say = english.walk;
  const [speed, setSpeed] = useState(1);
  const [followed, setFollow] = useState<number | null>(null);
  const endMs = walk.times[walk.times.length - 1]!;
  const clock = useClock(endMs, speed);
  const asked = useRef(false);
  const shown = useRef<DayWalk | null>(null);
  const follow = followed !== null && followed < walk.wares.length ? followed : walk.scarcest;
  const view = useMemo(
    (): View => ({ follow, name: namer(walk, names), layouts, formats }),
    [walk, names, layouts, formats, follow],
  );

  // A day opens at its tightest moment; one that was asked for and goes wrong, where it first does.
  useEffect(() => {
    const before = shown.current;
    shown.current = walk;
    if (asked.current && walk.firstShortIndex >= 0) {
      setFollow(walk.shortages[0]!.ware);
      clock.set(walk.times[walk.firstShortIndex]!);
    } else if (before === null || before.day !== walk.day) {
      clock.set(walk.times[follow === ALL ? walk.tightestIndex : walk.tightest[follow]!]!);
    }
    asked.current = false;
  }, [walk]);

  const index = indexAt(walk, clock.ms);
  const moment = useMemo(() => momentAt(walk, index), [walk, index]);
  const most = useMemo(
    () => stuckAt(stopCounts(walk, moment, follow), stockOf(walk, follow)),
    [moment, follow],
  );
  const course = useMemo(() => coursePath(walk, follow), [walk, follow]);
  const still = useMemo(
    () => ({
      where: <Where walk={walk} moment={moment} view={view} most={most} />,
      room: <Room walk={walk} moment={moment} view={view} />,
      bench: <BenchAndRacks walk={walk} moment={moment} view={view} most={most} />,
      ends: [
        <Drying key="drying" walk={walk} moment={moment} view={view} most={most} />,
        <Shelf key="shelf" walk={walk} moment={moment} view={view} />,
      ],
      counter: <Counter walk={walk} moment={moment} view={view} />,
      sentences: tell(walk, moment, follow, view.name, formats),
    }),
    [moment, view, most],
  );
  const moving = { walk, moment, view, most, ms: clock.ms };
  return (
    <>
      <Controls
        walk={walk}
        view={view}
        clock={clock}
        index={index}
        speed={speed}
        setSpeed={setSpeed}
        setFollow={setFollow}
        reducedMotion={reducedMotion}
      />
      <p class="walk-small">
        {say.course(
          follow === ALL ? say.allWare : view.name(follow),
          formats.count(stockOf(walk, follow)),
        )}
      </p>
      <Course walk={walk} ms={clock.ms} path={course} />
      <TimeOfDay walk={walk} view={view} clock={clock} />
      <p class="walk-tell" aria-live={clock.playing ? 'off' : 'polite'}>
        {still.sentences}
      </p>
      <div class="walk-floor">
        {still.where}
        <div>
          {still.room}
          {still.counter}
        </div>
      </div>
      <div class="walk-stations">
        <Carried {...moving} />
        {still.bench}
        <Machines {...moving} />
        {still.ends}
      </div>
      <FiguresFolded title={say.tableHead}>
        {() => <Figures walk={walk} moment={moment} view={view} />}
      </FiguresFolded>
      <Ask
        walk={walk}
        view={view}
        onAsk={(day, fewer) => {
          asked.current = true;
          onAsk(day, fewer);
        }}
      />
    </>
  );
}

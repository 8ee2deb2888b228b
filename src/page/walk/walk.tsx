/**
 * A walk through a day, to look at: it plays, stops and steps, goes to the tightest moment or the first
 * shortage, and asks for another day or fewer pieces. The day itself comes ready made.
 */
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks';
import type { Formats } from '../../tell/format.js';
import type { Words } from '../../tell/words.js';
import type { DayWalk } from '../../questions/walk/day.js';
import { Ask, type OnAsk } from './ask.js';
import { useClock, type Clock } from './clock.js';
import type { Layouts } from './marks.js';
import { indexAt, momentAt } from './moment.js';
import { Carried, Machines } from './moving.js';
import { namer, type View } from './parts.js';
import { Room } from './room.js';
import { BenchAndRacks, Counter, Drying, Shelf } from './stations.js';
import { ALL, minuteOf, stockOf, stopCounts, stuckAt, tell } from './stops.js';
import { walkStyle } from './style.js';
import { Course, coursePath, Figures, Where } from './where.js';

export interface WalkProps {
  /** Null: not there yet; the walk before stays to be seen. */
  readonly walk: DayWalk | null;
  /** Names for people by id of ware. */
  readonly names: Readonly<Record<string, string>>;
  readonly words: Words;
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
  const say = props.words.walk;
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

/** Minutes of the day in a second of looking. */
const SPEEDS = [0.25, 0.5, 1, 2, 5];

function Day({
  walk,
  names,
  words,
  formats,
  layouts = NO_LAYOUTS,
  reducedMotion,
  onAsk,
}: WalkProps & { readonly walk: DayWalk }) {
  const say = words.walk;
  const [speed, setSpeed] = useState(1);
  const [followed, setFollow] = useState<number | null>(null);
  const endMs = walk.times[walk.times.length - 1]!;
  const clock = useClock(endMs, speed);
  const asked = useRef(false);
  const shown = useRef<DayWalk | null>(null);
  const follow = followed !== null && followed < walk.wares.length ? followed : walk.scarcest;
  const view = useMemo(
    (): View => ({ follow, name: namer(walk, names), layouts, words, formats }),
    [walk, names, layouts, words, formats, follow],
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
      sentences: tell(walk, moment, follow, view.name, words, formats),
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

interface ControlsProps {
  readonly walk: DayWalk;
  readonly view: View;
  readonly clock: Clock;
  readonly index: number;
  readonly speed: number;
  setSpeed(minutes: number): void;
  setFollow(ware: number): void;
  readonly reducedMotion: boolean;
}

function Controls({
  walk,
  view,
  clock,
  index,
  speed,
  setSpeed,
  setFollow,
  reducedMotion,
}: ControlsProps) {
  const { words, formats, name, follow } = view;
  const say = words.walk;
  const id = useId();
  const last = walk.times.length - 1;
  const toMoment = (to: number): void => clock.set(walk.times[Math.min(last, Math.max(0, to))]!);
  return (
    <>
      <div class="walk-controls">
        {reducedMotion ? null : (
          <button type="button" class="walk-play" onClick={() => clock.play(!clock.playing)}>
            {clock.playing ? say.stop : say.play}
          </button>
        )}
        <button
          type="button"
          disabled={index === 0 && clock.ms <= 0}
          onClick={() => toMoment(clock.ms > walk.times[index]! ? index : index - 1)}
        >
          {say.back}
        </button>
        <button type="button" disabled={index === last} onClick={() => toMoment(index + 1)}>
          {say.forward}
        </button>
        <button
          type="button"
          onClick={() => toMoment(follow === ALL ? walk.tightestIndex : walk.tightest[follow]!)}
        >
          {say.toTightest(name(follow === ALL ? walk.scarcest : follow))}
        </button>
        {walk.firstShortIndex < 0 ? null : (
          <button type="button" onClick={() => toMoment(walk.firstShortIndex)}>
            {say.toFirstShort}
          </button>
        )}
      </div>
      {walk.firstShortIndex < 0 ? <p class="walk-small">{say.neverShort}</p> : null}
      <div class="boxes">
        <div class="box">
          <label for={`${id}-follow`}>{say.follow}</label>
          <select
            id={`${id}-follow`}
            value={String(follow)}
            onChange={(event) => setFollow(Number(event.currentTarget.value))}
          >
            {walk.wares.map((ware, number) => (
              <option key={ware} value={String(number)}>
                {name(number)}
              </option>
            ))}
            <option value={String(ALL)}>{say.allWare}</option>
          </select>
        </div>
        {reducedMotion ? null : (
          <div class="box">
            <label for={`${id}-speed`}>{say.speed}</label>
            <select
              id={`${id}-speed`}
              value={String(speed)}
              onChange={(event) => setSpeed(Number(event.currentTarget.value))}
            >
              {SPEEDS.map((minutes) => (
                <option key={minutes} value={String(minutes)}>
                  {minutes < 1
                    ? say.secondsASecond(formats.count(minutes * 60))
                    : say.minutesASecond(formats.count(minutes))}
                </option>
              ))}
            </select>
          </div>
        )}
      </div>
      {reducedMotion ? <p class="walk-small">{say.still}</p> : null}
    </>
  );
}

function TimeOfDay({
  walk,
  view: { words, formats },
  clock,
}: {
  readonly walk: DayWalk;
  readonly view: View;
  readonly clock: Clock;
}) {
  const id = useId();
  const minute = minuteOf(clock.ms);
  const endMinute = Math.ceil(walk.times[walk.times.length - 1]! / 60_000);
  return (
    <div class="walk-time">
      <input
        id={id}
        type="range"
        min="0"
        max={endMinute}
        step="1"
        value={minute}
        aria-valuetext={formats.clock(minute)}
        onInput={(event) => clock.set(Number(event.currentTarget.value) * 60_000)}
      />
      <div class="walk-ends">
        <span aria-hidden="true">{formats.clock(0)}</span>
        <label for={id}>
          {words.walk.time}: {formats.clock(minute)}
        </label>
        <span aria-hidden="true">{formats.clock(endMinute)}</span>
      </div>
    </div>
  );
}

/** Figures are written only while they are unfolded. */
function FiguresFolded({
  title,
  children,
}: {
  readonly title: string;
  children(): preact.JSX.Element;
}) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open ? children() : null}
    </details>
  );
}

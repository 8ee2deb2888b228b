/** What moves a walk through a day: play, steps, the ware that is followed, the time of day. */
import * as english from '../../tell/english.js';
import { useId, useState } from 'preact/hooks';
import type { DayWalk } from '../../questions/walk/day.js';
import type { Clock } from './clock.js';
import type { View } from './parts.js';
import { ALL, minuteOf } from './stops.js';

/** Minutes of the day in a second of looking. */
const SPEEDS = [0.25, 0.5, 1, 2, 5];

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

export function Controls({
  walk,
  view,
  clock,
  index,
  speed,
  setSpeed,
  setFollow,
  reducedMotion,
}: ControlsProps) {
  const { formats, name, follow } = view;
  const say = english.walk;
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

export function TimeOfDay({
  walk,
  view: { formats },
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
          {english.walk.time}: {formats.clock(minute)}
        </label>
        <span aria-hidden="true">{formats.clock(endMinute)}</span>
      </div>
    </div>
  );
}

/** Figures are written only while they are unfolded. */
export function FiguresFolded({
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

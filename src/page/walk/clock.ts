/** The clock of a walk: it stands, or runs with the screen's frames. */
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';

/** A page that was out of sight does not make up for the time lost. */
const LONGEST_FRAME_MS = 200;

export interface Clock {
  readonly ms: number;
  readonly playing: boolean;
  /** Stop at a time of the day. */
  set(ms: number): void;
  play(on: boolean): void;
}

/** @param minutesASecond how much of the day goes by in a second */
export function useClock(endMs: number, minutesASecond: number): Clock {
  const [ms, setMs] = useState(0);
  const [playing, setPlaying] = useState(false);
  // Before the screen is drawn: an effect after it lets one more frame through, and the walk would move once more after "Stop".
  useLayoutEffect(() => {
    if (!playing) return undefined;
    let last = performance.now();
    let frame = requestAnimationFrame(function tick(now: number) {
      const passed = Math.min(LONGEST_FRAME_MS, Math.max(0, now - last)) * 60 * minutesASecond;
      last = now;
      setMs((before) => Math.min(endMs, before + passed));
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing, endMs, minutesASecond]);
  useEffect(() => {
    if (playing && ms >= endMs) setPlaying(false);
  }, [playing, ms, endMs]);
  return {
    ms,
    playing,
    set(to) {
      setPlaying(false);
      setMs(Math.min(endMs, Math.max(0, to)));
    },
    play(on) {
      if (on && ms >= endMs) setMs(0);
      setPlaying(on);
    },
  };
}

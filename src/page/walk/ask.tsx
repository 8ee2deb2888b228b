/** Boxes that ask for another day, or for the same day with fewer pieces. */
import * as english from '../../tell/english.js';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { DayWalk } from '../../questions/walk/day.js';
import type { View } from './parts.js';

/** Typing is let come to rest before the day is run again. */
const REST_MS = 350;
const MOST_DAY = 9999;
const MOST_FEWER = 20_000;
const TEN = 10;

export type OnAsk = (day: number, fewer: Record<string, number>) => void;

export function Ask({
  walk,
  view,
  onAsk,
}: {
  readonly walk: DayWalk;
  readonly view: View;
  readonly onAsk: OnAsk;
}) {
  const { formats, name } = view;
  const say = english.walk;
  const [day, setDay] = useState<string | null>(null);
  const [fewer, setFewer] = useState<Readonly<Record<string, string>>>({});
  const rest = useRef<number | undefined>(undefined);
  useEffect(() => () => clearTimeout(rest.current), []);
  const typedDay = day ?? String(walk.day + 1);
  const ask = (
    nextDay: string,
    nextFewer: Readonly<Record<string, string>>,
    afterMs: number,
  ): void => {
    clearTimeout(rest.current);
    if (
      !isWhole(nextDay, 1, MOST_DAY) ||
      Object.values(nextFewer).some((text) => !isWhole(text, 0, MOST_FEWER))
    )
      return;
    const numbers = Object.fromEntries(
      Object.entries(nextFewer).flatMap(([id, text]) =>
        Number(text) > 0 ? [[id, Number(text)]] : [],
      ),
    );
    rest.current = setTimeout(
      () => onAsk(Number(nextDay) - 1, numbers),
      afterMs,
    ) as unknown as number;
  };
  const changeFewer = (next: Readonly<Record<string, string>>, afterMs: number): void => {
    setFewer(next);
    ask(typedDay, next, afterMs);
  };
  const scarcest = scarcestOf(walk);
  const scarce = walk.wares[scarcest]!;
  return (
    <>
      <div class="boxes">
        <Box
          id="walk-day"
          label={say.day}
          value={typedDay}
          min={1}
          max={MOST_DAY}
          wrong={isWhole(typedDay, 1, MOST_DAY) ? null : say.wrongDay(formats.count(MOST_DAY))}
          onInput={(text) => {
            setDay(text);
            ask(text, fewer, REST_MS);
          }}
        />
        <div class="box">
          <button
            type="button"
            onClick={() =>
              changeFewer(
                { ...fewer, [scarce]: String(TEN + (Number(fewer[scarce] ?? 0) || 0)) },
                0,
              )
            }
          >
            {say.tenFewer(name(scarcest))}
          </button>
        </div>
        {Object.values(fewer).some((text) => text !== '0') ? (
          <div class="box">
            <button type="button" onClick={() => changeFewer({}, 0)}>
              {say.allBack}
            </button>
          </div>
        ) : null}
      </div>
      <details>
        <summary>{say.fewerHead}</summary>
        <p>{say.fewerIntro}</p>
        <div class="boxes">
          {walk.wares.map((id, ware) => {
            const text = fewer[id] ?? '0';
            return (
              <Box
                key={id}
                id={`walk-fewer-${ware}`}
                label={say.fewer(name(ware))}
                value={text}
                min={0}
                max={MOST_FEWER}
                wrong={
                  isWhole(text, 0, MOST_FEWER) ? null : say.wrongFewer(formats.count(MOST_FEWER))
                }
                onInput={(typed) => changeFewer({ ...fewer, [id]: typed }, REST_MS)}
              />
            );
          })}
        </div>
      </details>
    </>
  );
}

function Box({
  id,
  label,
  value,
  min,
  max,
  wrong,
  onInput,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly min: number;
  readonly max: number;
  readonly wrong: string | null;
  onInput(text: string): void;
}) {
  return (
    <div class="box">
      <label for={id}>
        <bdi>{label}</bdi>
      </label>
      <input
        id={id}
        type="number"
        min={min}
        max={max}
        step="1"
        value={value}
        aria-invalid={wrong !== null}
        {...(wrong === null ? {} : { 'aria-describedby': `${id}-wrong` })}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {wrong === null ? null : (
        <p class="wrong" id={`${id}-wrong`}>
          {wrong}
        </p>
      )}
    </div>
  );
}

/** The ware of which the largest share was off the shelf, among those of which ten can go and some are left. */
function scarcestOf({ peaks, stock, scarcest }: DayWalk): number {
  const share = (ware: number): number => (stock[ware]! > TEN ? peaks[ware]! / stock[ware]! : -1);
  return peaks.reduce((best, _, ware) => (share(ware) > share(best) ? ware : best), scarcest);
}

const isWhole = (text: string, least: number, most: number): boolean =>
  /^\d{1,6}$/.test(text.trim()) && Number(text) >= least && Number(text) <= most;

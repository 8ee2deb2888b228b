/** A house to start from, at a glance: guests through the day as bars, a dot a seat, a square a dishwasher. */
import * as english from '../../tell/english.js';
import type { Glance } from '../../questions/size/house-measures.js';
import { usePage } from '../context.js';

const WIDTH = 200;
const BARS = 44;
const DOTS = 30;
const SQUARE = 12;
const GAP = 8;

export function HousePicture({ glance }: { readonly glance: Glance }) {
  const { guestsAQuarter, seats, machines, busiestHour } = glance;
  const { formats } = usePage();
  const say = english.page.house;
  const most = Math.max(...guestsAQuarter, 1);
  const bar = WIDTH / Math.max(1, guestsAQuarter.length);
  const height = BARS + GAP + DOTS + GAP + SQUARE;
  const { count } = formats;
  return (
    <span class="house">
      <svg viewBox={`0 0 ${WIDTH} ${height}`} aria-hidden="true">
        {guestsAQuarter.map((guests, i) => (
          <rect
            key={i}
            x={i * bar}
            y={BARS - (BARS * guests) / most}
            width={0.85 * bar}
            height={(BARS * guests) / most}
            fill="currentColor"
          />
        ))}
        <g transform={`translate(0 ${BARS + GAP})`}>{seats === null ? null : dots(seats)}</g>
        <g transform={`translate(0 ${BARS + GAP + DOTS + GAP})`}>
          {Array.from({ length: machines ?? 0 }, (_, i) => (
            <rect
              key={i}
              x={i * 1.5 * SQUARE + 1}
              y="1"
              width={SQUARE - 2}
              height={SQUARE - 2}
              fill="none"
              stroke="currentColor"
              stroke-width="2"
            />
          ))}
        </g>
      </svg>
      <small>
        {say.guests(count(Math.round(busiestHour)))}
        <br />
        {seats === null ? say.anySeats : say.seats(count(seats))}
        <br />
        {machines === null ? say.anyMachines : say.machines(count(machines), machines === 1)}
      </small>
    </span>
  );
}

/** As many dots as seats, in rows that fill the room they have. */
function dots(seats: number) {
  const pitch = Math.min(9, Math.sqrt((WIDTH * DOTS) / Math.max(1, seats)));
  const aRow = Math.max(1, Math.floor(WIDTH / pitch));
  const d = Array.from(
    { length: seats },
    (_, i) =>
      `M${((i % aRow) * pitch + pitch / 2).toFixed(1)} ${(Math.floor(i / aRow) * pitch + pitch / 2).toFixed(1)}h0`,
  ).join('');
  return (
    <path
      d={d}
      stroke="currentColor"
      stroke-width={0.7 * pitch}
      stroke-linecap="round"
      fill="none"
    />
  );
}

/** Where the pieces are, as bars beside words, and the same in figures. */
import * as english from '../../tell/english.js';
import { useMemo } from 'preact/hooks';
import type { DayWalk } from '../../questions/walk/day.js';
import { piecesAt, type Moment } from './moment.js';
import type { View } from './parts.js';
import { ALL, minuteOf, stockOf, stopCounts, type Stop } from './stops.js';

const STOPS: readonly Stop[] = [
  'shelf',
  'making',
  'guests',
  'dirty',
  'carried',
  'bench',
  'machine',
  'drying',
  'polishing',
];
const LONG = 150;

export function Where({
  walk,
  moment,
  view,
  most,
}: {
  readonly walk: DayWalk;
  readonly moment: Moment;
  readonly view: View;
  readonly most: Stop | null;
}) {
  const { formats, follow, name } = view;
  const say = english.walk;
  const counts = stopCounts(walk, moment, follow);
  const stock = stockOf(walk, follow);
  const polished = useMemo(
    () => walk.counts.some((pieces, cell) => pieces > 0 && cell % walk.places.length === 8),
    [walk],
  );
  const rows = STOPS.filter((stop) => stop !== 'polishing' || polished);
  return (
    <div class="walk-where">
      <h3>{say.whereHead(follow === ALL ? say.allWare : name(follow), formats.count(stock))}</h3>
      <table>
        <tbody>
          {rows.map((stop) => (
            <tr key={stop} class={stop === most ? 'walk-most' : ''}>
              <th scope="row">
                {say.stops[stop]}
                {stop === most ? <span class="walk-note">{say.most}</span> : null}
              </th>
              <td>{formats.count(counts[stop])}</td>
              <td class="walk-bar">
                <svg
                  viewBox={`0 0 ${LONG} 14`}
                  width={LONG}
                  height={14}
                  preserveAspectRatio="none"
                  aria-hidden="true"
                >
                  <path class="w-axis" d="M0.5 0V14" />
                  <rect
                    class={stop === most ? 'w-most' : stop === 'shelf' ? 'w-shelf' : 'w-stop'}
                    x="1"
                    y="1.5"
                    width={
                      stock === 0 ? 0 : Math.round((counts[stop] / stock) * (LONG - 2) * 10) / 10
                    }
                    height="11"
                  />
                </svg>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function Figures({
  walk,
  moment,
  view: { formats, name },
}: {
  readonly walk: DayWalk;
  readonly moment: Moment;
  readonly view: View;
}) {
  const say = english.walk;
  const each = walk.wares.map((_, ware) => {
    const view = stopCounts(walk, moment, ware);
    return STOPS.map((stop) => view[stop]);
  });
  const used = STOPS.map((_, at) => at).filter(
    (at) => STOPS[at] !== 'polishing' || each.some((row) => row[at]! > 0),
  );
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={say.tableHead}>
      <table>
        <caption>{say.tableCaption(formats.clock(minuteOf(walk.times[moment.index]!)))}</caption>
        <thead>
          <tr>
            <th scope="col">{say.ware}</th>
            {used.map((at) => (
              <th scope="col" key={at}>
                {say.stops[STOPS[at]!]}
              </th>
            ))}
            <th scope="col">{say.all}</th>
          </tr>
        </thead>
        <tbody>
          {walk.wares.map((id, ware) => (
            <tr key={id}>
              <th scope="row">
                <bdi>{name(ware)}</bdi>
              </th>
              {used.map((at) => (
                <td key={at}>{formats.count(each[ware]![at]!)}</td>
              ))}
              <td>{formats.count(walk.stock[ware]!)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const COURSE = 600;
const COURSE_HIGH = 56;

/** The shelf's course through the day as a stepped line, 0 at the foot; of a ware, or of all. */
export function coursePath(walk: DayWalk, follow: number): string {
  const { times } = walk;
  const end = times[times.length - 1]! || 1;
  const stock = Math.max(1, stockOf(walk, follow));
  const wares = follow === ALL ? walk.wares.map((_, ware) => ware) : [follow];
  let path = '';
  let last = NaN;
  times.forEach((ms, index) => {
    const y =
      Math.round(
        (COURSE_HIGH - 4) *
          (1 - wares.reduce((sum, ware) => sum + piecesAt(walk, index, ware, 0), 0) / stock) *
          10,
      ) /
        10 +
      2;
    if (y === last) return;
    const x = Math.round((ms / end) * COURSE * 10) / 10;
    path += path === '' ? `M${x} ${y}` : `H${x}V${y}`;
    last = y;
  });
  return `${path}H${COURSE}`;
}

export function Course({
  walk,
  ms,
  path,
}: {
  readonly walk: DayWalk;
  readonly ms: number;
  readonly path: string;
}) {
  const end = walk.times[walk.times.length - 1]! || 1;
  const at = (time: number): number => Math.round((time / end) * COURSE * 10) / 10;
  return (
    <svg
      class="w-course"
      viewBox={`0 0 ${COURSE} ${COURSE_HIGH}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path class="w-foot" d={`M0 ${COURSE_HIGH - 2}H${COURSE}`} />
      <path class="w-shelf-line" d={path} />
      {walk.shortages.length === 0 ? null : (
        <path
          class="w-short-marks"
          d={[
            ...new Set(
              walk.shortages.map(({ moment }) => `M${at(walk.times[moment]!)} ${COURSE_HIGH}v-9`),
            ),
          ].join('')}
        />
      )}
      <path class="w-now" d={`M${at(ms)} 0V${COURSE_HIGH}`} />
    </svg>
  );
}

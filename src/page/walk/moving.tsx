/** What moves between two moments: trips to the bench, and machines. Drawn anew with the clock. */
import * as english from '../../tell/english.js';
import type { DayWalk } from '../../questions/walk/day.js';
import type { Moment } from './moment.js';
import type { View } from './parts.js';
import { Rack } from './rack.js';
import { rackName } from './bench-and-racks.js';
import { Named, Pile, Station } from './stations.js';
import { ALL, type Stop } from './stops.js';

interface MovingProps {
  readonly walk: DayWalk;
  readonly moment: Moment;
  readonly view: View;
  readonly ms: number;
  readonly most: Stop | null;
}

/** How much of a spell is over, 0..1. */
function shareDone(
  { times }: DayWalk,
  { from, until }: { readonly from: number; readonly until: number },
  ms: number,
): number {
  const start = times[from]!;
  const end = times[Math.min(until, times.length - 1)]!;
  return end <= start ? 1 : Math.min(1, Math.max(0, (ms - start) / (end - start)));
}

const WAY = 270;
const TRAY = 46;

export function Carried({ walk, moment, view, ms, most }: MovingProps) {
  const { formats, follow } = view;
  const say = english.walk;
  const carried = moment.trips.flatMap(({ pieces }) => pieces);
  return (
    <Station title={say.carriedHead} most={most === 'carried'}>
      {moment.trips.length === 0 ? <p class="walk-small">{say.nobodyOut}</p> : null}
      {moment.trips.map((trip) => {
        const x = Math.round(shareDone(walk, trip, ms) * (WAY - TRAY) * 2) / 2;
        const mine = follow === ALL || trip.pieces.includes(follow);
        return (
          <svg
            key={trip.clearer}
            class="w-way"
            viewBox={`0 0 ${WAY} 40`}
            width={WAY}
            height={40}
            aria-hidden="true"
          >
            <path class="w-line" d={`M0 26H${WAY}M0 22v8M${WAY} 22v8`} />
            <text class="w-end" x="0" y="39">
              {say.fromTables}
            </text>
            <text class="w-end" x={WAY} y="39" text-anchor="end">
              {say.toBench}
            </text>
            <g transform={`translate(${x} 0)`}>
              <path
                class={mine ? 'w-tray' : 'w-tray-other'}
                d={`M1 2h${TRAY - 2}v4l-5 18h${12 - TRAY}l-5 -18z`}
              />
              <text class="w-load" x={TRAY / 2} y="17" text-anchor="middle">
                {formats.count(trip.pieces.length)}
              </text>
            </g>
          </svg>
        );
      })}
      <Pile walk={walk} pieces={carried} view={view} />
      <Named walk={walk} pieces={carried} view={view} />
    </Station>
  );
}

/** In the order of MACHINE_STAGES. */
const STAGES = ['idle', 'loading', 'running', 'waiting', 'unloading', 'stopped'] as const;
const MOST_MACHINES = 6;
const BAR = 200;

export function Machines({ walk, moment, view, ms, most }: MovingProps) {
  const { formats } = view;
  const say = english.walk;
  const numbered = moment.machines.map((machine, number) => ({ machine, number }));
  // Of many machines the idle ones are counted, not drawn.
  const drawn = (
    numbered.length <= 3 ? numbered : numbered.filter(({ machine }) => machine.spell !== null)
  ).slice(0, MOST_MACHINES);
  return (
    <Station title={say.machineHead} most={most === 'machine'}>
      <div class="walk-machines">
        {drawn.map(({ machine: { spell, racks, foodRacks }, number }) => {
          const stage = STAGES[spell?.stage ?? 0]!;
          const working = stage === 'loading' || stage === 'running' || stage === 'unloading';
          return (
            <div key={number}>
              <p class="walk-small">
                {say.machine(formats.count(number + 1))} {say.stages[stage]}
              </p>
              <svg viewBox={`0 0 ${BAR} 10`} width={BAR} height={10} aria-hidden="true">
                <rect class="w-bar" x="0.5" y="0.5" width={BAR - 1} height="9" />
                {working && spell !== null ? (
                  <rect
                    class={stage === 'running' ? 'w-done' : 'w-hand'}
                    x="1"
                    y="1"
                    width={Math.round(shareDone(walk, spell, ms) * (BAR - 2))}
                    height="8"
                  />
                ) : null}
                {stage === 'waiting' ? (
                  <rect class="w-done" x="1" y="1" width={BAR - 2} height="8" />
                ) : null}
              </svg>
              <div class="walk-racks">
                {racks.map((rack) => (
                  <figure key={rack.index}>
                    <Rack walk={walk} rack={rack} view={view} size={88} />
                    <figcaption>
                      {say.inIt(rackName(walk, rack, view), formats.count(rack.ware.length))}
                    </figcaption>
                  </figure>
                ))}
              </div>
              {foodRacks > 0 ? (
                <p class="walk-small">{say.foodIn(formats.count(foodRacks))}</p>
              ) : null}
            </div>
          );
        })}
      </div>
      {numbered.length > 3 && numbered.length > drawn.length ? (
        <p class="walk-small">
          {say.idleMachines(
            formats.count(numbered.filter(({ machine }) => machine.spell === null).length),
          )}
        </p>
      ) : null}
    </Station>
  );
}

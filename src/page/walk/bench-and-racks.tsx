/** The bench and the racks on it: those that fill, those that wait, and what lies loose. */
import * as english from '../../tell/english.js';
import type { DayWalk } from '../../questions/walk/day.js';
import type { RackNow } from './moment.js';
import type { View } from './parts.js';
import { Rack } from './rack.js';
import { Named, piecesIn, Pile, Station, type StationProps } from './stations.js';
import type { Stop } from './stops.js';

const MOST_RACKS = 8;

export function BenchAndRacks({
  walk,
  moment,
  view,
  most,
}: StationProps & { readonly most: Stop | null }) {
  const { formats } = view;
  const say = english.walk;
  const loose = piecesIn(walk, moment.index, [4]);
  const { openRacks, waitingRacks } = moment;
  const food = walk.foodRacksWaiting[moment.index]!;
  const nothing =
    loose.length === 0 && openRacks.length === 0 && waitingRacks.length === 0 && food === 0;
  return (
    <Station title={say.benchHead} most={most === 'bench'} wide>
      {nothing ? <p class="walk-small">{say.benchClear}</p> : null}
      <div class="walk-racks">
        {waitingRacks.slice(0, MOST_RACKS).map((rack) => (
          <figure class="walk-waits" key={rack.index}>
            <Rack walk={walk} rack={rack} view={view} size={88} />
            <figcaption>
              {say.waiting(rackName(walk, rack, view), formats.count(rack.ware.length))}
            </figcaption>
          </figure>
        ))}
        {openRacks.map((rack) => (
          <figure key={rack.index}>
            <Rack walk={walk} rack={rack} view={view} size={120} />
            <figcaption>{openCaption(walk, rack, view)}</figcaption>
          </figure>
        ))}
      </div>
      {waitingRacks.length > MOST_RACKS ? (
        <p class="walk-small">{say.moreWaiting(formats.count(waitingRacks.length - MOST_RACKS))}</p>
      ) : null}
      {food > 0 ? <p class="walk-small">{say.foodWaiting(formats.count(food))}</p> : null}
      {loose.length > 0 ? (
        <div>
          <p class="walk-short">{say.loose(formats.count(loose.length))}</p>
          <Pile walk={walk} pieces={loose} view={view} />
          <Named walk={walk} pieces={loose} view={view} />
        </div>
      ) : null}
    </Station>
  );
}

/** The one ware in a rack, or that it is mixed. */
export const rackName = (walk: DayWalk, { ware, rack }: RackNow, { name }: View): string => {
  const [first] = ware;
  if (first === undefined) return walk.families[rack.family]!;
  return ware.every((one) => one === first) ? name(first) : english.walk.mixed;
};

function openCaption(walk: DayWalk, rack: RackNow, view: View): string {
  const { formats } = view;
  const [first] = rack.ware;
  if (first !== undefined && rack.ware.every((one) => one === first))
    return english.walk.open(
      rackName(walk, rack, view),
      formats.count(rack.ware.length),
      formats.count(walk.perRack[first]!),
    );
  return english.walk.openMixed(
    formats.count(rack.ware.length),
    formats.percent(
      rack.ware.reduce((sum, ware) => sum + 1 / walk.perRack[ware]!, 0),
      0,
    ),
  );
}

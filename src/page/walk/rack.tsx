/** A rack from above: pieces of one ware at their true places, to scale; a mixture, or ware of unknown shape, in plain rows. */
import { ALL } from './stops.js';
import type { DayWalk } from '../../questions/walk/day.js';
import { cellsPath, layoutPath, loneMark } from './marks.js';
import type { RackNow } from './moment.js';
import type { View } from './parts.js';

const PLAIN = 460;
const WALL = 16;

export function Rack({
  walk,
  rack,
  view,
  size,
}: {
  readonly walk: DayWalk;
  readonly rack: RackNow;
  readonly view: View;
  readonly size: number;
}) {
  const { follow, layouts } = view;
  const first = rack.ware[0];
  const layout =
    first === undefined || rack.ware.some((ware) => ware !== first)
      ? undefined
      : layouts[walk.wares[first]!];
  const followed = rack.ware.some((ware) => follow === ALL || ware === follow);
  if (layout !== undefined && layout.pieces.length >= rack.ware.length) {
    const { x, y } = layout.insideMm;
    const cells = layout.cells > 0 ? cellsPath(layout) : '';
    return (
      <svg
        class="w-rack"
        viewBox={`${-WALL} ${-WALL} ${x + 2 * WALL} ${y + 2 * WALL}`}
        width={size}
        height={(size * (y + 2 * WALL)) / (x + 2 * WALL)}
        aria-hidden="true"
      >
        <rect
          class="w-wall"
          x={-WALL / 2}
          y={-WALL / 2}
          width={x + WALL}
          height={y + WALL}
          rx="10"
        />
        {cells === '' ? null : <path class="w-cells" d={cells} />}
        <path class="w-place" d={layoutPath(layout, rack.ware.length, layout.pieces.length)} />
        <path
          class={followed ? 'w-racked' : 'w-racked-other'}
          d={layoutPath(layout, 0, rack.ware.length)}
        />
      </svg>
    );
  }
  const { mine, others } = plainRows(walk, rack, view);
  return (
    <svg
      class="w-rack"
      viewBox={`${-WALL} ${-WALL} ${PLAIN + 2 * WALL} ${PLAIN + 2 * WALL}`}
      width={size}
      height={size}
      aria-hidden="true"
    >
      <rect
        class="w-wall"
        x={-WALL / 2}
        y={-WALL / 2}
        width={PLAIN + WALL}
        height={PLAIN + WALL}
        rx="10"
      />
      <path class="w-racked-other" d={others} />
      <path class="w-row" d={mine} />
    </svg>
  );
}

/** As many columns as make the rack's usual number of pieces fill it. */
function plainRows(
  walk: DayWalk,
  { ware, rack }: RackNow,
  { follow, layouts }: View,
): { mine: string; others: string } {
  const full = Math.max(
    ...walk.perRack.filter((_, one) => walk.familyOf[one] === rack.family),
    ware.length,
  );
  const columns = Math.ceil(Math.sqrt(full));
  const step = PLAIN / columns;
  const paths = { mine: '', others: '' };
  ware.forEach((one, n) => {
    const mark = loneMark(
      layouts[walk.wares[one]!],
      ((n % columns) + 0.5) * step,
      (Math.floor(n / columns) + 0.5) * step,
      step * 0.45,
    );
    paths[follow === ALL || one === follow ? 'mine' : 'others'] += mark;
  });
  return paths;
}

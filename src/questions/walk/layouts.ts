/**
 * What a picture of a walk needs to know of the ware: its kind, and how its pieces stand in their rack,
 * to scale, as plain numbers.
 */
import { atan2, cos, sin } from '../../elementary/angles.js';
import { hypot } from '../../elementary/powers.js';
import { rackLayout } from '../../racking/layout.js';
import { direction, type Rounded } from '../../racking/convex.js';
import { outlineOf } from '../../racking/outline.js';
import { pegLoad } from '../../racking/pegs.js';
import { USABLE_MM, usableOf, type Rack } from '../../racking/rack.js';
import { depthOf, type Vessel } from '../../racking/vessel.js';
import { familyOf, rackFill, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';

export interface WalkLayout {
  /** Shape of the ware, such as "cup". */
  readonly shape: string;
  /** Null: not known. */
  readonly rimMm: number | null;
  /** Clear inside of the rack. */
  readonly insideMm: { readonly x: number; readonly y: number };
  /** Compartments each way; 0: none. */
  readonly cells: number;
  /** Where each piece goes, in the order in which a rack fills; y points away from the reader. Empty: not known. */
  readonly pieces: readonly { readonly x: number; readonly y: number; readonly angleDeg: number }[];
  /** A piece at angle 0 about its own middle, seen from above: x, y, x, y ... of a polygon, mm. */
  readonly outline: readonly number[];
}

/** By ware; ware that has no shape at all is left out, and where its measures are not known it has no places and no outline. */
export function walkLayouts(scenario: Scenario): Record<string, WalkLayout> {
  return Object.fromEntries(
    Object.entries(scenario.ware).flatMap(([id, ware]): [string, WalkLayout][] => {
      const { shape } = ware;
      if (shape === undefined) return [];
      const vessel = vesselOf(ware);
      const kind = rackKindOf(scenario.racks, familyOf(id, ware));
      const rack = rackOf(kind, scenario.racks);
      if (vessel === null || rack === null)
        return [
          [
            id,
            {
              shape,
              rimMm: ware.rim ?? null,
              insideMm: { x: USABLE_MM, y: USABLE_MM },
              cells: 0,
              pieces: [],
              outline: [],
            },
          ],
        ];
      const full = rackFill(ware, kind, scenario.racks, piecesPerRackOf)?.pieces ?? 0;
      const drawn =
        rack.kind === 'basket'
          ? sideBySide(vessel, rack, full)
          : rackLayout(vessel, rack, scenario.racks?.loading ?? 'best').positions;
      return [
        [
          id,
          {
            shape,
            rimMm: vessel.rimMm,
            insideMm: usableOf(rack),
            cells: rack.kind === 'grid' ? rack.cells : 0,
            // A count that is given may be more than the shape would let in: then no picture of it is true.
            pieces:
              drawn.length < full
                ? []
                : drawn.slice(0, full).map(({ x, y, angleDeg }) => ({
                    x: tenth(x),
                    y: tenth(y),
                    angleDeg: tenth(angleDeg),
                  })),
            outline: outline(vessel, rack).map(tenth),
          },
        ],
      ];
    }),
  );
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Cutlery lies as it falls; set out in rows to show how many and how large. */
function sideBySide(
  vessel: Vessel,
  rack: Rack,
  pieces: number,
): { x: number; y: number; angleDeg: number }[] {
  const { x, y } = usableOf(rack);
  const columns = Math.max(1, Math.floor(x / vessel.rimMm));
  const rows = Math.ceil(pieces / columns);
  return Array.from({ length: pieces }, (_, n) => ({
    x: ((n % columns) + 0.5) * (x / columns),
    y: (Math.floor(n / columns) + 0.5) * (y / rows),
    angleDeg: Math.floor(n / columns) % 2 === 1 ? 180 : 0,
  }));
}

function outline(vessel: Vessel, rack: Rack): number[] {
  if (rack.kind === 'peg')
    return box(Math.min(depthOf(vessel), pegLoad(vessel, rack).spacingMm), vessel.rimMm);
  if (rack.kind === 'basket') return spoon(vessel.rimMm, vessel.rimAcrossMm ?? vessel.rimMm / 8);
  const { body, handle } = outlineOf(vessel);
  const parts = handle === null ? [body] : [body, handle];
  // Body and handle both hold the middle, so that every ray from there leaves the piece once. The handle's corners are rays of their own.
  const corners =
    handle === null ? [] : handle.points.filter(({ x }) => x > 0).map(({ x, y }) => atan2(y, x));
  const angles = [
    ...Array.from({ length: RAYS }, (_, ray) => (ray / RAYS) * 2 * Math.PI - Math.PI),
    ...corners,
    ...corners.flatMap((angle) => [angle * 1.12]),
  ].sort((a, b) => a - b);
  return angles.flatMap((angle) => {
    const ray = direction((angle * 180) / Math.PI);
    const far = Math.max(...parts.map((part) => alongRay(part, ray.x, ray.y)));
    return [ray.x * far, ray.y * far];
  });
}

const RAYS = 24;

const box = (x: number, y: number): number[] => [
  -x / 2,
  -y / 2,
  x / 2,
  -y / 2,
  x / 2,
  y / 2,
  -x / 2,
  y / 2,
];

/** A bowl at the end of a stem. */
function spoon(long: number, broad: number): number[] {
  const bowl = 0.7 * broad;
  const middle = long / 2 - bowl;
  const round = Array.from({ length: 11 }, (_, n) => ((n - 5) / 5) * 0.85 * Math.PI).flatMap(
    (angle) => [middle + bowl * cos(angle), (broad / 2) * sin(angle)],
  );
  return [-long / 2, broad / 7, -long / 2, -broad / 7, ...round];
}

/** How far a convex shape that holds the origin reaches along a ray from it; found by halving. */
function alongRay(shape: Rounded, x: number, y: number): number {
  let [low, high] = [0, 2000];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (holds(shape, middle * x, middle * y)) low = middle;
    else high = middle;
  }
  return low;
}

/** Whether a point lies in a convex polygon or within its radius of it. */
function holds({ points, radius }: Rounded, x: number, y: number): boolean {
  const inside =
    points.length > 2 &&
    points.every((p, n) => {
      const q = points[(n + 1) % points.length]!;
      return (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x) >= -1e-9;
    });
  return (
    inside ||
    points.some((p, n) => {
      const q = points[(n + 1) % points.length]!;
      const [dx, dy] = [q.x - p.x, q.y - p.y];
      const along =
        dx === 0 && dy === 0
          ? 0
          : Math.min(1, Math.max(0, ((x - p.x) * dx + (y - p.y) * dy) / (dx * dx + dy * dy)));
      return hypot(x - p.x - along * dx, y - p.y - along * dy) <= radius + 1e-9;
    })
  );
}

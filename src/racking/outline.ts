/**
 * From the measures of a vessel to its plan: a convex body about the origin and a handle along +x.
 */
import { cos, sin } from '../elementary/angles.js';
import { hypot, square } from '../elementary/powers.js';
import type { Point, Rounded } from './convex.js';
import { ASSUMED_HANDLE_WIDTH_MM } from './vessel.js';
import type { Vessel } from './vessel.js';

export interface Outline {
  readonly body: Rounded;
  readonly handle: Rounded | null;
  /** Turning a round piece without handle changes nothing. */
  readonly plainDisc: boolean;
}

/** Degrees between the sides of the polygon that stands for an ellipse; it encloses it, by at most 0.4 % of the length. */
const OVAL_STEP_DEG = 10;

/** The plan of a vessel at angle 0, mm, about the centre of its rim. */
export function outlineOf(vessel: Vessel): Outline {
  const body = bodyOf(vessel);
  const handleMm = vessel.handleMm ?? 0;
  const beyond = vessel.rimMm / 2 + handleMm;
  if (handleMm <= 0) return { body, handle: null, plainDisc: body.points.length === 1 };
  const width = vessel.handleWidthMm ?? ASSUMED_HANDLE_WIDTH_MM;
  return { body, handle: handleOf(beyond, width, vessel.handleTip ?? 'flat'), plainDisc: false };
}

function bodyOf(vessel: Vessel): Rounded {
  const footprint = vessel.footprint ?? 'round';
  const a = vessel.rimMm / 2;
  const b = (vessel.rimAcrossMm ?? vessel.rimMm) / 2;
  if (footprint === 'round')
    return { points: [{ x: 0, y: 0 }], radius: Math.max(a, (vessel.footMm ?? 0) / 2) };
  if (footprint === 'square') return { points: rectangle(-a, a, b), radius: 0 };
  return oval(a, b);
}

/** Flat: a rectangle that ends at `beyond`; round: a bar whose half-round end touches it. */
function handleOf(beyond: number, width: number, tip: 'flat' | 'round'): Rounded {
  if (tip === 'flat') return { points: rectangle(0, beyond, width / 2), radius: 0 };
  const radius = Math.min(width / 2, beyond);
  return {
    points: [
      { x: 0, y: 0 },
      { x: beyond - radius, y: 0 },
    ],
    radius,
  };
}

const rectangle = (from: number, to: number, half: number): Point[] => [
  { x: from, y: -half },
  { x: to, y: -half },
  { x: to, y: half },
  { x: from, y: half },
];

/**
 * An ellipse as the curve inside it at its smallest radius of curvature, enclosed by a polygon and grown
 * back by that radius: touching the ellipse at every step of the angle, so the walls are met exactly there.
 */
function oval(a: number, b: number): Rounded {
  const radius = square(Math.min(a, b)) / Math.max(a, b);
  const step = (OVAL_STEP_DEG * Math.PI) / 180;
  const support = (angle: number): number => hypot(a * cos(angle), b * sin(angle)) - radius;
  const points: Point[] = [];
  for (let k = 0; k < 360 / OVAL_STEP_DEG; k += 1) {
    // The corner where the supporting lines at k and k + 1 meet.
    const [angle, here, next] = [k * step, support(k * step), support((k + 1) * step)];
    const along = (next - here * cos(step)) / sin(step);
    points.push({
      x: here * cos(angle) - along * sin(angle),
      y: here * sin(angle) + along * cos(angle),
    });
  }
  return { points, radius };
}

/** Area of the plan, mm²: body and what the handle adds beyond it. */
export function planAreaOf(vessel: Vessel): number {
  const footprint = vessel.footprint ?? 'round';
  const round = footprint === 'round';
  const a = (round ? Math.max(vessel.rimMm, vessel.footMm ?? 0) : vessel.rimMm) / 2;
  const b = round ? a : (vessel.rimAcrossMm ?? vessel.rimMm) / 2;
  const body = footprint === 'square' ? 4 * a * b : Math.PI * a * b;
  const handleMm = vessel.handleMm ?? 0;
  if (handleMm <= 0) return body;
  const half = (vessel.handleWidthMm ?? ASSUMED_HANDLE_WIDTH_MM) / 2;
  const beyond = vessel.rimMm / 2 + handleMm;
  const strips = 200;
  let handle = 0;
  for (let i = 0; i < strips; i += 1) {
    const y = half * ((2 * i + 1) / strips - 1);
    const edge = footprint === 'square' ? a : a * Math.sqrt(Math.max(0, 1 - square(y / b)));
    const tip =
      vessel.handleTip === 'round' ? beyond - half + Math.sqrt(half * half - y * y) : beyond;
    handle += (Math.max(0, tip - edge) * 2 * half) / strips;
  }
  return body + handle;
}

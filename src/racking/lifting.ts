/**
 * The revised NIOSH lifting equation for one stated lift of a rack.
 *
 * Source: Waters, Putz-Anderson & Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS
 * (NIOSH) 94-110. It is a caution, no permit: local law on manual handling goes before it.
 */
export type Coupling = 'good' | 'fair' | 'poor';

export interface Lift {
  readonly loadKg: number;
  /** Hands ahead of the ankles at the origin, cm, and at the destination; absent: as at the origin. */
  readonly hCm: number;
  readonly hDestCm?: number | undefined;
  /** Height of the hands above the floor, cm. */
  readonly vOriginCm: number;
  readonly vDestCm: number;
  /** Twist away from straight ahead, degrees; absent: 0. */
  readonly aDeg?: number | undefined;
  readonly aDestDeg?: number | undefined;
  /** Lifts a minute, averaged over 15 minutes; absent: 0.2, the least the table has. */
  readonly perMinute?: number | undefined;
  /** How long the work goes on; absent: an hour or less. */
  readonly hours?: 1 | 2 | 8 | undefined;
  /** Grip; absent: fair, as on the handholds of a rack. */
  readonly coupling?: Coupling | undefined;
}

export interface LiftEnd {
  readonly multipliers: {
    readonly hm: number;
    readonly vm: number;
    readonly dm: number;
    readonly am: number;
    readonly fm: number;
    readonly cm: number;
  };
  /** Recommended weight limit, in the unit of the load. */
  readonly rwl: number;
  /** Load over that limit; null where the limit is 0, so that no load is advised. */
  readonly liftingIndex: number | null;
}

export interface LiftAdvice {
  readonly origin: LiftEnd;
  readonly destination: LiftEnd;
  /** The worse of the two; null where either advises no load. */
  readonly liftingIndex: number | null;
  readonly caution: string;
}

/** Frequency multipliers of 94-110, table 5: lifts a minute, then hours of work. `lowEnds`: the last one for hands below 75 cm. */
const PER_MINUTE = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15];
const FREQUENCY = {
  1: {
    values: [
      1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31,
      0.28,
    ],
    lowEnds: 12,
  },
  2: {
    values: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21],
    lowEnds: 10,
  },
  8: {
    values: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13],
    lowEnds: 8,
  },
} as const;

const COUPLING = { good: [1, 1], fair: [0.95, 1], poor: [0.9, 0.9] } as const;

/** The equation's constants in one system of units. */
interface Units {
  readonly constant: number;
  readonly nearest: number;
  readonly farthest: number;
  readonly knuckle: number;
  readonly perHeight: number;
  readonly highest: number;
  readonly perDistance: number;
  readonly shortest: number;
  readonly longest: number;
}
const METRIC: Units = {
  constant: 23,
  nearest: 25,
  farthest: 63,
  knuckle: 75,
  perHeight: 0.003,
  highest: 175,
  perDistance: 4.5,
  shortest: 25,
  longest: 175,
};
const US: Units = {
  constant: 51,
  nearest: 10,
  farthest: 25,
  knuckle: 30,
  perHeight: 0.0075,
  highest: 70,
  perDistance: 1.8,
  shortest: 10,
  longest: 70,
};

/** Between the table's frequencies in a straight line; 0 past its end. */
function frequencyMultiplier(perMinute: number, hours: 1 | 2 | 8, low: boolean): number {
  const { values, lowEnds } = FREQUENCY[hours];
  const last = low ? lowEnds : PER_MINUTE[values.length - 1]!;
  if (perMinute <= PER_MINUTE[0]!) return values[0]!;
  if (perMinute > last) return 0;
  const i = PER_MINUTE.findIndex((f) => f >= perMinute);
  const [f0, f1] = [PER_MINUTE[i - 1]!, PER_MINUTE[i]!];
  return values[i - 1]! + ((values[i]! - values[i - 1]!) * (perMinute - f0)) / (f1 - f0);
}

/** One end of a lift, in the units of the constants used. */
interface Grip {
  readonly h: number;
  readonly v: number;
  readonly twist: number;
}
type Work = Pick<Lift, 'perMinute' | 'hours' | 'coupling'>;

function endOf(load: number, grip: Grip, travel: number, work: Work, units: Units): LiftEnd {
  const { h, v, twist } = grip;
  const low = v < units.knuckle;
  const multipliers = {
    hm: h > units.farthest ? 0 : Math.min(1, units.nearest / h),
    vm: v < 0 || v > units.highest ? 0 : 1 - units.perHeight * Math.abs(v - units.knuckle),
    dm:
      travel > units.longest ? 0 : travel <= units.shortest ? 1 : 0.82 + units.perDistance / travel,
    am: twist > 135 ? 0 : 1 - 0.0032 * twist,
    fm: frequencyMultiplier(work.perMinute ?? 0.2, work.hours ?? 1, low),
    cm: COUPLING[work.coupling ?? 'fair'][low ? 0 : 1],
  };
  const rwl = Object.values(multipliers).reduce((product, m) => product * m, units.constant);
  return { multipliers, rwl, liftingIndex: rwl > 0 ? load / rwl : null };
}

function advise(load: number, from: Grip, to: Grip, work: Work, units: Units): LiftAdvice {
  const travel = Math.abs(to.v - from.v);
  const origin = endOf(load, from, travel, work, units);
  const destination = endOf(load, to, travel, work, units);
  const both = [origin.liftingIndex, destination.liftingIndex];
  const liftingIndex = both.includes(null) ? null : Math.max(...both.map((index) => index!));
  return { origin, destination, liftingIndex, caution: cautionOf(liftingIndex) };
}

function cautionOf(index: number | null): string {
  const found =
    index === null
      ? 'advised against by the NIOSH lifting equation, whatever its weight.'
      : index <= 1
        ? `within the limit of the NIOSH lifting equation for nearly all healthy workers (index ${index.toFixed(1)}).`
        : `above the limit of the NIOSH lifting equation (index ${index.toFixed(1)}): load fewer pieces, lift nearer to the body, or slide the rack.`;
  return `${found} Follow your local rules on manual handling first.`;
}

const twists = (lift: Pick<Lift, 'aDeg' | 'aDestDeg'>): readonly [number, number] => {
  const from = Math.abs(lift.aDeg ?? 0);
  return [from, lift.aDestDeg === undefined ? from : Math.abs(lift.aDestDeg)];
};

/** Recommended weight limit and lifting index at both ends of a lift; kg, cm and degrees. */
export function nioshLift(lift: Lift): LiftAdvice {
  const [from, to] = twists(lift);
  const origin = { h: lift.hCm, v: lift.vOriginCm, twist: from };
  return advise(
    lift.loadKg,
    origin,
    { h: lift.hDestCm ?? lift.hCm, v: lift.vDestCm, twist: to },
    lift,
    METRIC,
  );
}

/** The same lift measured in pounds and inches. */
export interface LiftUs extends Pick<
  Lift,
  'aDeg' | 'aDestDeg' | 'perMinute' | 'hours' | 'coupling'
> {
  readonly loadLb: number;
  readonly hIn: number;
  readonly hDestIn?: number | undefined;
  readonly vOriginIn: number;
  readonly vDestIn: number;
}

/** `nioshLift` in pounds and inches, with the constants the manual has for them. */
export function nioshLiftUs(lift: LiftUs): LiftAdvice {
  const [from, to] = twists(lift);
  const origin = { h: lift.hIn, v: lift.vOriginIn, twist: from };
  return advise(
    lift.loadLb,
    origin,
    { h: lift.hDestIn ?? lift.hIn, v: lift.vDestIn, twist: to },
    lift,
    US,
  );
}

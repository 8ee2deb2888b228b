/** What is answered about racks. */
import type { CountBound } from '../../racking/bound.js';
import type { Binding, RackLayout } from '../../racking/layout.js';
import type { Answer } from '../size/answer.js';

/** A lift of a loaded rack: hands ahead of the ankles, heights of the hands above the floor, cm. */
export interface StatedLift {
  readonly reachCm: number;
  readonly fromCm: number;
  readonly toCm: number;
}

export interface RackLine {
  readonly ware: string;
  readonly name: string;
  readonly rack: string;
  readonly rackName: string;
  /** Glass, which is kept apart from its neighbours. */
  readonly glass: boolean;
  /** The kind that the scenario washes it in, and the kind with fewest loads. */
  readonly used: boolean;
  readonly planned: boolean;
  readonly pieces: number;
  /** What no arrangement of one layer can exceed, and by which bound; null for loose cutlery. */
  readonly most: CountBound | null;
  /** True where a count on edge is above what is usual and rests on an assumed gap: load one rack and count. */
  readonly tryOne: boolean;
  readonly areaShare: number;
  readonly loadsPer100: number | null;
  readonly binds: Binding;
  /** Pieces with all handles straight, and all at 45°; null where it makes no difference to ask. */
  readonly straight: number | null;
  readonly at45: number | null;
  readonly slackMm: number | null;
  readonly cliff: RackLayout['cliff'];
  /** Extenders a compartment rack needs for a piece so tall. */
  readonly extenders: number;
  /** Rack and pieces; null where the mass of a piece is not known, and then no index either. */
  readonly loadedKg: number | null;
  /** NIOSH lifting index; null where no load is advised, or the mass is not known. */
  readonly liftingIndex: number | null;
  readonly problems: readonly string[];
}

/**
 * What a house needs with its cups as they are and with every rim some millimetres wider. `fullRacksADay`: racks the cups alone
 * would take, were every rack full. `racks`: the kind each cup goes in; where the wider cup no longer does, the one with fewest loads.
 */
export interface TwoShapes {
  readonly widerByMm: number;
  readonly shapes: readonly {
    readonly wider: boolean;
    readonly pieces: number;
    readonly cost: number;
    readonly racksADay: number;
    readonly fullRacksADay: number;
    readonly handlingMinutes: number;
    readonly perRack: Readonly<Record<string, number>>;
    readonly racks: Readonly<Record<string, string>>;
  }[];
}

export interface RacksAnswer {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly RackLine[];
  /** Ware whose shape is not known: pieces a rack are given or typical. */
  readonly given: readonly {
    readonly ware: string;
    readonly name: string;
    readonly rack: string;
    readonly pieces: number;
    readonly from: 'given' | 'class';
  }[];
  /** Racks a day, were every rack full: in the racks the scenario uses (null: some ware does not go in), and in those of the plan. */
  readonly plan: {
    readonly usedRacksADay: number | null;
    readonly racksADay: number;
    readonly fewest: boolean;
  };
  readonly lift: StatedLift;
  /** What the heaviest rack in use asks for; null: no mass is known. */
  readonly liftCaution: string | null;
  readonly washing: Pick<Answer, 'loads' | 'busy'> & {
    readonly openHours: number;
    /** Where there are several kinds of day, the name of the one that is told of. */
    readonly kindOfDay: string | null;
    /** Mean minutes of a use at each place, by ware. */
    readonly places: readonly string[];
    readonly minutes: readonly {
      readonly ware: string;
      readonly name: string;
      readonly minutes: readonly number[];
    }[];
    /** Mean share of machines and hands busy, and racks waiting, from each quarter hour on. */
    readonly quarters: readonly {
      readonly minute: number;
      readonly machines: number;
      readonly hands: number;
      readonly racksWaiting: number;
    }[];
    /** Minutes from opening at which racks begin to wait and no longer do; null: they never wait to speak of. */
    readonly queue: { readonly fromMinute: number; readonly toMinute: number } | null;
  };
  readonly twoShapes: TwoShapes | null;
}

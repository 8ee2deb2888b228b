/**
 * Arbitrary small cafés and listed days.
 *
 * Small on purpose: few pieces, few parties, and times on a grid of half minutes (a minute now and then
 * cut by a millisecond), so that events often fall into the same millisecond and the order within it is
 * put to the test.
 */
import fc from 'fast-check';
import type {
  ArrivalStep,
  CafeModel,
  ClearingModel,
  DrinkModel,
  FamilyModel,
  MachineModel,
  OtherLoadsModel,
  RackKindModel,
  SeatsModel,
  Setting,
  WareModel,
} from '../../src/cafe/model.js';
import type { ListedDay, ListedParty } from '../../src/cafe/listed-day.js';
import type { DurationLaw } from '../../src/engine/durations.js';

const HALF_MINUTE = 30_000;
const CLOSING_HALVES = 24;

/** Mostly the first, now and then the second. */
const mostly = <T>(usual: fc.Arbitrary<T>, rare: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.oneof({ weight: 3, arbitrary: usual }, { weight: 1, arbitrary: rare });

const halves = (most: number): fc.Arbitrary<number> =>
  mostly(fc.integer({ min: 0, max: most }), fc.constant(0));

const constant = (most: number): fc.Arbitrary<DurationLaw> =>
  halves(most).map((n) => ({ law: 'constant', ms: n * HALF_MINUTE }));

/** A limit, or none. */
const limit = (most: number): fc.Arbitrary<number | null> =>
  fc.option(fc.integer({ min: 1, max: most }), { nil: null, freq: 3 });

const setting = (wares: number): fc.Arbitrary<Setting> =>
  fc.array(fc.nat(wares - 1), { minLength: 1, maxLength: 3 });

/** Settings to fall back on; the empty one is a takeaway cup. */
const fallBacks = (wares: number): fc.Arbitrary<Setting[]> =>
  mostly(
    fc.array(setting(wares), { maxLength: 2 }),
    fc.array(mostly(setting(wares), fc.constant([])), { maxLength: 2 }),
  );

const machine: fc.Arbitrary<MachineModel> = fc
  .record({
    racks: fc.integer({ min: 1, max: 3 }),
    loading: constant(2),
    cycle: constant(6),
    unloading: constant(2),
  })
  .map((part) => ({ id: 'machine', ...part, warmUpMs: 0, down: [], breakdown: null }));

const steps = fc
  .array(
    fc.record({
      halves: fc.integer({ min: 1, max: CLOSING_HALVES }),
      perHour: fc.constantFrom(0, 10, 20, 30, 40, 60),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((rows) => {
    const ends = [...new Set(rows.map((row) => row.halves))].sort((a, b) => a - b);
    return ends.map((end, i) => ({
      untilMs: (i === ends.length - 1 ? CLOSING_HALVES : end) * HALF_MINUTE,
      racksPerMs: rows[i]!.perHour / 3_600_000,
    }));
  });

const otherLoads: fc.Arbitrary<OtherLoadsModel | null> = fc.option(
  fc.record({
    steps,
    arrivals: fc.constant<'regular'>('regular'),
    goes: fc.constantFrom<OtherLoadsModel['goes']>('first', 'inTurn', 'last'),
  }),
  { nil: null, freq: 2 },
);

const seats: fc.Arbitrary<SeatsModel> = fc.record({
  count: limit(5),
  whenFull: fc.constantFrom<SeatsModel['whenFull']>('leave', 'takeaway', 'wait', 'wait'),
  waitLimitMs: halves(6).map((n) => n * HALF_MINUTE),
  heldUntilCleared: fc.boolean(),
});

/** A habit of 1 to `most` half minutes: constant, or varying about that mean. */
const habit = (most: number): fc.Arbitrary<DurationLaw> =>
  fc
    .tuple(fc.integer({ min: 1, max: most }), fc.boolean())
    .map(([n, varies]) =>
      varies
        ? { law: 'gamma', meanMs: n * HALF_MINUTE, sdMs: 0.3 * n * HALF_MINUTE }
        : { law: 'constant', ms: n * HALF_MINUTE },
    );

const clearing: fc.Arbitrary<ClearingModel> = fc.record({
  every: fc.option(habit(8), { nil: null, freq: 2 }),
  clearers: limit(2),
  tripPieces: limit(4),
  trip: constant(4),
  whenDirty: fc.option(fc.integer({ min: 1, max: 6 }), { nil: null, freq: 1 }),
  forSeats: fc.boolean(),
});

/** Arrivals of a drawn day; listed days do not look at them. */
const arrivals: readonly ArrivalStep[] = [
  { untilMs: (CLOSING_HALVES / 3) * HALF_MINUTE, partiesPerMs: 0.7 / 60_000 },
  { untilMs: CLOSING_HALVES * HALF_MINUTE, partiesPerMs: 1.2 / 60_000 },
];

/** Which cafés to draw. */
export interface CafeOptions {
  /** Whether wares may have a low-water mark: a rule that looks at the clean count. */
  readonly lowWater: boolean;
  /** Make washing the narrow place: few machines and racks, several families, nothing scarce before the bench. */
  readonly washUp?: boolean;
}

/** A café of one to four wares in one to three families on one or two kinds of rack, constant durations only. */
export function smallCafe({ lowWater, washUp = false }: CafeOptions): fc.Arbitrary<CafeModel> {
  const least = washUp ? 2 : 1;
  const counts = fc.record({
    wares: fc.integer({ min: least, max: 4 }),
    families: fc.integer({ min: least, max: 3 }),
    kinds: fc.integer({ min: 1, max: 2 }),
    drinks: fc.integer({ min: least, max: 3 }),
  });
  return counts.chain((n) =>
    fc.record({
      ware: fc.tuple(...Array.from({ length: n.wares }, (_, i) => ware(i, n.families, lowWater))),
      families: fc.tuple(
        ...Array.from({ length: n.families }, (_, i): fc.Arbitrary<FamilyModel> =>
          fc.record({ id: fc.constant(`family ${i}`), rackKind: fc.nat(n.kinds - 1) }),
        ),
      ),
      rackKinds: fc.tuple(
        ...Array.from({ length: n.kinds }, (_, i): fc.Arbitrary<RackKindModel> =>
          fc.record({
            id: fc.constant(`kind ${i}`),
            owned: washUp ? fc.integer({ min: 1, max: 4 }) : limit(3),
          }),
        ),
      ),
      menu: fc.tuple(...Array.from({ length: n.drinks }, (_, i) => drink(i, n.drinks, n.wares))),
      seats: washUp ? seats.map((rules) => ({ ...rules, count: null })) : seats,
      makers: washUp ? fc.constant(null) : limit(3),
      clearing,
      washing: fc.record({
        machines: washUp
          ? fc.array(machine, { minLength: 1, maxLength: 2 })
          : fc.option(fc.array(machine, { minLength: 1, maxLength: 2 }), { nil: null, freq: 4 }),
        everyMachine: machine,
        hands: limit(2),
        partLoadWait: fc.option(mostly(constant(6), habit(6)), { nil: null, freq: 2 }),
        partLoadsEvery: fc.option(habit(10), { nil: null, freq: 1 }),
        partLoadFrom: fc.option(fc.constantFrom(0, 1 / 3, 0.4, 0.5, 2 / 3, 0.8, 1), {
          nil: null,
          freq: 1,
        }),
        otherLoads,
      }),
      closingMs: fc.constant(CLOSING_HALVES * HALF_MINUTE),
      arrivals: fc.constant(arrivals),
      dayFactorCv: fc.constantFrom(0, 0.2),
      guests: fc.record({
        partySize: fc.constantFrom([1], [0.5, 0.5], [0.4, 0.4, 0.2]),
        staysIn: fc.constantFrom(1, 0.7),
        drinksEach: fc.constantFrom(0.9, 1, 1.3),
        secondDrink: fc.constantFrom(0, 0.3),
        dwell: fc.array(constant(12), { minLength: 1, maxLength: 2 }),
      }),
    }),
  );
}

function ware(i: number, families: number, lowWater: boolean): fc.Arbitrary<WareModel> {
  return fc.record({
    id: fc.constant(`ware ${i}`),
    family: fc.nat(families - 1),
    perRack: fc.integer({ min: 1, max: 6 }),
    drying: constant(4),
    lowWater: lowWater
      ? fc.option(fc.integer({ min: 0, max: 2 }), { nil: null, freq: 2 })
      : fc.constant(null),
    unitCost: fc.integer({ min: 1, max: 9 }),
    polishing: fc.constant(null),
  });
}

function drink(i: number, drinks: number, wares: number): fc.Arbitrary<DrinkModel> {
  return fc.record({
    id: fc.constant(`drink ${i}`),
    share: fc.constant(1 / drinks),
    setting: mostly(
      setting(wares),
      fc.oneof({ weight: 9, arbitrary: setting(wares) }, { weight: 1, arbitrary: fc.constant([]) }),
    ),
    fallBacks: fallBacks(wares),
    making: constant(3),
  });
}

function party(menu: readonly { readonly id: string }[]): fc.Arbitrary<ListedParty> {
  const id = fc.constantFrom(...menu.map((kind) => kind.id));
  const make = halves(3).map((h) => h / 2);
  return fc
    .record({
      minute: fc.integer({ min: 0, max: CLOSING_HALVES - 1 }).map((h) => h / 2),
      size: fc.integer({ min: 1, max: 3 }),
      staysIn: fc.oneof(
        { weight: 6, arbitrary: fc.constant(true) },
        { weight: 1, arbitrary: fc.constant(false) },
      ),
      dwellMinutes: halves(16).map((h) => h / 2),
      drinks: mostly(
        fc.array(fc.record({ drink: id, makeMinutes: make }), { minLength: 1, maxLength: 4 }),
        fc.array(fc.record({ drink: id, makeMinutes: make }), { maxLength: 2 }),
      ),
      seconds: fc.array(
        fc.record({
          drink: id,
          makeMinutes: make,
          shareOfDwell: fc.constantFrom(0, 0.25, 0.5, 0.75, 0.99999999, 1 / 3),
        }),
        { maxLength: 2 },
      ),
    })
    .map((p) => ({ ...p, seconds: p.staysIn ? p.seconds.slice(0, p.size) : [] }));
}

/** A listed day of up to `most` parties, in order of arrival, all before closing. */
function smallDay(
  menu: readonly { readonly id: string }[],
  least = 1,
  most = 10,
): fc.Arbitrary<ListedDay> {
  return fc
    .array(party(menu), { minLength: least, maxLength: most, size: 'max' })
    .map((parties) => ({ parties: parties.toSorted((a, b) => a.minute - b.minute) }));
}

/** A stock of a few pieces a ware. */
export function smallStock(wares: number, most = 6): fc.Arbitrary<number[]> {
  return fc.array(fc.nat(most), { minLength: wares, maxLength: wares });
}

/** A café, a listed day for it and a stock. */
export function smallRush(
  options: CafeOptions,
): fc.Arbitrary<{ model: CafeModel; day: ListedDay; stock: number[] }> {
  const [least, most, pieces] = options.washUp === true ? [8, 14, 12] : [1, 10, 6];
  return smallCafe(options).chain((model) =>
    fc.record({
      model: fc.constant(model),
      day: smallDay(model.menu, least, most),
      stock: smallStock(model.ware.length, pieces),
    }),
  );
}

/** Random times with the same mean in place of the constant ones, for trips, drying and machines. */
function withDrawnTimes(model: CafeModel): CafeModel {
  const drawn = (law: DurationLaw): DurationLaw =>
    law.law === 'constant' ? { law: 'exponential', meanMs: law.ms } : law;
  const drawnMachine = (m: MachineModel): MachineModel => ({
    ...m,
    loading: drawn(m.loading),
    cycle: drawn(m.cycle),
    unloading: drawn(m.unloading),
  });
  const { washing } = model;
  return {
    ...model,
    ware: model.ware.map((row) => ({ ...row, drying: drawn(row.drying) })),
    clearing: { ...model.clearing, trip: drawn(model.clearing.trip) },
    washing: {
      ...washing,
      machines: washing.machines?.map(drawnMachine) ?? null,
      everyMachine: drawnMachine(washing.everyMachine),
    },
  };
}

/**
 * A café with any of the rules the plain model leaves out: hands with another job, polishing, machines
 * that warm up, are down or break down, other loads at random, drawn times.
 */
export function wholeCafe(options: CafeOptions): fc.Arbitrary<CafeModel> {
  const extras = fc.record({
    drawn: fc.boolean(),
    hands: fc.constantFrom<CafeModel['washing']['hands']>(null, 1, 'clearers', 'makers'),
    polishing: fc.option(
      fc.integer({ min: 0, max: 20 }).map((s): DurationLaw => ({ law: 'constant', ms: s * 1000 })),
      { nil: null },
    ),
    warmUpMs: fc.constantFrom(0, 0, 4 * HALF_MINUTE),
    down: fc.constantFrom<MachineModel['down']>([], [[5 * HALF_MINUTE, 9 * HALF_MINUTE]]),
    breakdown: fc.constantFrom<MachineModel['breakdown']>(null, {
      until: { law: 'exponential', meanMs: 8 * HALF_MINUTE },
      repair: { law: 'exponential', meanMs: 3 * HALF_MINUTE },
    }),
    others: fc.constantFrom<OtherLoadsModel['arrivals']>('regular', 'poisson'),
  });
  return fc
    .tuple(smallCafe(options), extras)
    .map(([model, { drawn, hands, polishing, warmUpMs, down, breakdown, others }]) => {
      const { washing } = model;
      const whole: CafeModel = {
        ...model,
        // The first ware alone is polished, so that others overtake it.
        ware: model.ware.map((row, w) => (w === 0 ? { ...row, polishing } : row)),
        washing: {
          ...washing,
          hands,
          machines: washing.machines?.map((m) => ({ ...m, warmUpMs, down, breakdown })) ?? null,
          otherLoads: washing.otherLoads && { ...washing.otherLoads, arrivals: others },
        },
      };
      return drawn ? withDrawnTimes(whole) : whole;
    });
}

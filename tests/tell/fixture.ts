/**
 * An answer as a study might give it, made up: a house of 44 seats on a weekday morning. The curves
 * are smooth shapes, not simulated; only their form matters here.
 */
import type { Answer, Evidence } from '../../src/questions/size/answer.js';
import type { ReportContext } from '../../src/tell/context.js';
import type { RiskCurve } from '../../src/questions/size/charts/risk-against-stock.js';

const PLACES = [
  'in use',
  'on the table, dirty',
  'carried',
  'on the bench',
  'racked',
  'in the machine',
  'drying',
  'being polished',
];
const STEP = 5;
const STEPS = 55;

const bell = (minute: number, middle: number, width: number): number =>
  Math.exp(-(((minute - middle) / width) ** 2) / 2);
const shape = (minute: number, late: number): number =>
  bell(minute, 100 + late, 48) + 0.25 * bell(minute, 40 + late, 25);
const minutes = Array.from({ length: STEPS }, (_, i) => i * STEP);

const wares = [
  {
    ware: 'medium-cup',
    name: 'Medium cup',
    pieces: 62,
    alone: 58,
    low: 56,
    high: 60,
    unitCost: 5.5,
  },
  { ware: 'large-cup', name: 'Large cup', pieces: 34, alone: 31, low: 30, high: 33, unitCost: 6.6 },
  { ware: 'tumbler', name: 'Tumbler', pieces: 21, alone: 19, low: 18, high: 20, unitCost: 2.2 },
  { ware: 'saucer', name: 'Saucer', pieces: 92, alone: 88, low: 86, high: 91, unitCost: 4.4 },
  {
    ware: 'teaspoon',
    name: 'Teaspoon',
    pieces: 95,
    alone: 90,
    low: 88,
    high: null,
    unitCost: 1.32,
  },
];
const weights = [38, 20, 12, 58, 60];

export const fixtureEvidence = (): Evidence => ({
  days: 200,
  stepMinutes: STEP,
  places: PLACES,
  mean: weights.map((weight) =>
    minutes.map((minute) =>
      [0.6, 0.1, 0.02, 0.09, 0.05, 0.03, 0.11, 0].map((share, place) =>
        minute === 0 ? 0 : weight * share * shape(minute, place * 5) * (minute > 258 ? 0 : 1),
      ),
    ),
  ),
  offShelf: wares.map(({ ware }, i) => {
    const at = (factor: number): number[] =>
      minutes.map((minute) =>
        Math.round(weights[i]! * factor * shape(minute, 8) * (minute > 258 ? 0 : 1)),
      );
    return { ware, q05: at(0.7), q50: at(1), q95: at(1.35) };
  }),
  guests: {
    partiesArriving: minutes.map((minute) => (minute < 180 ? 2.8 * shape(minute, -15) : 0)),
    seatsTaken: minutes.map((minute) => 36 * shape(minute, 5) * (minute > 250 ? 0 : 1)),
    waitingForSeat: minutes.map((minute) => 0.4 * bell(minute, 100, 25)),
    drinksWaiting: minutes.map((minute) => 3.5 * bell(minute, 90, 25)),
    racksWaiting: minutes.map((minute) => 1.6 * bell(minute, 120, 30)),
    machinesBusy: minutes.map((minute) => 0.86 * bell(minute, 120, 55)),
    makersBusy: minutes.map((minute) => 1.75 * bell(minute, 90, 50)),
    handsBusy: minutes.map((minute) => 0.41 * bell(minute, 120, 55)),
    clearersBusy: minutes.map((minute) => 0.5 * bell(minute, 115, 60)),
  },
});

const fixtureTightest = (): Answer['tightest'] => ({
  day: 17,
  minute: 108,
  ware: 'medium-cup',
  places: fixtureEvidence().places,
  pieces: wares.map(({ ware }, i) => ({
    ware,
    counts: [0.6, 0.1, 0.02, 0.09, 0.05, 0.03, 0.11, 0].map((share) =>
      Math.round(share * weights[i]! * 1.5),
    ),
  })),
});

const namesOf = (rename: (id: string) => string | undefined) =>
  wares.map((line) => ({
    ...line,
    name: rename(line.ware) ?? line.name,
    aloneLow: line.low,
    aloneHigh: line.high,
  }));

/** @param rename other names for ware, to try hostile ones */
export function fixtureAnswer(
  rename: (id: string) => string | undefined = () => undefined,
  scenario = 'Tern & Tide',
): Answer {
  const stock = namesOf(rename);
  return {
    scenario,
    seed: '1',
    currency: 'EUR',
    level: 0.95,
    days: { chosenOn: 2000, certifiedOn: 4000 },
    certified: { level: 0.9538, low: 0.9468, high: 0.9601, confidence: 0.95 },
    stock: stock.map((line) => ({ ...line, have: 0, add: line.pieces })),
    busy: { machines: 0.612, makers: 0.703, seats: 0.55, clearers: 0.402, hands: null },
    guests: {
      served: 188.4,
      turnedAway: 6.2,
      left: 4.1,
      takeawayInstead: 2.1,
      seated: 84.3,
      tookAway: 104.1,
      parts: {
        servedInHouse: 84.3,
        tookAwayAsPlanned: 104.1,
        tookAwayForWantOfSeat: 2.1,
        left: 4.1,
      },
      arrived: 194.6,
    },
    warnings: [
      {
        code: 'machine-busy',
        message:
          'The washing machine is busy 86 % of the busiest hour: a breakdown or a slower hand would leave no time to catch up.',
        path: 'washing.machines',
      },
      { code: 'turned-away', message: '3 % of guests are turned away from a seat.', path: '' },
    ],
    cost: stock.reduce((sum, { pieces, unitCost }) => sum + pieces * unitCost, 0),
    spend: stock.reduce((sum, { pieces, unitCost }) => sum + pieces * unitCost, 0),
    seats: 44,
    seatsHeldBusiest: 0.8,
    overloads: [{ what: 'makers', load: 1.12, fromMinute: 75, wouldDo: 3 }],
    minutes: {
      counterWait: 1.8,
      loop: stock.map(({ ware }, i) => ({
        ware,
        minutes: 61 + i * 2,
        places: [38, 5, 1, 2, 4, 4, 7, 0],
      })),
    },
    loads: {
      aDay: 17.3,
      racksADay: 17.3,
      fill: 0.81,
      handlingMinutes: 23,
      polishingMinutes: 0,
      racksNeeded: [{ kind: 'open', racks: 4 }],
    },
    uses: stock.map(({ ware }, i) => ({ ware, aDay: weights[i]! * 2 })),
    drinks: { houseDrinks: 96.2, takeawayDrinks: 114.2 },
    takeawayCups: { ordered: 114.2, asFallBack: 0.1, byDrink: [] },
    tightest: fixtureTightest(),
    evidence: fixtureEvidence(),
  };
}

export function fixtureGivenStock(): Answer {
  return {
    ...fixtureAnswer(),
    certified: null,
    days: { chosenOn: 2000, certifiedOn: 0 },
    rushLevel: { level: 0.731, low: 0.711, high: 0.75, confidence: 0.95 },
    fillRate: 0.9874,
    drinksShort: [
      { ware: 'medium-cup', aDay: 1.42 },
      { ware: 'saucer', aDay: 0.3 },
    ],
    firstShortMinute: { median: 96, earliest: 61 },
  };
}

export function fixtureContext(
  rename: (id: string) => string | undefined = () => undefined,
): ReportContext {
  const kinds = ['cup', 'cup', 'glass', 'saucer', 'spoon'] as const;
  return {
    locale: 'en-IE',
    currency: 'EUR',
    openingMinute: 7 * 60,
    openMinutes: 180,
    seats: 44,
    ware: namesOf(rename).map(({ ware, name }, i) => ({ id: ware, name, kind: kinds[i]! })),
    machines: [{ name: 'Undercounter machine', sanitises: 'hot' }],
    capacity: { machines: 1, makers: 2, hands: null, clearers: 1 },
    hotDrinks: true,
    inputs: [
      {
        path: 'seats.count',
        value: '44',
        basis: 'measured',
        range: null,
        source: 'counted',
        origin: 'file',
      },
      {
        path: 'guests.dwell',
        value: 'lognormal, mean 42 min, sd 18 min',
        basis: 'assumed',
        range: ['mean 32 min', 'mean 55 min'],
        source: 'from memory',
        origin: 'default',
      },
      {
        path: 'guests.staysIn',
        value: '35 %',
        basis: 'assumed',
        range: ['22 %', '77 %'],
        source: 'surveys of about 2010 and 2020',
        origin: 'file',
      },
      {
        path: 'guests.drinksEach',
        value: '1.1',
        basis: 'practice',
        range: ['1', '1.4'],
        source: 'common practice, no source',
        origin: 'default',
      },
      {
        path: 'washing.machines[0].cycle',
        value: '120 s',
        basis: 'published',
        range: ['90 s', '240 s'],
        source: 'common range',
        origin: 'default',
      },
      {
        path: 'washing.machines[0].water',
        value: '3.3 l',
        basis: 'published',
        range: ['2.3 l', '7.6 l'],
        source: 'a public efficiency standard',
        origin: 'default',
      },
    ],
    version: '0.1.0',
  };
}

/** A curve of risk against stock, smooth and falling; a piece costs 3. */
export const fixtureRisk = (): RiskCurve => ({
  points: Array.from({ length: 31 }, (_, i) => {
    const stock = 244 + 4 * i;
    const risk = 1 / (1 + Math.exp((stock - 276) / 9.3));
    const half = 1.96 * Math.sqrt((risk * (1 - risk)) / 1000) + 0.002;
    return {
      stock,
      cost: 3 * stock,
      risk,
      low: Math.max(0, risk - half),
      high: Math.min(1, risk + half),
    };
  }),
  chosen: 304,
  level: 0.95,
});

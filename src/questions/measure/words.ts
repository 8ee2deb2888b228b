/** What measuring says, in words. Arguments are ready-made text. */
import type { PartId } from '../../measuring/sheet.js';

interface PartWords {
  readonly title: string;
  /** How it is filled in. */
  readonly how: string;
  /** Titles of the columns on paper, in the order of the file's. */
  readonly columns: readonly string[];
}

export const say = {
  heading: 'What to measure on a first morning',
  sheet: 'Sheet of a morning',
  lead: (pieces: string, after: string): string =>
    `With what is known now, the stock lies between ${pieces} pieces. One morning with this sheet should narrow that to between ${after}.`,
  nothing:
    'No input of this café that a sheet can measure moves the stock; there is nothing to count.',
  factor: (share: string): string =>
    `In money that is ${share} of the range as it is now. This assumes that errors of the inputs are independent, and that each measured value lies within its 95 % interval.`,
  second: (after: string, share: string): string =>
    `A second morning with the same sheet should narrow it to between ${after} (${share} of the range as it is now, in money); read both together.`,
  worth: 'What each part of the sheet is worth by itself',
  part: 'Part',
  narrows: 'Narrows the range by',
  takes: 'Takes',
  says: 'Tells you',
  takesTally: (hours: string): string => `one person for ${hours}`,
  takesMinutes: (minutes: string): string => `about ${minutes}`,
  estimate: 'The times are our own estimate.',
  left: (parts: string): string =>
    `Not worth a morning in this café: ${parts}. Each would narrow the range by less than 1 %.`,
  leftStays: 'The timed stays stay on the sheet: without their spread the counts cannot be read.',
  swings: 'What moves the stock most',
  swingsCaption: 'Cost of all pieces with one input at an end of its plausible range',
  input: 'Input',
  low: 'Low end',
  high: 'High end',
  basis: 'Basis',
  leaves: 'Range left\nafter a morning',
  fifthOff: 'No range is given for it: tried a fifth lower and higher.',
  days: (days: string, seed: string): string =>
    `Worked out on ${days} simulated days, the same for all (seed ${seed}).`,
  next: 'Write the sheet with --out FOLDER, fill in the CSV, and read it with --read.',

  readHeading: 'What the sheet says',
  sheetOf: (dates: readonly string[]): string =>
    dates.length === 1
      ? `the sheet of ${dates[0]!}`
      : `the sheets of ${dates.slice(0, -1).join(', ')} and ${dates.at(-1)!}, taken together`,
  readLead: (count: string, sheets: string): string =>
    `${count === '1' ? '1 input is' : `${count} inputs are`} now measured, from ${sheets}.`,
  readNone: (sheets: string): string => `Nothing changes with ${sheets}: too little was counted.`,
  another: (range: string, share: string): string =>
    `One more such morning should leave it between ${range} (in money ${share} of the range before); give all sheets at once, each with --read.`,
  agree: (compared: number): string =>
    `The mornings agree: none of the ${compared} inputs that both give differs by more than chance (all tested together at 5 %).`,
  differ: (name: string, means: string, p: string): string =>
    `${name}: ${means}. That is more than chance (p ${p}, all inputs tested together at 5 %); the range now holds what each morning says.`,
  differHeading: 'The mornings differ',
  differKinds:
    'Are they days of two kinds, such as a weekday and a Saturday? Then read each sheet into a scenario of its own, or put what differs into calendar.kinds.',
  dayFactor:
    'How much whole days differ (dayFactor) stays as it was: a till says it, a few mornings cannot.',
  replaced: (source: string): string =>
    `What the ${source} said is replaced. To use both, give both with --read to the scenario as it was before.`,
  readFactor: (before: string, after: string, share: string): string =>
    `Before, the stock lay between ${before} pieces; now between ${after} (in money ${share} of the range before).`,
  measured: 'Measured',
  value: 'Mean',
  interval: '95 % interval',
  spread: 'Standard\ndeviation',
  n: 'Number',
  law: 'Law',
  laws: 'Distributions tried: the one with the smallest AICc is used',
  fit: 'Fit',
  fits: (words: string, distance: string, p: string): string =>
    `${words} (Distance ${distance}, p = ${p}.)`,
  charts: {
    seen: 'measured',
    chosen: (law: string): string => `${law}, used`,
    title: (name: string, n: string, law: string): string =>
      `${name}: ${n} times measured, ${law} used`,
    description:
      'Steps: the share of measured times that are at most so long. Curves: the three distributions tried, fitted to the same times; the thick one fits best for its number of parameters (smallest AICc) and is used.',
    table: (name: string): string => `${name}: share of times up to so long`,
    time: (unit: string): string => (unit === 's' ? 'seconds' : 'minutes'),
    multiple: 'multiple of the mean of its party size',
    share: 'share of times',
    shares: {
      title: 'Party sizes and shares, as counted and as they were in the scenario',
      description:
        'Dots: the share that was counted; lines: its exact 95 % interval; hollow diamonds: the share that the scenario had before.',
      counted: 'counted',
      before: 'in the scenario before',
      low: 'low end',
      high: 'high end',
      axis: 'share',
      size: (guests: string): string =>
        guests === '1' ? 'Guests on their own' : `Parties of ${guests.replace('+', ' or more')}`,
    },
    notTested: 'How well it fits was not tested.',
    fits: (p: number): string =>
      p >= 0.1
        ? 'It fits: times drawn from it are often as far from it as these.'
        : p >= 0.05
          ? 'It fits fairly: times drawn from it are seldom as far from it as these.'
          : 'It fits badly: times drawn from it are hardly ever as far from it as these. Trust the mean, and look at the times one by one.',
  },
  kept: 'Kept as they were',
  notes: 'Check these',
  written: 'The new scenario has these values, marked as measured, with the sheet as their source.',
  outMissing: 'Nothing was written: give --out FOLDER for the new scenario.',
  house: 'House',
  date: 'Day',
  by: 'Counted by',
  before: 'already sitting',
  after: 'still sitting',
} as const;

export const partWords: Readonly<Record<PartId, PartWords>> = {
  tally: {
    title: 'Who comes and goes, by quarter hour',
    how: 'One mark for each party: “in” when it sits down with its drinks, “out” when it leaves, “away” when it takes its drinks with it; by guests in the party. Count all quarter hours, 0 where nobody came. First drinks: those of parties marked “in”; second drinks: all they order later. Seats taken: at the start of the quarter hour.',
    columns: ['From', 'In', 'Out', 'Away', 'First drinks', 'Second drinks', 'Seats taken'],
  },
  stays: {
    title: 'Timed stays',
    how: 'When you are free, take the next party that sits down with its drinks; never choose one that has been there for a while.',
    columns: ['Guests', 'Served at', 'Left at'],
  },
  rounds: {
    title: 'Clearing rounds',
    how: 'Every time somebody goes round, in order, also when there was little to take: when the round began; of its first trip the seconds from the bench to the bench, and the pieces carried.',
    columns: ['Began at', 'First trip, seconds', 'Pieces of first trip'],
  },
  loads: {
    title: 'Loads of the dishwasher',
    how: 'When the first piece of this rack came to the bench, when the machine was started; seconds to load, of the cycle, and to unload; pieces in the rack, and how many would fill it. Hot water and steam: keep clear of the door.',
    columns: [
      'Machine',
      'First piece at',
      'Started at',
      'Loading, s',
      'Cycle, s',
      'Unloading, s',
      'Pieces',
      'Full at',
    ],
  },
  dirty: {
    title: 'Dirty pieces at three moments',
    how: 'Count at any three moments of the rush.',
    columns: ['At', 'On tables', 'Waiting to be washed'],
  },
  ware: {
    title: 'The pieces themselves',
    how: 'Fill one to the brim and pour it into a measuring jug; lay a ruler across the rim, outside to outside.',
    columns: ['Item', 'Brim, ml', 'Rim, mm'],
  },
};

/** How long guests stay: the mean from the counts of those who come and go, the law from the timed stays. */
import { fitLaw, spreadOf, type Law, type LawFit } from '../../measuring/fit-law.js';
import type { Sheet } from '../../measuring/sheet.js';
import { SLOT_MINUTES } from '../../measuring/sheet.js';
import { stayFromCounts } from '../../measuring/stay-from-counts.js';
import type { Input } from '../../scenario/inputs.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Kept } from './answer.js';
import { FEWEST } from './fewest.js';
import { tooFew, type Found } from './found.js';
import { timesInterval } from './measured-times.js';
import { lawOf, lawWritten } from './written.js';

/** A clock shows whole minutes: a stay of none is half of one. */
const SHORTEST = 0.5;

interface ClassStay {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly n: number;
  readonly how: string;
}

export function measuredStays(
  sheets: readonly Sheet[],
  { guests }: Scenario,
  inputs: readonly Input[],
  seed: string | null,
): Found[] {
  const stays = sheets.flatMap((sheet) => sheet.stays);
  const counted = sheets.filter(({ tally }) => tally.length > 0);
  if (counted.length === 0 && stays.length === 0) return [];
  const laws = guests.dwell.map((law) => lawOf(law, 'min'));
  const shape = shapeOf(stays, laws, seed);
  const classes = laws.map((law, at) =>
    classStay(counted, stays, at, laws.length, shape.law ?? law, shape.timed),
  );
  const whole = inputs.some(({ path }) => path === 'guests.dwell');
  const lawAt = (at: number, mean: number): unknown =>
    lawWritten({ ...(shape.law ?? laws[at]!), mean }, 'min');
  if (!whole)
    return classes.map((found, at) => {
      const path = `guests.dwell.bySize.${at + 1}`;
      return 'why' in found
        ? { ...found, path }
        : measured(path, found, (mean) => lawAt(at, mean), shape);
    });
  const path = 'guests.dwell';
  if (classes.length === 1) {
    const [found] = classes as [ClassStay | Kept];
    return [
      'why' in found ? { ...found, path } : measured(path, found, (mean) => lawAt(0, mean), shape),
    ];
  }
  const good = classes.filter((one): one is ClassStay => !('why' in one));
  if (good.length < classes.length)
    return [{ ...classes.find((one): one is Kept => 'why' in one)!, path }];
  const bySize = (of: (one: ClassStay) => number): unknown => ({
    bySize: Object.fromEntries(good.map((one, at) => [String(at + 1), lawAt(at, of(one))])),
  });
  const n = good.reduce((sum, one) => sum + one.n, 0);
  const mean = (of: (one: ClassStay) => number): number =>
    good.reduce((sum, one) => sum + of(one) * one.n, 0) / n;
  return [
    {
      ...measured(
        path,
        {
          ...good[0]!,
          n,
          mean: mean((one) => one.mean),
          low: mean((one) => one.low),
          high: mean((one) => one.high),
        },
        () => null,
        shape,
      ),
      value: bySize((one) => one.mean),
      range: [bySize((one) => one.low), bySize((one) => one.high)],
      written: (to: number) => bySize((one) => (one.mean * to) / mean((each) => each.mean)),
    } as Found,
  ];
}

interface Shape {
  /** Of the timed stays over the mean of their class; null: too few, the law stays. */
  readonly law: Law | null;
  readonly timed: number | null;
  readonly fit: LawFit | null;
  readonly times: readonly number[];
}

const measured = (
  path: string,
  { mean, low, high, n, how }: ClassStay,
  law: (mean: number) => unknown,
  shape: Shape,
): Found => ({
  path,
  value: law(mean),
  range: [law(low), law(high)],
  written: law,
  how: `${how}${shape.law === null ? ', law as before' : `, law from ${shape.timed} timed stays`}`,
  n,
  mean,
  low,
  high,
  sd: shape.law === null ? null : mean * shape.law.cv,
  unit: 'min',
  law: shape.fit === null ? null : { fit: shape.fit, times: shape.times },
});

const classOf = (guests: number, classes: number): number => Math.min(guests, classes) - 1;

/** Timed stays over the mean of their class, so that all together say how stays vary. */
function shapeOf(stays: Sheet['stays'], laws: readonly Law[], seed: string | null): Shape {
  const none = { law: null, timed: null, fit: null, times: [] };
  const by = laws.map((_, at) =>
    stays
      .filter(({ guests }) => classOf(guests, laws.length) === at)
      .map(({ served, left }) => Math.max(SHORTEST, left - served)),
  );
  const means = by.map(
    (times) => times.reduce((sum, one) => sum + one, 0) / Math.max(1, times.length),
  );
  // A class with a single stay says nothing of how stays vary.
  const ratios = by.flatMap((times, at) =>
    times.length < 2 ? [] : times.map((time) => time / means[at]!),
  );
  if (ratios.length < FEWEST.times || spreadOf(ratios) === null) return none;
  const fit = fitLaw(ratios, seed);
  const used = by.filter((times) => times.length >= 2).length;
  // Each class has spent a degree of freedom on its mean, and the fit counts none of them.
  const cv =
    fit.chosen.law === 'exponential'
      ? 1
      : fit.chosen.cv * Math.sqrt(ratios.length / Math.max(1, ratios.length - used));
  return {
    law: { law: fit.chosen.law, mean: 1, cv },
    timed: ratios.length - used + 1,
    fit,
    times: ratios,
  };
}

function classStay(
  counted: readonly Sheet[],
  stays: Sheet['stays'],
  at: number,
  classes: number,
  law: Law,
  timed: number | null,
): ClassStay | Kept {
  const ofClass = (counts: readonly number[]): number =>
    counts.reduce((sum, count, size) => sum + (classOf(size + 1, classes) === at ? count : 0), 0);
  if (classes > (counted[0]?.sizes ?? classes))
    return tooFew('', 0, FEWEST.stays, 'parties of this size on the sheet');
  const mornings = counted.map(({ tally, before }) => ({
    slotMinutes: SLOT_MINUTES,
    came: tally.map((slot) => ofClass(slot.came)),
    went: tally.map((slot) => ofClass(slot.went)),
    before: ofClass(before),
  }));
  const parties = mornings.flatMap(({ came }) => came).reduce((sum, one) => sum + one, 0);
  const stay = parties < FEWEST.stays ? null : stayFromCounts(mornings, law.cv, timed);
  if (stay !== null)
    return {
      mean: stay.mean,
      low: stay.low,
      high: stay.high,
      n: parties,
      how: `${parties} parties counted in and out`,
    };
  const own = stays
    .filter(({ guests }) => classOf(guests, classes) === at)
    .map((one) => Math.max(SHORTEST, one.left - one.served));
  if (own.length < FEWEST.times)
    return {
      path: '',
      why: `only ${parties} parties counted in and out and ${own.length} timed; ${FEWEST.stays} or ${FEWEST.times} are needed`,
    };
  const mean = own.reduce((sum, one) => sum + one, 0) / own.length;
  return {
    mean,
    n: own.length,
    how: `${own.length} timed stays`,
    ...timesInterval(mean, law.cv, own.length),
  };
}

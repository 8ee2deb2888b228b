/**
 * What is legal in a scenario but seldom wise.
 */
import type { Warning } from '../quantities/flaw.js';
import type { DurationLaw } from '../engine/durations.js';
import { rackKind, rackKindIds } from '../catalogue/catalogue.js';
import { nameOf } from '../quantities/name.js';
import { nearest } from '../quantities/nearest.js';
import { unitCosts } from './compile.js';
import { dotted } from './path.js';
import type { Scenario } from './scenario.js';
import { meanOfLaw, openMs, spreadOf, stepsOf } from './steps.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Standard deviation in means above which a law is hardly meant. */
const WIDE = 5;

const MINUTE = 60_000;

/** Warnings that follow from the scenario alone, before any rush is run. */
export function warningsOf(scenario: Scenario): Warning[] {
  const warnings: Warning[] = [];
  const warn = (code: string, path: string, message: string): void =>
    void warnings.push({ code, message, path });

  const { washing, arrivals, seats, guests } = scenario;
  if (washing.partLoadWait === null && (washing.partLoadsEvery ?? null) === null) {
    warn(
      'no-part-load-wait',
      'washing.partLoadWait',
      'Only full racks are washed, so items that are rarely used may stay dirty all day. Set washing.partLoadWait, such as about 6 min.',
    );
  }
  const expected = arrivals.slots?.parties ??
    arrivals.steps?.map((step) => step.parties) ?? [arrivals.peak?.guests ?? 0];
  if (expected.every((parties) => parties === 0))
    warn(
      'no-guests',
      'arrivals',
      'No guests are expected, so nothing happens unless you give listed days.',
    );

  const open = openMs(scenario);
  if (open > DAY)
    warn(
      'long-rush',
      'hours',
      `The rush lasts ${Math.round(open / HOUR)} hours. Give only the busiest hours of one day: the stock is sized for those.`,
    );
  const long = new Set<string>();
  for (const [path, law] of stepsOf(scenario)) {
    if (meanOfLaw(law) > open) {
      // Parties of several sizes may stay by laws of their own: said once.
      if (long.has(dotted(path))) continue;
      long.add(dotted(path));
      warn(
        'longer-than-rush',
        dotted(path),
        'This takes longer than the whole rush, so nothing that waits for it comes back in time. Check the number and its unit.',
      );
    } else if (
      law.law !== 'constant' &&
      law.law !== 'measured' &&
      spreadOf(law) > WIDE * meanOfLaw(law)
    )
      warn(
        'wide-spread',
        dotted(path),
        `Its standard deviation is more than ${WIDE} times its mean, so nearly all values are close to zero and a few are enormous. Check both.`,
      );
  }
  const sizes = guests.partySize.flatMap((share, i) => (share > 0 ? [i + 1] : []));
  const tooLarge = seats.count === null ? [] : sizes.filter((size) => size > seats.count!);
  if (tooLarge.length > 0) {
    const [least, most] = [tooLarge[0]!, tooLarge.at(-1)!];
    warn(
      'party-larger-than-house',
      'seats.count',
      `Parties of ${least === most ? most : `${least} to ${most}`} are expected, but there ${seats.count === 1 ? 'is only 1 seat' : `are only ${seats.count} seats`}, so these parties always leave.`,
    );
  }
  warnings.push(...roundsTooLate(scenario, open));
  if (unitCosts(scenario).every((cost) => cost === 0))
    warn(
      'ware-costs-nothing',
      'ware',
      'All ware costs nothing, so no stock is cheaper than another, and more pieces than needed may be named. Give prices.',
    );

  const used = new Set(
    Object.values(scenario.menu).flatMap((drink) => [
      ...drink.setting,
      ...(drink.fallBacks ?? []).flat(),
    ]),
  );
  for (const [id, ware] of Object.entries(scenario.ware)) {
    if (!used.has(id))
      warn(
        'unused-ware',
        `ware.${id}`,
        `${nameOf(id, ware)} is not used by any drink, so none are needed.`,
      );
  }
  warnings.push(...constantHabits(scenario), ...easyHandles(scenario), ...ownRacks(scenario));
  return warnings;
}

/** Rounds that first come when the house is closed, and none besides. */
function roundsTooLate({ clearing }: Scenario, open: number): Warning[] {
  if (clearing === 'atOnce' || clearing.forSeats || (clearing.whenDirty ?? null) !== null)
    return [];
  if (meanOfLaw(clearing.every) <= open) return [];
  return [
    {
      code: 'rounds-after-closing',
      path: 'clearing.every',
      message:
        'The first round of clearing comes after the rush, so nothing is cleared or washed within it. Check the number and its unit.',
    },
  ];
}

/** People do not keep a beat: exact rounds and exact waits fall together, and a minute more or less then seems to matter. */
function constantHabits({ clearing, washing }: Scenario): Warning[] {
  const habits: readonly (readonly [string, string, DurationLaw | null])[] = [
    ['clearing.every', 'Rounds of clearing come', clearing === 'atOnce' ? null : clearing.every],
    ['washing.partLoadWait', 'Part racks wait', washing.partLoadWait],
    ['washing.partLoadsEvery', 'Times for part racks come', washing.partLoadsEvery ?? null],
  ];
  return habits.flatMap(([path, what, law]): Warning[] => {
    if (law?.law !== 'constant' || law.ms === 0) return [];
    const exactly = law.ms % MINUTE === 0 ? `${law.ms / MINUTE} min` : `${law.ms / 1000} s`;
    return [
      {
        code: 'constant-habit',
        path,
        message:
          `${what} exactly every ${exactly}. People are not that exact, and exact times coincide: one minute more or less then seems to change the stock. Write "about ${exactly}".`.replace(
            'wait exactly every',
            'wait exactly',
          ),
      },
    ];
  });
}

/** A kind of rack that is nearly a listed one may be a slip. */
const ownRacks = ({ racks }: Scenario): Warning[] =>
  Object.entries(racks?.families ?? {}).flatMap(([family, kind]): Warning[] => {
    const near = rackKind(kind) === null ? nearest(kind, rackKindIds()) : null;
    return near === null
      ? []
      : [
          {
            code: 'own-rack',
            path: `racks.families.${family}`,
            message: `"${kind}" is taken as a kind of rack of your own. If you mean the listed one, write ${near}.`,
          },
        ];
  });

/** Guests who ask for a vessel that is easy to hold take it from the shelf. */
function easyHandles({ suit }: Scenario): Warning[] {
  const { easyHandle = 0, instead = {} } = suit?.guests ?? {};
  if (easyHandle <= 0 || Object.keys(instead).length === 0) return [];
  return [
    {
      code: 'easy-handle-guests',
      path: 'suit.guests.easyHandle',
      message: `${Number((easyHandle * 100).toPrecision(3))} % of guests ask for an easy handle and take another vessel (${Object.entries(
        instead,
      )
        .map(([from, to]) => `${to} instead of ${from}`)
        .join(', ')}). The stock includes what they use.`,
    },
  ];
}

/** The guide as a study: the pattern read from the file, each size of house grown from it and sized, and what-ifs of the house itself. */
import type { Runner } from '../../cafe/runner.js';
import { meanMs } from '../../engine/durations.js';
import { compile } from '../../scenario/compile.js';
import type { Input } from '../../scenario/inputs.js';
import { problemAt, problem, type Problem } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { checkTree } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import { daysOfSizing } from '../../sizing/size-stock.js';
import type { Opened } from '../question.js';
import type { Result } from '../result.js';
import type { Answer } from '../size/answer.js';
import { busiestHour, meanStayMinutes } from '../size/house-measures.js';
import type { Guide, GuideHouse } from './answer.js';
import { MOST_WHAT_IFS, whatIfs } from './changes.js';
import { grownRaw, type HouseSize, type Pattern } from './grow.js';
import { houseOf, takeawayOf } from './house.js';
import { sizer, type Size } from './sized.js';
import { drinkVessels } from './vessels.js';

export interface GuideOptions {
  readonly houses: readonly HouseSize[];
  readonly level?: number | undefined;
  readonly seed?: string | undefined;
  /** Days that the stock of each house is chosen on; else 2,000, and more where these do not reach the level. */
  readonly days?: number | undefined;
  /** Days that what-ifs are compared on, and the house of the file is looked at; else 500, or `days` if fewer. */
  readonly changeDays?: number;
}

/** A whole guide is asked for at once: a quarter of the most days that `size` takes for one house. */
const DAYS = 2000;
const MOST_DAYS = 8000;
/** What-ifs are reported as differences on the same guests, which takes fewer days. */
const CHANGE_DAYS = 500;
const MINUTE = 60_000;

export async function guideStudy(
  opened: Opened,
  fileName: string,
  runner: Runner,
  {
    houses,
    level,
    seed,
    days,
    changeDays = Math.min(CHANGE_DAYS, days ?? CHANGE_DAYS),
  }: GuideOptions,
): Promise<Result<Guide>> {
  const seats = opened.scenario.seats.count;
  const flaws = patternFlaws(opened, fileName);
  if (seats === null || flaws.length > 0) return { ok: false, problems: flaws };
  const size = sizer(runner, { level, seed });
  const own: Pattern = {
    scenario: opened.scenario,
    raw: opened.raw,
    seats,
    washingShare: 0,
    machinesBusy: null,
  };
  const same = readGrown(own, { seats, takeaway: null }, opened, fileName);
  if (!same.ok) return same;
  const base = await size(same.value.scenario, changeDays, 1);
  const pattern = {
    ...own,
    washingShare: washingShareOf(opened.scenario, base.answer),
    machinesBusy: base.answer.busy.machines,
  };
  const read = houses.map((house) => readGrown(pattern, house, opened, fileName));
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return { ok: false, problems };
  const sizedHouses: GuideHouse[] = [];
  for (const [at, one] of read.entries()) {
    if (!one.ok) continue;
    const later =
      (houses.length - at - 1) * daysOfSizing(days ?? DAYS) + MOST_WHAT_IFS * (changeDays + 1);
    const begin = (onDays: number): void => runner.expect?.(daysOfSizing(onDays) + later);
    sizedHouses.push(await sizedHouse(one.value.scenario, size, days, begin));
  }
  const { scenario } = opened;
  const model = compile(scenario, piecesPerRackOf);
  const staysIn = meanStaysIn(scenario);
  const guests = busiestHour(model);
  return {
    ok: true,
    value: {
      scenario: scenario.name,
      seed: base.answer.seed,
      currency: scenario.currency,
      level: base.answer.level,
      changeDays,
      file: {
        seats,
        takeaway: takeawayOf(scenario),
        guestsAnHour: guests,
        inHouseASeat: (guests * staysIn) / seats,
        stayMinutes: meanStayMinutes(model),
        busy: base.answer.busy,
        owns: scenario.have !== undefined,
      },
      drinks: drinkVessels(scenario),
      houses: sizedHouses,
      changes: await whatIfs(same.value, fileName, base, (other) => size(other, changeDays, 1)),
      ...assumedOf(opened.inputs),
    },
  };
}

/** Where fresh days miss the level, the stock is chosen anew on twice the days, as `size` does; not where the days are given. */
async function sizedHouse(
  scenario: Scenario,
  size: Size,
  given: number | undefined,
  begin: (days: number) => void,
): Promise<GuideHouse> {
  for (let days = given ?? DAYS; ; days *= 2) {
    begin(days);
    const sized = await size(scenario, days);
    const missed = sized.answer.warnings.some(({ code }) => code === 'promise-missed');
    if (!missed || given !== undefined || days >= MOST_DAYS) return houseOf(scenario, sized);
  }
}

/** What a guide cannot be made from, each at its place. */
function patternFlaws({ scenario, positionOf }: Opened, fileName: string): Problem[] {
  const flaws = [
    ...((scenario.kinds?.length ?? 0) < 2
      ? []
      : [
          problemAt(
            ['calendar', 'kinds'],
            undefined,
            'lists several kinds of day, and a guide for other sizes of house is of one kind',
            'take the kinds out of a copy of the file, or write the busiest kind as a file of its own',
          ),
        ]),
    ...(scenario.seats.count === null
      ? [
          problemAt(
            ['seats', 'count'],
            'unlimited',
            'says nothing of guests for each seat, which the guide keeps as they are',
            'write the number of seats, such as 40',
          ),
        ]
      : []),
    ...(meanStaysIn(scenario) > 0
      ? []
      : [
          problemAt(
            ['guests', 'staysIn'],
            undefined,
            'lets nobody stay in, so that no house needs any cups',
            'write the share who stay in, such as 45 %',
          ),
        ]),
  ];
  return flaws.map((flaw) => problem(flaw, fileName, positionOf(flaw.path)));
}

/** The grown scenario, checked; its problems stand at the values of the file that they grew from. */
function readGrown(
  pattern: Pattern,
  house: HouseSize,
  { positionOf }: Opened,
  fileName: string,
): Result<Opened> {
  const read = checkTree(grownRaw(pattern, house), positionOf, fileName, {
    piecesPerRack: piecesPerRackOf,
  });
  return read.ok
    ? { ok: true, value: read }
    : {
        ok: false,
        problems: read.problems.map((one) => ({
          ...one,
          message: `in a café of ${house.seats} seats: ${one.message}`,
        })),
      };
}

/** Share of the makers' work that is at the dishwasher, as it was in the house of the file. */
function washingShareOf(scenario: Scenario, { loads, drinks }: Answer): number {
  if (scenario.washing.hands !== 'makers') return 0;
  const { menu } = compile(scenario, piecesPerRackOf);
  const each = menu.reduce((sum, { share, making }) => sum + share * meanMs(making), 0) / MINUTE;
  const making = (drinks.houseDrinks + drinks.takeawayDrinks) * each;
  const all = making + loads.handlingMinutes;
  return all === 0 ? 0 : loads.handlingMinutes / all;
}

/** Inputs that usually move the answer most, in that order (common practice, no source). */
const MATTERS = [
  /^guests\.dwell/,
  /^guests\.staysIn/,
  /^arrivals\.(peak\.guests|slots\.parties|steps)/,
  /^arrivals\.dayFactor/,
  /^clearing\.every/,
  /^washing\.partLoadWait/,
  /^ware\..*\.drying/,
  /^washing\.machines.*\.cycle/,
];

function assumedOf(inputs: readonly Input[]): Pick<Guide, 'inputs' | 'assumed'> {
  const assumed = inputs.filter(({ basis }) => basis === 'assumed' || basis === 'practice');
  return {
    inputs: { all: inputs.length, assumed: assumed.length },
    assumed: MATTERS.flatMap((pattern) =>
      assumed.filter(({ path }) => pattern.test(path)).map(({ path }) => path),
    ),
  };
}

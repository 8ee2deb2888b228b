/** Suiting as a study: the sheet's own checks, with rack layouts, drinks a week and pooling from the rush. */
import { storageLayout, storageProblems } from '../../ordering/storage.js';
import { fetchingOf } from '../order/fetching.js';
import { storedWare } from '../order/stored-ware.js';
import { meanMs } from '../../engine/durations.js';
import { rackLayout } from '../../racking/layout.js';
import { withPooling, type SuitAnswer } from '../../suiting/answer.js';
import { poolingGains } from '../../suiting/merging.js';
import type { RackFit, Standing, SuitDrink } from '../../suiting/model.js';
import { drinksAWeek, rackFit, suitMenu, suitWare } from '../../suiting/scenario-parts.js';
import { suit } from '../../suiting/suit.js';
import { calendarOf } from '../../scenario/calendar.js';
import { meanMenu } from '../../scenario/shares-by-time.js';
import { compile } from '../../scenario/compile.js';
import type { Input } from '../../scenario/inputs.js';
import { familyOf, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import { saucerFitsOf } from '../../scenario/saucer-fits.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';
import { kindOf, onEveryKind } from '../../scenario/kinds.js';
import { meanDayOf } from '../size/year.js';
import { study, type Study } from '../size/study.js';

/** Days that tell drinks a week and what pooling saves. */
const DAYS = 1000;
/** Days that tell how busy each ware is in the busiest hour. */
const WATCHED = 100;
const MINUTE = 60_000;

export interface SuitOptions {
  readonly seed?: string;
}

export async function suitStudy(
  scenario: Scenario,
  inputs: readonly Input[],
  runner: Runner,
  options: SuitOptions = {},
): Promise<SuitAnswer> {
  const sizeOf = (changed: Scenario) =>
    study(changed, runner, {
      days: DAYS,
      piecesPerRack: piecesPerRackOf,
      ...(options.seed === undefined ? {} : { seed: options.seed }),
    });
  const now = await sizeOf(scenario);
  const menu = suitMenu(meanMenu(scenario));
  const answer = await suitAnswerOf(scenario, inputs, now, racksOf(scenario, inputs), runner);
  const size = async (changed: readonly SuitDrink[]): Promise<Record<string, number>> => {
    const same = changed === menu;
    const { answer: sized } = same
      ? now
      : await sizeOf(
          onEveryKind(scenario, (one) => ({ ...one, menu: withMenu(one.menu, changed) })),
        );
    return Object.fromEntries(sized.stock.map(({ ware, pieces }) => [ware, pieces]));
  };
  return withPooling(answer, await poolingGains(answer.merges, menu, size));
}

/**
 * The checks of vessel and drink with what the days of a study say, without what merging types would save.
 * @param runner runs the rush with the two places, for the share of cold cups; null: that is not asked for
 */
export async function suitAnswerOf(
  scenario: Scenario,
  inputs: readonly Input[],
  sized: Study,
  racks: Readonly<Record<string, RackFit>>,
  runner: Runner | null,
): Promise<SuitAnswer> {
  const model = compile(scenario, piecesPerRackOf);
  const menu = suitMenu(meanMenu(scenario));
  const standing = await standingOf(scenario, sized, runner);
  const own = sized.answer.kinds?.[0]!.name;
  const { houseDrinks, takeawayDrinks } = meanDayOf(sized.answer).drinks;
  const all = houseDrinks + takeawayDrinks;
  const answer = suit({
    scenario: scenario.name,
    currency: scenario.currency,
    staffHourMinor: scenario.staffHour.minor,
    ware: suitWare(scenario.ware),
    menu,
    suit: scenario.suit ?? {},
    drinksAWeek: drinksAWeek(
      menu,
      all,
      all === 0 ? 0 : houseDrinks / all,
      calendarOf(scenario).daysAWeek,
    ),
    racks,
    saucerFits: saucerFitsOf(scenario, inputs),
    ...(standing === null ? {} : { standing }),
    dwellMin:
      model.guests.partySize.reduce(
        (sum, share, index) =>
          sum + share * meanMs(model.guests.dwell[Math.min(index, model.guests.dwell.length - 1)]!),
        0,
      ) / MINUTE,
    basis: Object.fromEntries(inputs.map(({ path, basis }) => [path, basis])),
  });
  return own === undefined ? answer : { ...answer, kindOfDay: own };
}

/** Where the vessels stand, as the order sets them out; null where the file says nothing of storage, or something wrong. */
async function standingOf(
  scenario: Scenario,
  sized: Study,
  runner: Runner | null,
): Promise<Record<string, Standing> | null> {
  const { storage } = scenario;
  if (storage === undefined) return null;
  const { answer } = sized;
  const wares = storedWare(scenario, { ...answer, evidence: await sized.watch(WATCHED) });
  if (storageProblems(storage, wares).length > 0) return null;
  const layout = storageLayout(storage, wares);
  const shown = kindOf(scenario, answer.tightestKind, answer.seed);
  const coldByWare =
    runner === null
      ? []
      : (await fetchingOf(shown, layout, wares, answer, DAYS, runner)).coldByWare;
  return Object.fromEntries(
    layout.lines.map(({ ware, onTop, inReserve, warmed }) => [
      ware,
      {
        onTop,
        inReserve,
        warmed,
        coldShare: coldByWare.find((one) => one.ware === ware)?.share ?? null,
      },
    ]),
  );
}

function withMenu(menu: Scenario['menu'], changed: readonly SuitDrink[]): Scenario['menu'] {
  return Object.fromEntries(
    changed.map(({ id, setting, fallBacks }) => [
      id,
      { ...menu[id]!, setting: [...setting], fallBacks: fallBacks.map((one) => [...one]) },
    ]),
  );
}

/** What the rack of its family makes of each ware whose shape is known. */
function racksOf(scenario: Scenario, inputs: readonly Input[]): Record<string, RackFit> {
  const typical = new Set(inputs.flatMap((one) => (one.origin === 'default' ? [one.path] : [])));
  return Object.fromEntries(
    Object.entries(scenario.ware).flatMap(([id, ware]) => {
      const kind = rackKindOf(scenario.racks, familyOf(id, ware));
      const [vessel, rack] = [vesselOf(ware), rackOf(kind, scenario.racks)];
      return vessel === null || rack === null
        ? []
        : [
            [
              id,
              {
                ...rackFit(kind, rackLayout(vessel, rack, scenario.racks?.loading ?? 'best')),
                typicalRim: typical.has(`ware.${id}.rim`),
              },
            ] as const,
          ];
    }),
  );
}

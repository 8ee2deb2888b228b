/** The order as a study: par and uses from the rush, losses from the classes of ware, and what suppliers quote. */
import { wareClass } from '../../catalogue/catalogue.js';
import type { SolverLoader } from '../../ordering/choose-buy.js';
import type { LossRates } from '../../ordering/losses.js';
import { orderSheet, type SheetInput } from '../../ordering/make-sheet.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import type { Outcome } from '../../quantities/flaw.js';
import { storageLayout, storageProblems, type StorageLayout } from '../../ordering/storage.js';
import type { CafeModel } from '../../cafe/model.js';
import type { DaysRun } from '../../cafe/rush.js';
import { takeawayLines, type TakeawayLine } from '../../ordering/takeaway.js';
import type { DrawnDays } from '../size/allow-for-inputs.js';
import type { Answer, InputsAnswer } from '../size/answer.js';
import type { House } from '../../scenario/edited.js';
import { allowanceOf } from './allowance.js';
import { nameOf } from '../../quantities/name.js';
import { isMisfit, type SaucerFit } from '../../racking/saucer-fit.js';
import { compile } from '../../scenario/compile.js';
import type { Input } from '../../scenario/inputs.js';
import { saucerFitsOf, servedTogether } from '../../scenario/saucer-fits.js';
import { kindOf, kindsOf, seedOf, sharesOf } from '../../scenario/kinds.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { orderFlaws, supplyOf } from './checks.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Runner } from '../../cafe/runner.js';
import { fetchingOf, type Fetching } from './fetching.js';
import { storedWare } from './stored-ware.js';
import { saucerPools, type SaucerPool } from './saucer-pools.js';
import type { Scenario } from '../../scenario/scenario.js';
import { meanDayOf } from '../size/year.js';
import { study, type StudyOptions } from '../size/study.js';

export interface SaucerFits {
  /** Pairs that the menu serves together, and cups that would sit on another saucer too. */
  readonly pairs: readonly SaucerFit[];
  /** Cups and glasses served on a saucer that no saucer takes. */
  readonly orphanCups: readonly string[];
  /** Saucers that take nothing. */
  readonly orphanSaucers: readonly string[];
}

/** The stock that allows for inputs, and the order as it would be without. */
export interface AllowingForInputs extends InputsAnswer {
  readonly plainPieces: number;
  /** What is to be bought of it, in whole currency units at the file's own prices. */
  readonly plainSpend: number;
  readonly plainTotalMinor: number;
}

export interface OrderStudy {
  readonly answer: Answer;
  readonly sheet: OrderSheet;
  readonly saucers: SaucerFits;
  readonly pools: readonly SaucerPool[];
  /** Null where the scenario says nothing of storage. */
  readonly storage: StorageLayout | null;
  /** The rush at the par with the two places, means a day; null without storage. */
  readonly fetching: Fetching | null;
  /** True where the scenario names no supplier, so that each ware is ordered at its own price, by the piece. */
  readonly unquoted: boolean;
  /** Absent where it was not asked for. */
  readonly allowingForInputs?: AllowingForInputs;
}

/** What `order --json` prints. */
export type OrderAnswer = OrderSheet &
  Pick<OrderStudy, 'saucers' | 'pools' | 'storage' | 'fetching' | 'allowingForInputs'>;

export const orderAnswer = ({
  sheet,
  saucers,
  pools,
  storage,
  fetching,
  allowingForInputs,
}: OrderStudy): OrderAnswer => ({
  ...sheet,
  saucers,
  pools,
  storage,
  fetching,
  ...(allowingForInputs === undefined ? {} : { allowingForInputs }),
});

export type OrderOptions = Pick<StudyOptions, 'level' | 'seed' | 'days'> & {
  /** Day of the order, `YYYY-MM-DD`. */
  readonly date: string;
  readonly loadSolver: SolverLoader;
  /** Tell which measures are typical rather than the file's. */
  readonly inputs?: readonly Input[];
  /** The house, where the stock is to hold wherever its inputs lie in their ranges. */
  readonly allowFor?: { readonly house: House; readonly days?: DrawnDays };
};

/** Losses where neither scenario nor class gives any; assumed. */
const NO_LOSSES = { perThousandUses: 0, walkOffPerYear: 0, retirementPerYear: 0 } as const;
const DAYS_AT_STOCK = 1000;

export async function orderStudy(
  scenario: Scenario,
  runner: Runner,
  options: OrderOptions,
): Promise<Outcome<OrderStudy>> {
  const early = orderFlaws(scenario);
  if (early.length > 0) return { ok: false, problems: early };
  const supply = supplyOf(scenario);
  if (!supply.ok) return supply;
  const unquoted = Object.keys(scenario.supply?.suppliers ?? {}).length === 0;
  const { date, loadSolver, inputs = [], allowFor, ...asked } = options;
  const reading = { ...asked, watch: 100, piecesPerRack: piecesPerRackOf };
  const plain = (await study(scenario, runner, reading)).answer;
  const allowance = allowFor && (await allowanceOf(allowFor.house, plain, runner, allowFor.days));
  const answer =
    allowance === undefined || allowance.stock === null
      ? plain
      : (await study(scenario, runner, { ...reading, stock: allowance.stock })).answer;
  const stored = storedWare(scenario, answer);
  const badStorage =
    scenario.storage === undefined ? [] : storageProblems(scenario.storage, stored);
  if (badStorage.length > 0) return { ok: false, problems: badStorage };
  const takeaway = await takeawayOf(scenario, supply.value, answer, runner);
  if (!takeaway.ok) return takeaway;
  const sheet = await orderSheet(
    sheetInputOf(scenario, supply.value, answer, takeaway.value, date),
    loadSolver,
  );
  if (!sheet.ok) return sheet;
  const plainSheet =
    answer === plain
      ? sheet
      : await orderSheet(sheetInputOf(scenario, supply.value, plain, [], date), loadSolver);
  if (!plainSheet.ok) return plainSheet;
  const pairs = saucerFitsOf(scenario, inputs);
  // Where the house has kinds of day, what stands where is asked of the one with least to spare.
  const shown = kindOf(scenario, answer.tightestKind, answer.seed);
  const storage = scenario.storage === undefined ? null : storageLayout(scenario.storage, stored);
  const fetching =
    storage === null
      ? null
      : await fetchingOf(shown, storage, stored, answer, DAYS_AT_STOCK, runner);
  return {
    ok: true,
    value: {
      answer,
      sheet: sheet.value,
      saucers: fitsOf(scenario, pairs),
      pools: await saucerPools(
        shown.scenario,
        compile(shown.scenario, piecesPerRackOf),
        answer.level,
        shown.seed,
        runner,
        pairs.filter(isMisfit),
      ),
      storage,
      fetching,
      unquoted,
      ...(allowance === undefined
        ? {}
        : {
            allowingForInputs: {
              ...allowance.found,
              plainPieces: plain.stock.reduce((sum, { pieces }) => sum + pieces, 0),
              plainSpend: plain.spend,
              plainTotalMinor: plainSheet.value.totals.totalMinor,
            },
          }),
    },
  };
}

/** What the sheet is made from. */
export const sheetInputOf = (
  scenario: Scenario,
  supply: SupplyModel,
  answer: Answer,
  takeaway: readonly TakeawayLine[],
  date: string,
): SheetInput => ({
  title: scenario.name,
  date,
  currency: scenario.currency,
  locale: scenario.locale ?? null,
  supply,
  ware: answer.stock.map(({ ware, pieces }) => ({
    id: ware,
    name: nameOf(ware, scenario.ware[ware]!),
    colour: scenario.ware[ware]!.colour ?? null,
    shape: scenario.ware[ware]!.shape ?? null,
    par: pieces,
    usesADay: meanDayOf(answer).uses.find((one) => one.ware === ware)!.aDay,
    losses: lossesOf(scenario, ware),
  })),
  takeaway,
  onMachine: scenario.storage !== undefined,
});

/** Loss rates of a ware: the scenario's own, else those of its class (assumed). */
export function lossesOf(scenario: Scenario, id: string): Omit<LossRates, 'usesADay'> {
  const own = scenario.supply?.losses?.[id];
  const like = scenario.ware[id]!.like;
  const cls = like === undefined ? null : wareClass(like);
  return {
    perThousandUses:
      own?.perThousandUses ?? cls?.brokenPerThousandUses.value ?? NO_LOSSES.perThousandUses,
    walkOffPerYear: own?.walkOff ?? cls?.lostPerYear.value ?? NO_LOSSES.walkOffPerYear,
    retirementPerYear: own?.retirement ?? NO_LOSSES.retirementPerYear,
    ...(own?.dispersion === undefined ? {} : { dispersion: own.dispersion }),
  };
}

/** Pairs of the menu, and cups that would sit on another saucer too. */
function fitsOf(scenario: Scenario, all: readonly SaucerFit[]): SaucerFits {
  const onMenu = (pair: SaucerFit): boolean => servedTogether(scenario.menu, pair);
  const isCup = (id: string): boolean => scenario.ware[id]!.shape === 'cup';
  const served = (id: string): boolean =>
    all.some((pair) => onMenu(pair) && (pair.cup === id || pair.saucer === id));
  // Typical measures are no ground to say that nothing fits.
  const fitting = (id: string): boolean =>
    all.some((pair) => (pair.fits || pair.typical) && (pair.cup === id || pair.saucer === id));
  const ids = (of: (pair: SaucerFit) => string): string[] => [...new Set(all.map(of))];
  return {
    pairs: all.filter((pair) => onMenu(pair) || (pair.fits && isCup(pair.cup))),
    orphanCups: ids(({ cup }) => cup).filter((id) => served(id) && !fitting(id)),
    orphanSaucers: ids(({ saucer }) => saucer).filter((id) => !fitting(id)),
  };
}

/** Takeaway cups and lids over the days at the stock, day by day. */
async function takeawayOf(
  scenario: Scenario,
  supply: SupplyModel,
  { stock, seed }: Answer,
  runner: Runner,
): Promise<Outcome<readonly TakeawayLine[]>> {
  const takeaway = scenario.supply?.takeaway;
  if (takeaway === undefined) return { ok: true, value: [] };
  // Each kind of day as often among the days as in a year.
  const kinds = kindsOf(scenario);
  const shares = sharesOf(kinds);
  const days: { readonly model: CafeModel; readonly run: DaysRun }[] = [];
  for (const [at, kind] of kinds.entries()) {
    const model = compile(kind.scenario, piecesPerRackOf);
    const task = {
      model,
      seed: seedOf(seed, kind, at),
      from: 0,
      days: Math.max(1, Math.round(DAYS_AT_STOCK * shares[at]!)),
      stock: stock.map(({ pieces }) => pieces),
      listed: null,
      byDay: false,
    };
    days.push(...(await runner.apart(task, 1)).map((run) => ({ model, run })));
  }
  // Drinks in an easy vessel are the same drink in paper.
  const kindsOfDrink = (model: CafeModel, drink: string): number[] =>
    model.menu.flatMap(({ id }, kind) =>
      id === drink || id.startsWith(`${drink}-easy`) ? [kind] : [],
    );
  const perDay = Object.keys(scenario.menu).map((drink) => {
    const daily = (of: 'away' | 'paper'): number[] =>
      days.map(({ model, run }) =>
        kindsOfDrink(model, drink).reduce((sum, kind) => sum + run[of][kind]!, 0),
      );
    return { drink, ordered: daily('away'), asFallBack: daily('paper') };
  });
  return takeawayLines({
    takeaway,
    perDay,
    confidence: supply.confidence,
    openDaysAWeek: supply.openDaysAWeek,
    rushShare: supply.rushShare,
    staffHourMinor: scenario.staffHour.minor,
  });
}

/** Each collection as a house of its own: sized, ordered, poured, racked and stood on the machine, on the same days. */
import type { SolverLoader } from '../../ordering/choose-buy.js';
import { orderSheet } from '../../ordering/make-sheet.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import type { Outcome } from '../../quantities/flaw.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import type { RepeatSupply } from '../../ordering/schema.js';
import type { Vessel } from '../../ordering/vessels-file.js';
import type { Runner } from '../../cafe/runner.js';
import { nameOf } from '../../quantities/name.js';
import { isMisfit } from '../../racking/saucer-fit.js';
import { compile } from '../../scenario/compile.js';
import type { Input } from '../../scenario/inputs.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { saucerFitsOf, servedTogether } from '../../scenario/saucer-fits.js';
import type { SuitAnswer } from '../../suiting/answer.js';
import { orderFlaws, supplyOf } from '../order/checks.js';
import { saucerPools } from '../order/saucer-pools.js';
import { sheetInputOf } from '../order/study.js';
import { study, type Study, type StudyOptions } from '../size/study.js';
import { meanDayOf } from '../size/year.js';
import { suitAnswerOf } from '../suit/study.js';
import type { Collections, CollectionLine, Discontinued, VesselLine } from './answer.js';

/** A collection read into the house; the house as it is has no vessels of its own. */
export interface ToCompare {
  readonly id: string;
  readonly name: string;
  readonly scenario: Scenario;
  readonly inputs: readonly Input[];
  readonly vessels: readonly Vessel[];
  /** By cup or glass of the menu, the vessel that stands in for it. */
  readonly standsFor: Readonly<Record<string, string>>;
}

export type CollectionsOptions = Pick<StudyOptions, 'level' | 'seed' | 'days'> & {
  /** Day of the order, `YYYY-MM-DD`. */
  readonly date: string;
  readonly loadSolver: SolverLoader;
};

export async function collectionsStudy(
  all: readonly ToCompare[],
  runner: Runner,
  options: CollectionsOptions,
): Promise<Outcome<Collections>> {
  const lines: CollectionLine[] = [];
  let level = 0;
  for (const one of all) {
    const line = await lineOf(one, runner, options);
    if (!line.ok) return line;
    lines.push(line.value.line);
    level = line.value.level;
  }
  const { scenario } = all[0]!;
  return {
    ok: true,
    value: {
      title: scenario.name,
      date: options.date,
      currency: scenario.currency,
      locale: scenario.locale ?? null,
      level,
      horizonDays: lines[0]!.horizonDays,
      collections: lines,
    },
  };
}

async function lineOf(
  { id, name, scenario, inputs, vessels, standsFor }: ToCompare,
  runner: Runner,
  { date, loadSolver, ...asked }: CollectionsOptions,
): Promise<Outcome<{ readonly line: CollectionLine; readonly level: number }>> {
  const flaws = orderFlaws(scenario);
  const supply = supplyOf(scenario);
  if (flaws.length > 0) return { ok: false, problems: flaws };
  if (!supply.ok) return supply;
  const sized = await study(scenario, runner, { ...asked, piecesPerRack: piecesPerRackOf });
  const { answer } = sized;
  const sheetOf = (terms: SupplyModel): Promise<Outcome<OrderSheet>> =>
    orderSheet(sheetInputOf(scenario, terms, answer, [], date), loadSolver);
  const sheet = await sheetOf(supply.value);
  if (!sheet.ok) return sheet;
  const discontinued = await discontinuedOf(sheet.value, supply.value, sheetOf);
  if (!discontinued.ok) return discontinued;

  const model = compile(scenario, piecesPerRackOf);
  const perRack = new Map(model.ware.map((ware) => [ware.id, ware.perRack]));
  const suited = await suitAnswerOf(scenario, inputs, sized, {}, null);
  const pairs = saucerFitsOf(scenario, inputs).filter((fit) => servedTogether(scenario.menu, fit));
  const pools = await saucerPools(
    scenario,
    model,
    answer.level,
    answer.seed,
    runner,
    pairs.filter(isMisfit),
  );
  const unsold = sheet.value.lines.filter(({ supplier }) => supplier === null);
  const saucers = Object.entries(scenario.ware).filter(([, { shape }]) => shape === 'saucer');
  const { drinks } = suited;
  const compared = drinks.filter(({ level }) => level !== null);
  const tops = standingTops(suited);
  return {
    ok: true,
    value: {
      level: answer.level,
      line: {
        id,
        name,
        pieces: answer.stock.reduce((sum, { pieces }) => sum + pieces, 0),
        ordered: sheet.value.totals.pieces,
        nowMinor: unsold.length > 0 ? null : sheet.value.totals.totalMinor,
        overMinor: unsold.length > 0 ? null : (sheet.value.plan?.chosen.totalMinor ?? null),
        unsold: unsold.map((line) => line.name),
        horizonDays: sheet.value.horizonDays,
        proved: sheet.value.plan?.proved ?? false,
        fullRacksADay: meanDayOf(answer).uses.reduce(
          (sum, { ware, aDay }) => sum + aDay / perRack.get(ware)!,
          0,
        ),
        alike: compared.filter((one) => one.level === true).length,
        compared: compared.length,
        saucerKinds: saucers.length,
        saucersSaved: pools.reduce((sum, { gain }) => sum + gain.saved, 0),
        misfits: pairs.filter(isMisfit).length,
        otherColours: pairs.filter(({ byMeasures }) => byMeasures === 'colours differ').length,
        colourPairs: pairs.filter(
          (fit) => colourOf(scenario, fit.cup) && colourOf(scenario, fit.saucer),
        ).length,
        onTop: tops,
        discontinued: discontinued.value,
        vessels: Object.entries(scenario.ware).flatMap(([ware, { shape }]): VesselLine[] =>
          shape === 'cup' || shape === 'glass' || shape === 'saucer'
            ? [
                {
                  ...vesselOf(ware, scenario, sized, suited),
                  standsFor: Object.keys(standsFor).filter((cup) => standsFor[cup] === ware),
                  perRack: perRack.get(ware)!,
                  fit: pairs.find(({ cup }) => cup === ware) ?? null,
                  until: vessels.find((one) => one.id === ware)?.until ?? null,
                },
              ]
            : [],
        ),
        // What a line costs that ends is said once for all its vessels.
        warnings: [...answer.warnings, ...sheet.value.warnings]
          .filter(({ code }) => code !== 'life-of-range')
          .map(({ message }) => message),
      },
    },
  };
}

const colourOf = (scenario: Scenario, ware: string): boolean =>
  scenario.ware[ware]?.colour !== undefined;

/** Cups on the machine and in all, of vessels that are to be warm; null where the file says nothing of storage. */
function standingTops({ drinks }: SuitAnswer): CollectionLine['onTop'] {
  const byVessel = new Map(
    drinks.flatMap(({ house, standing }) =>
      house === null || standing === null ? [] : [[house.vessel, standing] as const],
    ),
  );
  if (byVessel.size === 0) return null;
  const all = [...byVessel.values()];
  return {
    pieces: all.reduce((sum, { onTop }) => sum + onTop, 0),
    of: all.reduce((sum, { onTop, inReserve }) => sum + onTop + inReserve, 0),
  };
}

function vesselOf(
  ware: string,
  scenario: Scenario,
  { answer }: Study,
  { ware: pieces, drinks }: SuitAnswer,
): Omit<VesselLine, 'standsFor' | 'perRack' | 'fit' | 'until'> {
  const found = pieces.find((one) => one.ware === ware);
  const own = drinks.filter(({ house }) => house?.vessel === ware);
  const sips = own.flatMap(({ warmth }) => (warmth === null ? [] : [warmth.firstSipC]));
  return {
    ware,
    name: nameOf(ware, scenario.ware[ware]!),
    pieces: answer.stock.find((one) => one.ware === ware)?.pieces ?? 0,
    brimMl: scenario.ware[ware]!.brim ?? null,
    filledG: found?.grip?.filledG ?? null,
    momentNm: found?.grip?.momentNm ?? null,
    easy: found?.grip?.easy ?? null,
    heavy: found?.grip?.flags.some(({ code }) => code === 'heavy') ?? false,
    firstSipC: sips.length === 0 ? null : Math.min(...sips),
    ratios: own.flatMap(({ name, ratio }) => (ratio === null ? [] : [{ drink: name, ratio }])),
  };
}

/**
 * What it costs that lines end: spares for the rest of the time bought now, or the pieces replaced when they are
 * no longer sold, each against a line that is sold for ever.
 */
async function discontinuedOf(
  sheet: OrderSheet,
  supply: SupplyModel,
  sheetOf: (terms: SupplyModel) => Promise<Outcome<OrderSheet>>,
): Promise<Outcome<Discontinued | null>> {
  const ending = sheet.lines.filter(({ repeat }) => repeat !== null && repeat !== 'assured');
  if (ending.length === 0) return { ok: true, value: null };
  const assured = await sheetOf(withRepeat(supply, 'assured'));
  if (!assured.ok) return assured;
  const once = await sheetOf(withRepeat(supply, 'none'));
  if (!once.ok) return once;
  const total = ({ plan }: OrderSheet): number => plan?.chosen.totalMinor ?? 0;
  const days = ending.flatMap(({ repeat }) =>
    repeat !== null && typeof repeat === 'object' ? [repeat.until] : [],
  );
  return {
    ok: true,
    value: {
      names: ending.map(({ name }) => name),
      until: days.length === 0 ? null : days.toSorted()[0]!,
      spares: ending.reduce((sum, line) => {
        const then = once.value.lines.find(({ ware }) => ware === line.ware)!;
        return sum + Math.max(0, then.hold - then.par);
      }, 0),
      sparesMinor: total(once.value) - total(assured.value),
      replacedPieces: ending.reduce((sum, { par }) => sum + par, 0),
      replacedMinor: Math.round(
        ending.reduce(
          (sum, { par, landedPerPieceMinor }) => sum + par * (landedPerPieceMinor ?? 0),
          0,
        ),
      ),
    },
  };
}

/** The terms with every line that ends sold as said. */
const withRepeat = (supply: SupplyModel, repeat: RepeatSupply): SupplyModel => ({
  ...supply,
  suppliers: supply.suppliers.map((supplier) => ({
    ...supplier,
    quotes: supplier.quotes.map((quote) =>
      quote.repeat === 'assured' ? quote : { ...quote, repeat },
    ),
  })),
});

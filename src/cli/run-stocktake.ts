/** A stocktake from a file: what has gone, what that says of the loss rates, what to order now. */
import { daysBetween } from '../ordering/dates.js';
import { readCounts } from '../ordering/counts-file.js';
import { quoteFor } from '../ordering/supply.js';
import { readSupply } from '../ordering/read-supply.js';
import { usesACalendarDay } from '../ordering/make-sheet.js';
import { stocktake, type StocktakeWare } from '../ordering/stocktake.js';
import { wareClass } from '../catalogue/catalogue.js';
import { contextOf } from '../report/context-of.js';
import { stocktakeText } from '../report/order-text.js';
import { lossesOf, orderStudy } from '../study/order-study.js';
import { piecesPerRackOf } from '../study/rack-geometry.js';
import type { StocktakeArguments } from './commands/stocktake.js';
import { readWhole } from './files.js';
import { MistakeError } from './mistakes.js';
import { openScenario } from './open-scenario.js';
import { daysBar } from './progress.js';
import { dayOf, orderProblems } from './run-order.js';
import { parseStock } from './study-options.js';
import { version } from './version.js';
import { threadedRunner } from './workers.js';

const LARGEST_COUNTS = 1_000_000;
const SOON = { law: 'constant', ms: 10 * 86_400_000 } as const;

export async function runStocktake(args: StocktakeArguments): Promise<void> {
  const opened = await openScenario(args.file);
  const { scenario } = opened;
  const counts = readCounts(Buffer.from(await readWhole(args.counts, LARGEST_COUNTS)).toString('utf8'));
  if (!counts.ok) throw countMistake(counts.problems, args.counts);
  const date = dayOf('date', args.date, undefined);
  const days = daysBetween(dayOf('since', args.since, undefined), date);
  const last = args.last === undefined ? {} : parseStock(args.last, Object.keys(scenario.ware));
  const supply = readSupply(scenario.supply ?? {}, { currency: scenario.currency, staffHourMinor: scenario.staffHour.minor, ware: Object.entries(scenario.ware).map(([id, { mass }]) => ({ id, massG: mass ?? null })) });
  if (!supply.ok) throw orderProblems(supply.problems, args.file, opened.positionOf);
  const bar = await daysBar('running days');
  const runner = threadedRunner((done) => bar.add(done), args.threads);
  try {
    const asked = { ...(args.level === undefined ? {} : { level: args.level }), ...(args.seed === undefined ? {} : { seed: args.seed }), ...(args.days === undefined ? {} : { days: args.days }) };
    // What the order would be tells the holding that the count is held against.
    const ordered = await orderStudy(scenario, runner, { ...asked, date, loadSolver: null });
    if (!ordered.ok) throw orderProblems(ordered.problems, args.file, opened.positionOf);
    const ware = ordered.value.sheet.lines.map((line): StocktakeWare => {
      const usesADay = usesACalendarDay(ordered.value.answer.uses.find((one) => one.ware === line.ware)!.aDay, supply.value);
      const supplier = supply.value.suppliers.find(({ id }) => id === line.supplier);
      const cls = scenario.ware[line.ware]!.like === undefined ? null : wareClass(scenario.ware[line.ware]!.like!);
      return {
        ware: line.ware,
        lastCount: last[line.ware] ?? supply.value.onHand[line.ware] ?? line.hold,
        usesSince: usesADay * Math.max(0, days),
        breakageRange: cls?.brokenPerThousandUses.range ?? null,
        walkOffRange: cls?.lostPerYear.range ?? null,
        policy: {
          ware: line.ware,
          par: line.par,
          rates: { ...lossesOf(scenario, line.ware), usesADay },
          leadTime: supplier?.leadTime ?? SOON,
          reviewDays: supply.value.reviewDays,
          coverDays: line.coverDays,
          confidence: supply.value.confidence,
          repeat: (supplier && quoteFor(supplier, line.ware)?.repeat) ?? 'assured',
          horizonDays: supply.value.horizonDays,
          date,
        },
      };
    });
    const result = stocktake({ counts: counts.value, ware, days });
    if (!result.ok) throw countMistake(result.problems, args.counts);
    process.stdout.write(args.json ? `${JSON.stringify(result.value)}\n` : stocktakeText(result.value, contextOf(scenario, opened.inputs, version, piecesPerRackOf)));
  } finally {
    bar.end();
    await runner.close();
  }
}

/** Problems of a count name the row of its file. */
function countMistake(problems: readonly { readonly path: readonly (string | number)[]; readonly message: string }[], file: string): MistakeError {
  return new MistakeError([...problems.map(({ path, message }) => `${file}${path[0] === 'row' ? `:${path[1]}` : ''}: ${message}`), 'nothing was done.'].join('\n'));
}

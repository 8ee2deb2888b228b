/** The order from a file: printed, and written as CSV, workbook, page and pictures where asked. */
import { basename, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { orderSheetCsv } from '../ordering/order-sheet-csv.js';
import { orderSheetXlsx } from '../ordering/order-sheet-xlsx.js';
import type { ProgrammeSolver, SolverLoader } from '../ordering/choose-buy.js';
import { isDate } from '../ordering/dates.js';
import type { Problem as OrderProblem } from '../ordering/problems.js';
import { landedCost } from '../questions/order/charts/landed-cost.js';
import { shelfOverMonths } from '../questions/order/charts/shelf-over-months.js';
import { withoutTitle, titleOf, type ChartSpec } from '../tell/charts/style.js';
import type { ReportContext } from '../tell/context.js';
import { contextOf } from '../tell/context-of.js';
import { drawMachineTop } from '../questions/order/machine-top.js';
import { formatsFor } from '../tell/format.js';
import { orderPage } from '../questions/order/page.js';
import { orderText } from '../questions/order/text.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { english } from '../tell/words.js';
import { orderStudy, type OrderStudy } from '../questions/order/study.js';
import { placed } from '../questions/part-checks.js';
import { inOrder } from '../scenario/problems.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { openScenario, problemsAsMistake, type OpenScenario } from './open-scenario.js';
import { daysBar } from './progress.js';
import { version } from './version.js';
import { threadedRunner } from './workers.js';

export interface OrderArguments {
  readonly file: string;
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
  readonly threads?: number;
  readonly date?: string;
  readonly json: boolean;
  readonly out?: string;
}

/** HiGHS, loaded when first needed; its wasm lies beside the command. */
export const loadSolver: SolverLoader = async () => {
  const { default: loader } = await import('highs');
  const load = loader as unknown as (options: {
    locateFile: (name: string) => string;
  }) => Promise<ProgrammeSolver>;
  return load({ locateFile: (name) => fileURLToPath(new URL(name, import.meta.url)) });
};

export function dayOf(
  option: string,
  given: string | undefined,
  otherwise: string | undefined,
): string {
  const date = given ?? otherwise ?? new Date().toISOString().slice(0, 10);
  if (!isDate(date))
    throw new MistakeError(`--${option}: "${date}" is not a day; write it as 2027-03-31`);
  return date;
}

export const orderProblems = (
  problems: readonly OrderProblem[],
  opened: OpenScenario,
  file: string,
): MistakeError => problemsAsMistake(inOrder(placed(problems, opened, file)));

export async function runOrder(args: OrderArguments): Promise<void> {
  const opened = await openScenario(args.file);
  const { scenario } = opened;
  const date = dayOf('date', args.date, scenario.supply?.date);
  const bar = await daysBar('running days');
  const runner = threadedRunner((days) => bar.add(days), args.threads);
  let result: Awaited<ReturnType<typeof orderStudy>>;
  try {
    const asked = {
      ...(args.level === undefined ? {} : { level: args.level }),
      ...(args.seed === undefined ? {} : { seed: args.seed }),
      ...(args.days === undefined ? {} : { days: args.days }),
    };
    result = await orderStudy(scenario, runner, { ...asked, date, loadSolver });
  } finally {
    bar.end();
    await runner.close();
  }
  if (!result.ok) throw orderProblems(result.problems, opened, args.file);
  const study = result.value;
  const context = contextOf(scenario, opened.inputs, version, piecesPerRackOf);
  const files =
    args.out === undefined
      ? []
      : await orderFiles(study, context, join(args.out, basename(args.file, extname(args.file))));
  await writeAll(files);
  if (args.json)
    process.stdout.write(
      `${JSON.stringify({ ...study.sheet, saucers: study.saucers, pools: study.pools, storage: study.storage, fetching: study.fetching })}\n`,
    );
  else
    process.stdout.write(
      `${orderText(study, context)}${files.length === 0 ? '' : `\nWritten:\n${files.map(({ path }) => `  ${path}\n`).join('')}`}`,
    );
}

async function orderFiles(
  study: OrderStudy,
  context: ReportContext,
  stem: string,
): Promise<{ path: string; content: string | Uint8Array }[]> {
  const { sheet, storage } = study;
  const look = { locale: context.locale, formats: formatsFor(context) };
  const specs: { id: string; spec: ChartSpec }[] = sheet.lines.flatMap((line) => [
    {
      id: `shelf-${line.ware}`,
      spec: shelfOverMonths({ course: line.course, name: line.name }, look),
    },
    ...(line.landedBySize.length === 0
      ? []
      : [
          {
            id: `landed-${line.ware}`,
            spec: landedCost(
              {
                name: line.name,
                currency: sheet.currency,
                points: line.landedBySize,
                chosenPieces: line.pieces,
              },
              look,
            ),
          },
        ]),
  ]);
  const charts = await Promise.all(
    specs.map(async ({ id, spec }) => ({
      id,
      title: titleOf(spec),
      bare: await renderSvg(withoutTitle(spec), { bare: true, idPrefix: id }),
      whole: standaloneSvg(await renderSvg(spec)),
    })),
  );
  const top = storage === null ? null : drawMachineTop(storage);
  const pictures = [
    ...(top === null ? [] : [{ title: english.order.machineTop, svg: top }]),
    ...charts.map(({ title, bare }) => ({ title, svg: bare })),
  ];
  return [
    { path: `${stem}.order.csv`, content: orderSheetCsv(sheet) },
    { path: `${stem}.order.xlsx`, content: await workbook(study) },
    { path: `${stem}.order.html`, content: orderPage(study, context, pictures) },
    ...(top === null ? [] : [{ path: `${stem}.machine-top.svg`, content: standaloneSvg(top) }]),
    ...charts.map(({ id, whole }) => ({ path: `${stem}.${id}.svg`, content: whole })),
  ];
}

async function workbook({ sheet }: OrderStudy): Promise<Uint8Array> {
  const { default: write } = await import('write-excel-file/node');
  const book = orderSheetXlsx(sheet);
  const written = write(book.sheets as never, { features: book.features } as never) as unknown as {
    toBuffer(): Promise<Uint8Array>;
  };
  return written.toBuffer();
}

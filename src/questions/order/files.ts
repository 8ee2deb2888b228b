/** The files of an order: the sheet as workbook, a page to print, and the pictures. */
import type { ReportContext } from '../../tell/context.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { Draw } from '../../tell/write-html.js';
import { madeInFull, type Made } from '../made.js';
import type { OutFile } from '../question.js';
import { orderPage } from './page.js';
import { orderCharts, orderDrawings } from './pictures.js';
import type { OrderStudy } from './study.js';
import { orderWorkbookFile } from './workbook.js';

/** @throws Error if a picture cannot be drawn */
export async function orderFiles(
  study: OrderStudy,
  context: ReportContext,
  draw: Draw,
  made?: Made,
): Promise<OutFile[]> {
  const { sheet } = study;
  const printed = made === undefined ? context : { ...context, made: madeInFull(made) };
  const charts = orderCharts(study, context);
  const drawings = orderDrawings(study, context);
  return [
    await orderWorkbookFile(sheet, made),
    { ending: 'order.html', content: await orderPage(study, printed, draw) },
    ...drawings.map(({ id, svg }) => ({ ending: `${id}.svg`, content: standaloneSvg(svg) })),
    ...(await Promise.all(
      charts.map(async ({ id, spec }) => ({
        ending: `${nameFor(id, study)}.svg`,
        content: standaloneSvg(await renderSvg(spec)),
      })),
    )),
  ];
}

/** `shelf-2` as a file is named after its ware: `shelf-saucer`. */
function nameFor(id: string, { sheet }: OrderStudy): string {
  const [what, number] = id.split('-');
  return `${what}-${sheet.lines[Number(number) - 1]!.ware}`;
}

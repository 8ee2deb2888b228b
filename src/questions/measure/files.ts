/** What the command writes: the blank sheet for print and spreadsheets, or the new scenario and pictures of the laws. */
import type { ReportContext } from '../../tell/context.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { OutFile } from '../question.js';
import type { SheetReading } from './answer.js';
import { sharesCharts } from './charts/counted-shares.js';
import { lawCharts } from './charts/fitted-laws.js';
import type { SheetFacts } from './facts.js';
import { sheetPage } from './print.js';
import { sheetCsv } from './template.js';
import { sheetXlsx } from './workbook.js';

export const planFiles = async (
  facts: SheetFacts,
  typefaces: () => Promise<string>,
): Promise<OutFile[]> => [
  { ending: 'sheet.html', content: sheetPage(facts, await typefaces()) },
  { ending: 'sheet.csv', content: sheetCsv(facts) },
  { ending: 'sheet.xlsx', content: await sheetXlsx(facts) },
];

/** @param text the scenario with what was measured in it; nothing measured, nothing written */
export async function readingFiles(
  { measured }: SheetReading,
  text: string,
  context: ReportContext,
): Promise<OutFile[]> {
  const ending = `measured.${text.trimStart().startsWith('{') ? 'json' : 'yaml'}`;
  return [
    ...(measured.length === 0 ? [] : [{ ending, content: text, fresh: true }]),
    ...(await Promise.all(
      [...lawCharts(measured, context), ...sharesCharts(measured, context)].map(
        async ({ id, spec }) => ({
          ending: `measured.${id}.svg`,
          content: standaloneSvg(await renderSvg(spec)),
        }),
      ),
    )),
  ];
}

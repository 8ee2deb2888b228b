/** The files of an answer about all sites. */
import type { ReportContext } from '../../tell/context.js';
import type { OutFile } from '../question.js';
import type { SitesAnswer } from './answer.js';
import { csvText, siteRows } from './csv.js';
import { sitesPage } from './page.js';
import type { PageParts } from './sorted-page.js';
import { orderRows, rollOutRows, sitesWorkbook } from './workbook.js';

export const sitesFiles = async (
  answer: SitesAnswer,
  context: ReportContext,
  page: PageParts & { readonly letters: ReadonlyMap<string, string> },
): Promise<OutFile[]> => [
  { ending: 'sites.csv', content: csvText(siteRows(answer, context)) },
  ...(answer.order === null ? [] : [{ ending: 'order.csv', content: csvText(orderRows(answer)) }]),
  ...(answer.rollOut === null
    ? []
    : [{ ending: 'calendar.csv', content: csvText(rollOutRows(answer)) }]),
  { ending: 'sites.xlsx', content: await sitesWorkbook(answer, context) },
  { ending: 'sites.html', content: await sitesPage(answer, context, page) },
  { ending: 'sites.json', content: `${JSON.stringify(answer, null, 1)}\n` },
];

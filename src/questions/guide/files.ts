/** The file of a guide: the page to print. */
import type { ReportContext } from '../../tell/context.js';
import type { OutFile } from '../question.js';
import type { Guide } from './answer.js';
import { guidePage } from './page.js';

export const guideFiles = async (
  guide: Guide,
  context: ReportContext,
  typefaces: () => Promise<string>,
): Promise<OutFile[]> => [
  { ending: 'guide.html', content: await guidePage(guide, context, await typefaces()) },
];

/** The files of suiting: its pictures. */
import type { SuitAnswer } from '../../suiting/answer.js';
import type { ReportContext } from '../../tell/context.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { OutFile } from '../question.js';
import { suitCharts } from './charts.js';

/** @throws Error if a picture cannot be drawn */
export const suitFiles = (
  answer: SuitAnswer,
  { locale, units }: ReportContext,
): Promise<OutFile[]> =>
  Promise.all(
    suitCharts(answer, locale, units).map(async ({ id, spec }) => ({
      ending: `${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );

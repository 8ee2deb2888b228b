/** The pictures of the racks as files: each item in its rack, and the two shapes of cup. */
import type { Scenario } from '../../scenario/scenario.js';
import type { ReportContext } from '../../tell/context.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { OutFile } from '../question.js';
import { rackPictures, racksCharts } from './pictures.js';
import type { RacksAnswer } from './answer.js';

/** Width of a drawing on a page, CSS pixels. */
const DRAWING_PX = 520;

/** @throws Error if a chart cannot be drawn */
export async function racksFiles(
  answer: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
  only?: string,
): Promise<OutFile[]> {
  const drawings = rackPictures(answer, scenario, context)
    .filter(({ line }) => only === undefined || line.ware === only)
    .map(({ line, title, draw }) => ({
      ending: `rack-${line.ware}.svg`,
      content: draw({ title, widthPx: DRAWING_PX }),
    }));
  const charts = await Promise.all(
    (only === undefined ? racksCharts(answer, context) : []).map(async ({ id, spec }) => ({
      ending: `${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );
  return [...drawings, ...charts];
}

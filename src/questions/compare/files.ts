/** The files of a comparison beside its JSON: all its details as text, and the pictures. */
import type { Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import { writeText } from '../../tell/write-text.js';
import type { OutFile } from '../question.js';
import type { Comparison } from './answer.js';
import { compareCharts } from './charts/compare-charts.js';

/** @throws Error if a picture cannot be drawn */
export async function compareFiles(
  comparison: Comparison,
  blocks: readonly Block[],
  context: ReportContext,
): Promise<OutFile[]> {
  const charts = await Promise.all(
    compareCharts(comparison, context).map(async ({ id, spec }) => ({
      ending: `compare.${id}.svg`,
      content: standaloneSvg(await renderSvg(spec)),
    })),
  );
  return [{ ending: 'compare.txt', content: writeText(blocks, { all: true }) }, ...charts];
}

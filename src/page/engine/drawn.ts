/** Charts drawn as pictures for the letter. */
import type { Chart } from '../../tell/charts/chart-table.js';
import { renderSvg } from '../../tell/render-svg.js';

/** In the letter the title stands beside the picture, so the picture goes without. */
export const drawnCharts = (charts: readonly Chart[]): Promise<(Chart & { svg: string })[]> =>
  Promise.all(
    charts.map(async (one) => ({
      ...one,
      svg: await renderSvg(one.spec, { bare: true, idPrefix: one.id }),
    })),
  );

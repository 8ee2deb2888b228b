/** Charts drawn for a document: there the title stands beside the picture, so the picture goes without. */
import type { Chart } from './charts/chart-table.js';
import type { ReportChart } from './html-picture.js';
import { renderSvg } from './render-svg.js';

export const drawnCharts = (charts: readonly Chart[]): Promise<ReportChart[]> =>
  Promise.all(charts.map(drawnChart));

export async function drawnChart({ spec, whole, narrow, ...chart }: Chart): Promise<ReportChart> {
  return {
    ...chart,
    svg: await renderSvg(spec, { bare: true, idPrefix: chart.id }),
    ...(whole === undefined
      ? {}
      : {
          whole: {
            label: whole.label,
            svg: await renderSvg(whole.spec, { bare: true, idPrefix: `${chart.id}-whole` }),
          },
        }),
    ...(narrow === undefined
      ? {}
      : { narrow: await renderSvg(narrow, { bare: true, idPrefix: `${chart.id}-narrow` }) }),
  };
}

/** Chart: the same drinks in two shapes of cup: pieces, racks and minutes. What a trainer shows staff. */
import type { TwoShapes } from './answer.js';
import { withSentence, telling } from '../../tell/charts/hover.js';
import { framed, palette, type ChartContext, type ChartSpec } from '../../tell/charts/style.js';
import { english } from '../../tell/words.js';
import { rackWords as say } from './words.js';

const rows = (
  { shapes, widerByMm }: TwoShapes,
  formats: ChartContext['formats'],
): { measure: string; shape: string; value: number }[] => {
  return shapes.flatMap((shape) => {
    const name = shape.wider
      ? english.charts.shapes.wider(formats.length(widerByMm))
      : say.asTheyAre;
    return [
      { measure: say.shapesAxis.pieces, shape: name, value: shape.pieces },
      { measure: say.shapesAxis.racks, shape: name, value: shape.racksADay },
      { measure: say.shapesAxis.full, shape: name, value: shape.fullRacksADay },
      { measure: say.shapesAxis.minutes, shape: name, value: shape.handlingMinutes },
    ];
  });
};

export function twoShapesChart(two: TwoShapes, { locale, formats }: ChartContext): ChartSpec {
  const { title: titleOf, sentence } = english.charts.shapes;
  const [now, wide] = [two.shapes[0]!, two.shapes[1]!];
  const title = titleOf(
    formats.length(two.widerByMm),
    wide.pieces - now.pieces,
    Math.round(wide.handlingMinutes - now.handlingMinutes),
  );
  const values = rows(two, formats).map((row) => {
    const figure = Number.isInteger(row.value)
      ? formats.count(row.value)
      : formats.decimal(row.value);
    return { ...row, figure, sentence: sentence(row.measure, row.shape, figure) };
  });
  return {
    ...framed({
      title,
      description: `${values
        .map((one) => one.sentence)
        .join('; ')
        .replace(/^./, (first) => first.toUpperCase())}.`,
      locale,
    }),
    data: { values },
    facet: {
      row: {
        field: 'measure',
        type: 'nominal',
        sort: Object.values(say.shapesAxis),
        title: null,
        header: {
          labelOrient: 'top',
          labelAnchor: 'start',
          labelFontSize: 12,
          labelColor: 'currentColor',
        },
      },
    },
    resolve: { scale: { x: 'independent' } },
    spec: {
      width: 340,
      height: 52,
      encoding: {
        y: { field: 'shape', type: 'nominal', sort: null, title: null },
        x: { field: 'value', type: 'quantitative', title: null, axis: { tickCount: 4 } },
      },
      layer: [
        {
          mark: { type: 'bar', ...telling, height: 18 },
          encoding: {
            ...withSentence,
            color: {
              field: 'shape',
              type: 'nominal',
              sort: null,
              legend: null,
              scale: { range: [palette.blue, palette.orange] },
            },
          },
        },
        { mark: { type: 'text', align: 'left', dx: 4 }, encoding: { text: { field: 'figure' } } },
      ],
    },
  };
}

/** Pictures of the racks: each item in its rack, to scale, and the same drinks in two shapes of cup. */
import { rackLayout } from '../../racking/layout.js';
import { rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { drawRack } from '../../tell/drawings/rack-drawing.js';
import { formatsFor } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { shortName } from '../../tell/section-parts.js';
import { fitText, slackText } from './line-text.js';
import type { RackLine, RacksAnswer } from './answer.js';
import { twoShapesChart } from './two-shapes.js';
import { rackWords as say } from './words.js';

/** Longest name that a drawing in the letter has room for. */
const DRAWN_NAME = 30;

export interface RackPicture {
  readonly line: RackLine;
  readonly title: string;
  /** The drawing as SVG. */
  readonly draw: (options: { readonly title: string; readonly widthPx?: number }) => string;
}

/** One for each item whose shape is known, in the rack it is washed in. */
export function rackPictures(
  { lines }: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
): RackPicture[] {
  const measures = formatsFor(context);
  return lines
    .filter(({ used, pieces }) => used && pieces > 0)
    .flatMap((line, index) => {
      const vessel = vesselOf(scenario.ware[line.ware]!);
      const rack = rackOf(line.rack, scenario.racks);
      if (vessel === null || rack === null) return [];
      return [
        {
          line,
          title: say.drawingTitle(
            shortName(line.name),
            measures.count(line.pieces),
            line.rackName.toLowerCase(),
          ),
          draw: (options) =>
            drawRack(rackLayout(vessel, rack, scenario.racks?.loading ?? 'best'), vessel, rack, {
              id: `rack-${index + 1}`,
              measures,
              ...options,
            }),
        },
      ];
    });
}

/** The drawings as the letter shows them, each with its figures. */
export function rackDrawings(
  answer: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
): ReportChart[] {
  const formats = formatsFor(context);
  return rackPictures(answer, scenario, context).map(({ line, title, draw }, index) => ({
    id: `rack-drawing-${index + 1}`,
    title,
    words: say.drawn(fitText(line, formats)),
    svg: draw({ title: shorten(shortName(line.name), DRAWN_NAME) }),
    table: {
      caption: say.drawingTable,
      columns: [
        { title: say.ware, as: 'text' },
        { title: shortName(line.name), as: 'text' },
      ],
      rows: [
        [say.pieces, formats.count(line.pieces)],
        [say.area, formats.percent(line.areaShare, 0)],
        [say.bound, say.binds[line.binds]],
        [say.slack, slackText(line, formats)],
      ],
    },
  }));
}

/** The same drinks in two shapes of cup, where that could be worked out. */
export function racksCharts({ twoShapes }: RacksAnswer, context: ReportContext): Chart[] {
  if (twoShapes === null) return [];
  const formats = formatsFor(context);
  const { pieces, racks, full, minutes } = say.shapesAxis;
  return [
    chart('two-shapes', twoShapesChart(twoShapes, { locale: context.locale, formats }), {
      caption: say.shapesTable,
      columns: [
        { title: say.shape, as: 'text' },
        { title: pieces, as: 'count' },
        ...[racks, full, minutes].map((title) => ({ title, as: 'decimal' as const })),
      ],
      rows: twoShapes.shapes.map((shape) => [
        shape.wider ? say.wider(formats.length(twoShapes.widerByMm)) : say.asTheyAre,
        shape.pieces,
        shape.racksADay,
        shape.fullRacksADay,
        shape.handlingMinutes,
      ]),
    }),
  ];
}

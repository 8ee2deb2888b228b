/** The section of the racks: how many pieces each takes and how near that is to another number, the lift, washing, two shapes. */
import { rackKind } from '../../catalogue/catalogue.js';
import { rackLayout } from '../../racking/layout.js';
import { rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import type { RackLine, RacksAnswer } from './study.js';
import type { Scenario } from '../../scenario/scenario.js';
import { cautionsFor } from '../../tell/cautions.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { twoShapesChart } from './two-shapes.js';
import { shorten } from '../../tell/clean-text.js';
import { drawRack } from '../../tell/drawings/rack-drawing.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { english, type Words } from '../../tell/words.js';
import type { ReportContext } from '../../tell/context.js';
import {
  drawingList,
  folded,
  heading,
  joined,
  list,
  paragraph,
  pictureList,
  shortName,
  subheading,
  table,
} from '../../tell/section-parts.js';

/** Racks less full than this on the mean leave half empty or worse. */
const PART_FULL = 0.5;
/** Longest name that a drawing has room for. */
const DRAWN_NAME = 30;
/** Minutes of a use at a place below which the place is left out. */
const HARDLY = 0.05;

/** A drawing of each rack in use, to scale. */
export function rackDrawings(
  answer: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
): ReportChart[] {
  const words = context.words ?? english;
  const formats = formatsFor(context);
  return answer.lines
    .filter(({ used, pieces }) => used && pieces > 0)
    .flatMap((line, index) => {
      const [vessel, rack] = [
        vesselOf(scenario.ware[line.ware]!),
        rackOf(line.rack, scenario.racks),
      ];
      if (vessel === null || rack === null) return [];
      const title = words.racks.drawingTitle(shortName(line.name), line.pieces, line.rackName);
      return [
        {
          id: `rack-drawing-${index + 1}`,
          title,
          words: words.sections.racks.drawn(fitText(line, formats, words)),
          svg: drawRack(rackLayout(vessel, rack, scenario.racks?.loading ?? 'best'), vessel, rack, {
            title: shorten(shortName(line.name), DRAWN_NAME),
            id: `rack-${index + 1}`,
          }),
          table: {
            caption: words.sections.racks.drawingTable,
            columns: [
              { title: words.racks.ware, as: 'text' },
              { title: shortName(line.name), as: 'text' },
            ],
            rows: [
              [words.racks.pieces, formats.count(line.pieces)],
              [flat(words.racks.area), formats.percent(line.areaShare)],
              [flat(words.racks.bound), words.racks.binds(line.binds)],
              [words.sections.racks.head2.slack, slackText(line, formats, words)],
            ],
          },
        },
      ];
    });
}

/** The same drinks in two shapes of cup, where it could be worked out. */
export function racksCharts({ twoShapes }: RacksAnswer, context: ReportContext): Chart[] {
  if (twoShapes === null) return [];
  const words = context.words ?? english;
  const formats = formatsFor(context);
  const { shapesAxis, asTheyAre } = words.racks;
  const wider = words.sections.racks.wider(formats.length(twoShapes.widerByMm));
  return [
    chart('two-shapes', twoShapesChart(twoShapes, { locale: context.locale, formats }, words), {
      caption: words.sections.racks.shapesTable,
      columns: [
        { title: words.racks.ware, as: 'text' },
        { title: shapesAxis.pieces, as: 'count' },
        { title: shapesAxis.racks, as: 'decimal' },
        { title: shapesAxis.full, as: 'decimal' },
        { title: shapesAxis.minutes, as: 'decimal' },
      ],
      rows: twoShapes.shapes.map((shape) => [
        shape.wider ? wider : asTheyAre,
        shape.pieces,
        shape.racksADay,
        shape.fullRacksADay,
        shape.handlingMinutes,
      ]),
    }),
  ];
}

/** @param pictures of `rackDrawings` and, drawn, of `racksCharts` */
export function racksSection(
  answer: RacksAnswer,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const words = context.words ?? english;
  const say = words.sections.racks;
  const formats = formatsFor(context);
  const { lines, plan, lift } = answer;
  const used = lines.filter((line) => line.used);
  const others = lines.filter((line) => !line.used);
  const extended = lines.filter((line) => (line.used || line.planned) && line.extenders > 0);
  return joined([
    heading(say.head),
    list(used.map((line) => `${fitText(line, formats, words)}.`)),
    paragraph(
      say.plan(
        plan.usedRacksADay === null ? null : formats.decimal(plan.usedRacksADay),
        formats.decimal(plan.racksADay),
      ),
    ),
    list([
      ...extended.map((line) =>
        words.racks.extenders(
          shortName(line.name),
          rackName(line.rack, line.rackName),
          line.extenders,
        ),
      ),
      ...answer.given.map(({ name, pieces, rack, from }) =>
        words.racks.given(shortName(name), pieces, rack, from),
      ),
      ...used.flatMap((line) =>
        line.problems.map(
          (problem) => `${shortName(line.name)}, ${rackName(line.rack, line.rackName)}: ${problem}`,
        ),
      ),
    ]),
    linesTable(say.usedCaption, used, formats, words),
    paragraph(say.searched, 'small'),
    folded(say.otherRacks, linesTable(say.otherCaption, others, formats, words)),
    drawingList(
      pictures.filter(({ id }) => id !== 'two-shapes'),
      formats,
      words,
    ),
    answer.liftCaution === null ? '' : paragraph(answer.liftCaution),
    paragraph(
      say.lift(
        formats.height(lift.reachCm),
        formats.height(lift.fromCm),
        formats.height(lift.toCm),
      ),
      'small',
    ),
    ...washing(answer, formats, words),
    ...twoShapes(answer, formats, words),
    pictureList(
      pictures.filter(({ id }) => id === 'two-shapes'),
      formats,
      words,
    ),
    used.some((line) => line.glass && line.rack === 'open')
      ? paragraph(words.racks.glassApart, 'small')
      : '',
    ...cautionsFor(context)
      .filter(({ id }) => id === 'lifting' || id === 'brokenGlass')
      .map(({ title, text, defersTo }) =>
        paragraph(`${title}: ${text} (${words.cautions.defers} ${defersTo}.)`, 'small'),
      ),
  ]);
}

const flat = (title: string): string => title.replaceAll('\n', ' ');

const rackName = (id: string, name = rackKind(id)?.name ?? id): string =>
  `${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/** "Medium cup: 21 in one open rack; 1.9 mm more rim: 20 instead of 21" */
function fitText(line: RackLine, formats: Formats, words: Words): string {
  const say = words.sections.racks;
  const now = formats.count(line.pieces);
  const { cliff } = line;
  const near =
    line.pieces === 0
      ? ''
      : cliff === null
        ? say.noCliff
        : say.cliff(
            formats.length(Math.abs(cliff.changeMm)),
            cliff.changeMm < 0,
            say.dimension[cliff.dimension],
            formats.count(cliff.piecesThen),
            now,
          );
  return `${say.fits(shortName(line.name), now, rackName(line.rack, line.rackName))}${near}`;
}

/** Rounded down, so that no slack is promised that is not there. */
const slackText = ({ slackMm, pieces }: RackLine, formats: Formats, words: Words): string =>
  slackMm === null
    ? pieces === 0
      ? words.racks.unknown
      : words.racks.ample
    : formats.room(slackMm);

function linesTable(
  caption: string,
  lines: readonly RackLine[],
  formats: Formats,
  words: Words,
): string {
  const say = words.racks;
  const { head2, near, dimension, planned } = words.sections.racks;
  return table({
    caption,
    words: [1, 4, 7],
    head: [
      say.ware,
      head2.rack,
      say.pieces,
      say.area,
      say.bound,
      say.turns,
      head2.slack,
      head2.near,
      head2.load,
      say.lift,
    ],
    rows: lines.map((line) => [
      shortName(line.name),
      line.planned && !line.used
        ? `${rackName(line.rack, line.rackName)} (${planned})`
        : rackName(line.rack, line.rackName),
      formats.count(line.pieces),
      formats.percent(line.areaShare, 0),
      say.binds(line.binds),
      line.straight === null || line.at45 === null
        ? say.unknown
        : `${formats.count(line.straight)} / ${formats.count(line.at45)}`,
      slackText(line, formats, words),
      line.cliff === null
        ? say.unknown
        : near(
            formats.length(Math.abs(line.cliff.changeMm)),
            line.cliff.changeMm < 0,
            dimension[line.cliff.dimension],
            formats.count(line.cliff.piecesThen),
          ),
      line.loadedKg === null ? say.unknown : formats.mass(line.loadedKg * 1000),
      line.liftingIndex === null
        ? line.loadedKg === null
          ? say.unknown
          : say.noLoad
        : formats.decimal(line.liftingIndex),
    ]),
  });
}

function washing(
  { washing: { loads, openHours, queue, places, minutes, quarters }, days }: RacksAnswer,
  formats: Formats,
  words: Words,
): string[] {
  const say = words.racks;
  const { decimal, clock } = formats;
  const shown = places
    .map((place, index) => ({ place, index }))
    .filter(({ index }) => minutes.some((line) => line.minutes[index]! >= HARDLY));
  return [
    subheading(say.washing(days)),
    list([
      say.rate(
        decimal(loads.aDay / (openHours === 0 ? 1 : openHours)),
        decimal(loads.racksADay),
        formats.percent(loads.fill),
      ),
      say.handling(
        formats.count(Math.round(loads.handlingMinutes)),
        formats.count(Math.round(loads.polishingMinutes)),
      ),
      queue === null ? say.noQueue : say.queue(clock(queue.fromMinute), clock(queue.toMinute)),
      say.needed(
        loads.racksNeeded
          .map(({ kind, racks }) => `${formats.count(racks)} × ${rackName(kind)}`)
          .join(', '),
      ),
    ]),
    table({
      caption: say.placesTitle,
      head: [say.ware, ...shown.map(({ place }) => place)],
      rows: minutes.map((line) => [
        shortName(line.name),
        ...shown.map(({ index }) => decimal(line.minutes[index]!)),
      ]),
    }),
    folded(
      words.sections.racks.quarters,
      table({
        caption: say.quartersTitle,
        head: [say.from, say.machines, say.hands, say.waiting],
        rows: quarters.map((one) => [
          clock(one.minute),
          decimal(one.machines),
          decimal(one.hands),
          decimal(one.racksWaiting),
        ]),
      }),
    ),
  ];
}

function twoShapes(
  { twoShapes: shapes, lines, washing: { loads } }: RacksAnswer,
  formats: Formats,
  words: Words,
): string[] {
  if (shapes === null) return [];
  const say = words.racks;
  const { decimal, count } = formats;
  const wider = formats.length(shapes.widerByMm);
  const [now, wide] = shapes.shapes;
  const moved = Object.entries(wide?.racks ?? {}).filter(
    ([ware, rack]) => now?.racks[ware] !== rack,
  );
  return [
    table({
      caption: words.sections.racks.shapesCaption(wider),
      head: [words.sections.racks.shape, ...say.shapesHead.slice(1)],
      rows: shapes.shapes.map((shape) => [
        shape.wider ? words.sections.racks.wider(wider) : say.asTheyAre,
        count(shape.pieces),
        Object.values(shape.perRack).map(count).join(', '),
        decimal(shape.racksADay),
        decimal(shape.fullRacksADay),
        decimal(shape.handlingMinutes),
        formats.money(shape.cost),
      ]),
    }),
    ...moved.map(([ware, rack]) =>
      paragraph(
        say.shapesMoved(
          shortName(lines.find((line) => line.ware === ware)?.name ?? ware),
          rackName(rack),
        ),
      ),
    ),
    loads.fill < PART_FULL ? paragraph(say.shapesPartFull(formats.percent(loads.fill))) : '',
  ];
}

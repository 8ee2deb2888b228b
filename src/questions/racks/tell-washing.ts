/** The second half of the racks: washing as the rush has it, and the same drinks in wider cups. */
import {
  fold,
  heading,
  list,
  paragraphs,
  table,
  type Block,
  type Column,
} from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { rackName } from './line-text.js';
import { racksCharts } from './pictures.js';
import type { RacksAnswer } from './answer.js';
import { rackWords as say } from './words.js';

/** Racks less full than this on average are half empty or worse. */
const PART_FULL = 0.5;
/** Minutes of a use at a place below which the place is left out. */
const HARDLY = 0.05;

const columns = (first: string, rest: readonly string[]): Column[] => [
  { title: first, as: 'words' },
  ...rest.map((title) => ({ title, as: 'figures' as const })),
];

export function washingBlocks({ washing, days }: RacksAnswer, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { loads, openHours } = washing;
  const polishing = Math.round(loads.polishingMinutes);
  return [
    heading(say.washing(formats.count(days)), 2),
    paragraphs(
      washing.kindOfDay === null ? [] : [say.kindOfDay(shortName(washing.kindOfDay))],
      'small',
    ),
    list([
      say.rate(formats.decimal(loads.aDay / (openHours === 0 ? 1 : openHours))),
      say.handling(
        minutes(loads.handlingMinutes, formats),
        polishing === 0 ? '' : minutes(polishing, formats),
      ),
      say.needed(
        loads.racksNeeded
          .map(({ kind, racks }) => say.neededRack(formats.count(racks), rackName(kind)))
          .join(', '),
      ),
    ]),
    fold(say.placesFold, [placesTable(washing, formats)]),
    fold(say.quartersFold, [
      table({
        caption: say.quartersTitle,
        columns: columns(say.from, [say.machines, say.hands, say.waiting]),
        rows: washing.quarters.map((one) => [
          formats.clock(one.minute),
          ...[one.machines, one.hands, one.racksWaiting].map((many) => formats.decimal(many)),
        ]),
      }),
    ]),
  ];
}

const minutes = (value: number, formats: Formats): string => formats.minutes(Math.round(value));

function placesTable({ places, minutes: lines }: RacksAnswer['washing'], formats: Formats): Block {
  const shown = places
    .map((place, index) => ({ place, index }))
    .filter(({ index }) => lines.some((line) => line.minutes[index]! >= HARDLY));
  return table({
    caption: say.placesTitle,
    columns: columns(
      say.ware,
      shown.map(({ place }) => place),
    ),
    rows: lines.map((line) => [
      shortName(line.name),
      ...shown.map(({ index }) => formats.decimal(line.minutes[index]!)),
    ]),
  });
}

/** Nothing where no wider cup could be worked out. */
export function shapesBlocks(answer: RacksAnswer, context: ReportContext): Block[] {
  const { twoShapes: shapes, lines, washing } = answer;
  if (shapes === null) return [];
  const formats = formatsFor(context);
  const { decimal, count } = formats;
  const wider = formats.length(shapes.widerByMm);
  const [now, wide] = shapes.shapes;
  const moved = Object.entries(wide?.racks ?? {}).filter(
    ([ware, rack]) => now?.racks[ware] !== rack,
  );
  const { fill } = washing.loads;
  return [
    table({
      caption: say.shapesCaption(wider, count(answer.days)),
      columns: columns(say.shape, say.shapesHead),
      rows: shapes.shapes.map((shape) => [
        shape.wider ? say.wider(wider) : say.asTheyAre,
        count(shape.pieces),
        Object.values(shape.perRack).map(count).join(', '),
        decimal(shape.racksADay),
        decimal(shape.fullRacksADay),
        minutes(shape.handlingMinutes, formats),
        formats.money(shape.cost),
      ]),
    }),
    paragraphs([
      ...moved.map(([ware, rack]) =>
        say.shapesMoved(
          shortName(lines.find((line) => line.ware === ware)?.name ?? ware),
          rackName(rack),
        ),
      ),
      fill < PART_FULL ? say.shapesPartFull(formats.percent(fill, 0)) : '',
    ]),
    { kind: 'picture', pictures: racksCharts(answer, context) },
  ];
}

/** The racks for a terminal: pieces in each kind, then washing as the rush has it. */
import type { RacksAnswer } from './study.js';
import { cautionsFor } from '../../tell/cautions.js';
import { cleanText } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, textTable, wrapText } from '../../tell/format.js';
import { english } from '../../tell/words.js';

const WIDTH = 100;
/** Racks less full than this on the mean leave half empty or worse. */
const PART_FULL = 0.5;

/** @param only show this ware alone in the first table */
export function racksText(answer: RacksAnswer, context: ReportContext, only?: string): string {
  const words = context.words ?? english;
  const say = words.racks;
  const formats = formatsFor(context);
  const lines = answer.lines.filter(({ ware }) => only === undefined || ware === only);
  const table = textTable(
    [
      say.ware,
      say.rack,
      say.pieces,
      say.area,
      say.loads,
      say.bound,
      say.turns,
      say.slack,
      say.near,
      say.mass,
      say.lift,
    ].map((title, at) => ({ title, right: ![0, 1, 5, 8].includes(at) })),
    lines.map((line) => [
      cleanText(line.name),
      `${line.rack}${line.used ? '*' : ''}${line.planned ? '+' : ''}`,
      formats.count(line.pieces),
      formats.percent(line.areaShare),
      line.loadsPer100 === null ? say.unknown : formats.count(line.loadsPer100),
      say.binds(line.binds),
      line.straight === null ? say.unknown : `${line.straight} / ${line.at45}`,
      line.slackMm === null
        ? line.pieces === 0
          ? say.unknown
          : say.ample
        : formats.decimal(Math.floor(line.slackMm * 10 + 1e-9) / 10),
      line.cliff === null ? say.unknown : say.cliff(line.cliff),
      line.loadedKg === null ? say.unknown : formats.decimal(line.loadedKg),
      line.liftingIndex === null
        ? line.loadedKg === null
          ? say.unknown
          : say.noLoad
        : formats.decimal(line.liftingIndex),
    ]),
    WIDTH + 20,
  );
  const problems = lines.flatMap((line) =>
    line.problems.map((problem) => `${cleanText(line.name)}, ${line.rack}: ${problem}`),
  );
  const planned = (used: number | null): string | null =>
    used === null ? null : formats.decimal(used);
  const marked = lines.filter((line) => line.used || line.planned);
  const remarks = [
    ...(only === undefined
      ? [say.plan(planned(answer.plan.usedRacksADay), formats.decimal(answer.plan.racksADay))]
      : []),
    ...marked
      .filter(({ extenders }) => extenders > 0)
      .map((line) => say.extenders(cleanText(line.name), line.rack, line.extenders)),
    ...(marked.some((line) => line.glass && line.rack === 'open') ? [say.glassApart] : []),
  ];
  const { washing } = answer;
  const opening = answer.washing.openHours === 0 ? 1 : answer.washing.openHours;
  const places = washing.places
    .map((place, index) => ({ place, index }))
    .filter(({ index }) => washing.minutes.some(({ minutes }) => minutes[index]! >= 0.05));
  const shapes = answer.twoShapes;
  const parts: string[][] = [
    [say.tableTitle, '', ...table, say.marks],
    remarks.flatMap((line) => wrapText(line, WIDTH)),
    [
      ...answer.given
        .filter(({ ware }) => only === undefined || ware === only)
        .map(({ name, pieces, rack, from }) => say.given(cleanText(name), pieces, rack, from)),
      ...problems,
    ].flatMap((line) => wrapText(line, WIDTH)),
    [
      ...wrapText(say.liftTold(answer.lift.reachCm, answer.lift.fromCm, answer.lift.toCm), WIDTH),
      ...(answer.liftCaution === null ? [] : wrapText(answer.liftCaution, WIDTH)),
    ],
    only === undefined
      ? [
          say.washing(answer.days),
          '',
          say.rate(
            formats.decimal(washing.loads.aDay / opening),
            formats.decimal(washing.loads.racksADay),
            formats.percent(washing.loads.fill),
          ),
          say.handling(
            formats.count(Math.round(washing.loads.handlingMinutes)),
            formats.count(Math.round(washing.loads.polishingMinutes)),
          ),
          washing.queue === null
            ? say.noQueue
            : say.queue(
                formats.clock(washing.queue.fromMinute),
                formats.clock(washing.queue.toMinute),
              ),
          ...wrapText(
            say.needed(
              washing.loads.racksNeeded.map(({ kind, racks }) => `${racks} ${kind}`).join(', '),
            ),
            WIDTH,
          ),
          '',
          say.placesTitle,
          ...textTable(
            [
              { title: say.ware },
              ...places.map(({ place }) => ({
                title: place.replace(', ', '\n').replace(' the ', '\nthe '),
                right: true,
              })),
            ],
            washing.minutes.map(({ name, minutes }) => [
              cleanText(name),
              ...places.map(({ index }) => formats.decimal(minutes[index]!)),
            ]),
            WIDTH,
          ),
          '',
          say.quartersTitle,
          ...textTable(
            [
              { title: say.from },
              ...[say.machines, say.hands, say.waiting].map((title) => ({ title, right: true })),
            ],
            washing.quarters.map(({ minute, machines, hands, racksWaiting }) => [
              formats.clock(minute),
              formats.decimal(machines),
              formats.decimal(hands),
              formats.decimal(racksWaiting),
            ]),
            WIDTH,
          ),
        ]
      : [],
    only !== undefined || shapes === null
      ? []
      : [
          say.shapesTitle(shapes.widerByMm),
          ...textTable(
            say.shapesHead.map((title, at) => ({ title, right: at > 0 })),
            shapes.shapes.map((shape) => [
              shape.wider ? say.wider(shapes.widerByMm) : say.asTheyAre,
              formats.count(shape.pieces),
              Object.values(shape.perRack).join(', '),
              formats.decimal(shape.racksADay),
              formats.decimal(shape.fullRacksADay),
              formats.decimal(shape.handlingMinutes),
              formats.money(shape.cost),
            ]),
            WIDTH,
          ),
          ...moved(answer).flatMap(({ name, rack }) =>
            wrapText(say.shapesMoved(cleanText(name), rack), WIDTH),
          ),
          ...(washing.loads.fill < PART_FULL
            ? wrapText(say.shapesPartFull(formats.percent(washing.loads.fill)), WIDTH)
            : []),
        ],
    cautionsFor(context).flatMap(({ title, text, defersTo }) =>
      wrapText(`${title}: ${text} (${words.cautions.defers} ${defersTo}.)`, WIDTH, '  '),
    ),
  ];
  return `${parts
    .filter((part) => part.length > 0)
    .map((part) => part.join('\n'))
    .join('\n\n')}\n`;
}

/** Cups that go in another kind of rack once they are wider. */
function moved({
  twoShapes,
  lines,
}: RacksAnswer): { readonly name: string; readonly rack: string }[] {
  const [now, wide] = twoShapes?.shapes ?? [];
  if (now === undefined || wide === undefined) return [];
  return Object.entries(wide.racks).flatMap(([ware, rack]) =>
    now.racks[ware] === rack
      ? []
      : [
          {
            name: lines.find((line) => line.ware === ware)?.name ?? ware,
            rack: (lines.find((line) => line.rack === rack)?.rackName ?? rack).toLowerCase(),
          },
        ],
  );
}

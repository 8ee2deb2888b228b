/** The racks for a terminal: pieces in each kind, then washing as the rush has it. */
import type { RacksAnswer } from '../study/racks-study.js';
import { cautionsFor } from './cautions.js';
import { cleanText } from './clean-text.js';
import type { ReportContext } from './context.js';
import { formatsFor, textTable, wrapText } from './format.js';
import { english } from './words.js';

const WIDTH = 100;

/** @param only show this ware alone in the first table */
export function racksText(answer: RacksAnswer, context: ReportContext, only?: string): string {
  const words = context.words ?? english;
  const say = words.racks;
  const formats = formatsFor(context);
  const lines = answer.lines.filter(({ ware }) => only === undefined || ware === only);
  const table = textTable(
    [say.ware, say.rack, say.pieces, say.area, say.loads, say.bound, say.turns, say.slack, say.near, say.mass, say.lift].map((title, at) => ({ title, right: ![0, 1, 5, 8].includes(at) })),
    lines.map((line) => [
      cleanText(line.name),
      `${line.rack}${line.used ? '*' : ''}${line.planned ? '+' : ''}`,
      formats.count(line.pieces),
      formats.percent(line.areaShare),
      line.loadsPer100 === null ? '–' : formats.count(line.loadsPer100),
      say.binds(line.binds),
      line.straight === null ? '–' : `${line.straight} / ${line.at45}`,
      line.slackMm === null ? 'ample' : formats.decimal(line.slackMm),
      line.cliff === null ? '–' : say.cliff(line.cliff),
      formats.decimal(line.loadedKg),
      line.liftingIndex === null ? 'none' : formats.decimal(line.liftingIndex),
    ]),
    WIDTH + 20,
  );
  const problems = lines.flatMap((line) => line.problems.map((problem) => `${cleanText(line.name)}, ${line.rack}: ${problem}`));
  const { washing } = answer;
  const opening = answer.washing.openHours === 0 ? 1 : answer.washing.openHours;
  const places = washing.places.map((place, index) => ({ place, index })).filter(({ index }) => washing.minutes.some(({ minutes }) => minutes[index]! >= 0.05));
  const shapes = answer.twoShapes;
  const parts: string[][] = [
    [say.tableTitle, '', ...table, say.marks],
    [...answer.given.map(({ name, pieces, rack, from }) => say.given(cleanText(name), pieces, rack, from)), ...problems].flatMap((line) => wrapText(line, WIDTH)),
    [...wrapText(say.liftTold(answer.lift.reachCm, answer.lift.fromCm, answer.lift.toCm), WIDTH), ...wrapText(answer.liftCaution, WIDTH)],
    only === undefined
      ? [
          say.washing(answer.days),
          '',
          say.rate(formats.decimal(washing.loads.aDay / opening), formats.decimal(washing.loads.racksADay), formats.percent(washing.loads.fill)),
          say.handling(formats.count(Math.round(washing.loads.handlingMinutes)), formats.count(Math.round(washing.loads.polishingMinutes))),
          washing.queue === null ? say.noQueue : say.queue(formats.clock(washing.queue.fromMinute), formats.clock(washing.queue.toMinute)),
          ...wrapText(say.needed(washing.loads.racksNeeded.map(({ kind, racks }) => `${racks} ${kind}`).join(', ')), WIDTH),
          '',
          say.placesTitle,
          ...textTable(
            [{ title: say.ware }, ...places.map(({ place }) => ({ title: place.replace(', ', '\n').replace(' the ', '\nthe '), right: true }))],
            washing.minutes.map(({ name, minutes }) => [cleanText(name), ...places.map(({ index }) => formats.decimal(minutes[index]!))]),
            WIDTH,
          ),
          '',
          say.quartersTitle,
          ...textTable(
            [{ title: say.from }, ...[say.machines, say.hands, say.waiting].map((title) => ({ title, right: true }))],
            washing.quarters.map(({ minute, machines, hands, racksWaiting }) => [formats.clock(minute), formats.decimal(machines), formats.decimal(hands), formats.decimal(racksWaiting)]),
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
              formats.decimal(shape.handlingMinutes),
              formats.money(shape.cost),
            ]),
            WIDTH,
          ),
        ],
    cautionsFor(context).flatMap(({ title, text, defersTo }) => wrapText(`${title}: ${text} (${words.cautions.defers} ${defersTo}.)`, WIDTH, '  ')),
  ];
  return `${parts.filter((part) => part.length > 0).map((part) => part.join('\n')).join('\n\n')}\n`;
}

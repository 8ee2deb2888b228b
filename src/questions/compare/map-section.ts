/** The section of the trade-off map: what machines and clearing rounds are worth in ware. */
import { machineClass } from '../../catalogue/catalogue.js';
import type { MapPoint, TradeOffMap } from './answer.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { tradeOffMapChart, tradeOffMapTable } from './charts/trade-off-map.js';
import { minutesText } from './parts.js';
import { wholeMoney } from './text.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { english, listed, type Words } from '../../tell/words.js';
import type { ReportContext } from '../../tell/context.js';
import { heading, joined, paragraph, pictureList, table } from '../../tell/section-parts.js';

type Whole = (amount: number) => string;

/** A chart for each class of machine on the map. */
export function mapCharts(map: TradeOffMap, context: ReportContext): Chart[] {
  const words = context.words ?? english;
  const look = { locale: context.locale, formats: formatsFor(context) };
  return classesOf(map).map((cls) =>
    chart(
      `trade-off-map-${cls}`,
      tradeOffMapChart(map, cls, context.currency, look, words),
      tradeOffMapTable(map, words),
    ),
  );
}

/** @param pictures the charts of `mapCharts`, drawn */
export const mapSection = (
  map: TradeOffMap,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string =>
  joined([
    mapBody(map, context, pictures),
    paragraph((context.words ?? english).compare.informs, 'small'),
  ]);

export function mapBody(
  map: TradeOffMap,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const words = context.words ?? english;
  const say = words.sections.map;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { cheapest } = map;
  const sentences = new Map(
    classesOf(map).map((cls) => [
      `trade-off-map-${cls}`,
      worthSentence(map, cls, formats, whole, words),
    ]),
  );
  const own = pictures
    .filter(({ id }) => sentences.has(id))
    .map((one) => ({ ...one, words: `${sentences.get(one.id)!} ${one.words}` }));
  return joined([
    heading(say.head),
    ...[...sentences.values()].map((text) => paragraph(text)),
    paragraph(
      words.compare.cheapest(
        formats.count(cheapest.machines),
        className(cheapest.machineClass),
        minutesText(cheapest.clearingMinutes, formats),
        whole(cheapest.total),
      ),
    ),
    paragraph(say.noise(formats.count(map.days)), 'small'),
    mapTable(map, formats, whole, words),
    pictureList(own, formats, words),
  ]);
}

const classesOf = ({ points }: TradeOffMap): string[] => [
  ...new Set(points.map(({ machineClass: cls }) => cls)),
];

/** The name of a class as it stands within a sentence. */
function className(id: string): string {
  const name = machineClass(id)?.name ?? id;
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** What each further machine is worth: from the least to the most over the clearing rounds, as single points are noisy. */
function worthSentence(
  map: TradeOffMap,
  cls: string,
  formats: Formats,
  whole: Whole,
  words: Words,
): string {
  const say = words.sections.map;
  const ofClass = map.machineWorth.filter((one) => one.machineClass === cls);
  const steps = [...new Set(ofClass.map(({ from }) => from))]
    .toSorted((a, b) => a - b)
    .map((from) => ofClass.filter((one) => one.from === from));
  const pieces = (one: { readonly pieces: number }): number => Math.max(0, Math.round(one.pieces));
  const range = (step: readonly { readonly pieces: number }[]): string => {
    const [least, most] = [Math.min(...step.map(pieces)), Math.max(...step.map(pieces))];
    return least === most
      ? formats.count(least)
      : words.answer.to(formats.count(least), formats.count(most));
  };
  const [first, ...then] = steps;
  const best = first?.toSorted((a, b) => b.pieces - a.pieces)[0];
  if (first === undefined || best === undefined || pieces(best) === 0)
    return say.worthNothing(className(cls));
  return say.worth(
    className(cls),
    best.to - best.from,
    range(first),
    minutesText(best.clearingMinutes, formats),
    whole(Math.max(0, best.stockCost)),
    then.length === 0 ? '' : listed(then.map(range), words),
  );
}

/** A row for each class, number of machines and of racks; a column for each round. */
function mapTable(
  { points, days }: TradeOffMap,
  formats: Formats,
  whole: Whole,
  words: Words,
): string {
  const { mapHead, mapTitle, round } = words.compare;
  const rounds = [...new Set(points.map(({ clearingMinutes }) => clearingMinutes))];
  const key = ({ machineClass: cls, machines, racks }: MapPoint): string =>
    `${cls}/${machines}/${racks}`;
  const rows = [...new Map(points.map((point) => [key(point), point])).values()];
  const racked = points.some(({ racks }) => racks !== null);
  return table({
    caption: mapTitle(formats.count(days)),
    head: [
      mapHead.class,
      mapHead.machines,
      ...(racked ? [mapHead.racks] : []),
      ...rounds.map((minutes) => round(minutesText(minutes, formats))),
    ],
    rows: rows.map((row) => [
      className(row.machineClass),
      formats.count(row.machines),
      ...(racked ? [row.racks === null ? words.answer.none : formats.count(row.racks)] : []),
      ...rounds.map((minutes) => {
        const found = points.find(
          (point) => key(point) === key(row) && point.clearingMinutes === minutes,
        );
        return found === undefined ? words.answer.none : whole(found.stockCost);
      }),
    ]),
  });
}

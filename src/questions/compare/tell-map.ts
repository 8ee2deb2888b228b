/** The trade-off map as blocks: what machines and clearing rounds are worth in ware, against the house as it is. */
import { machineClass } from '../../catalogue/catalogue.js';
import { heading, paragraphs, table, type Block } from '../../tell/block.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, minutesText, type Formats } from '../../tell/format.js';
import { listed, english } from '../../tell/words.js';
import type { MapPoint, TradeOffMap } from './answer.js';
import { tradeOffMapChart, tradeOffMapTable } from './charts/trade-off-map.js';
import { signed, wholeMoney, type Whole } from './money-text.js';

const classesOf = ({ points }: TradeOffMap): string[] => [
  ...new Set(points.map(({ machineClass: cls }) => cls)),
];

/** A chart for each class of machine on the map. */
function mapCharts(map: TradeOffMap, context: ReportContext): Chart[] {
  const look = { locale: context.locale, formats: formatsFor(context) };
  return classesOf(map).map((cls) =>
    chart(
      `trade-off-map-${cls}`,
      tradeOffMapChart(map, cls, context.currency, look),
      tradeOffMapTable(map),
    ),
  );
}

export function mapBlocks(map: TradeOffMap, context: ReportContext): Block[] {
  const say = english.sections.map;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { cheapest } = map;
  return [
    heading(say.head),
    paragraphs([
      ...classesOf(map).map((cls) => worthSentence(map, cls, formats, whole)),
      english.compare.cheapest(
        formats.count(cheapest.machines),
        className(cheapest.machineClass),
        minutesText(cheapest.clearingMinutes, formats),
        cheapest.total < map.ownTotal
          ? english.compare.less(whole(map.ownTotal - cheapest.total))
          : english.compare.more(whole(cheapest.total - map.ownTotal)),
      ),
    ]),
    paragraphs([say.noise(formats.count(map.days))], 'small'),
    mapTable(map, formats, whole),
    { kind: 'picture', pictures: mapCharts(map, context) },
  ];
}

/** The name of a class as it stands within a sentence. */
function className(id: string): string {
  const name = machineClass(id)?.name ?? id;
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** What each further machine saves, from the least to the most over the clearing rounds; less than nothing where it needs more ware. */
function worthSentence(map: TradeOffMap, cls: string, formats: Formats, whole: Whole): string {
  const say = english.sections.map;
  const ofClass = map.machineWorth.filter((one) => one.machineClass === cls);
  const steps = [...new Set(ofClass.map(({ to }) => to))].toSorted((a, b) => a - b);
  return say.worthOf(
    className(cls),
    listed(
      steps.map((to) => {
        const step = ofClass.filter((one) => one.to === to);
        const pieces = step.map((one) => Math.round(one.pieces));
        const money = step.map(({ stockCost }) => stockCost);
        return stepText(to, pieces, money, formats, whole);
      }),
    ),
  );
}

/** What one further machine saves, or what it needs, over the clearing rounds. */
function stepText(
  to: number,
  pieces: readonly number[],
  money: readonly number[],
  formats: Formats,
  whole: Whole,
): string {
  const say = english.sections.map;
  const [fewest, most] = [Math.min(...pieces), Math.max(...pieces)];
  const [least, dearest] = [Math.min(...money), Math.max(...money)];
  const machine = formats.count(to);
  if (fewest === 0 && most === 0) return say.changesNothing(machine);
  const span = (write: (value: number) => string, from: number, upTo: number): string =>
    write(from) === write(upTo) ? write(from) : english.answer.to(write(from), write(upTo));
  if (fewest >= 0)
    return say.saves(
      machine,
      span(formats.count, fewest, most),
      fewest === 1 && most === 1,
      span(whole, least, dearest),
    );
  if (most <= 0)
    return say.needs(
      machine,
      span(formats.count, -most, -fewest),
      fewest === -1 && most === -1,
      span(whole, -dearest, -least),
    );
  return say.either(
    machine,
    formats.count(-fewest),
    formats.count(most),
    whole(Math.abs(least)),
    whole(Math.abs(dearest)),
  );
}

/** A row for each class, number of machines and of racks; a column for each round. */
function mapTable({ points, days, own }: TradeOffMap, formats: Formats, whole: Whole): Block {
  const { mapHead, mapTitle, round } = english.compare;
  const rounds = [...new Set(points.map(({ clearingMinutes }) => clearingMinutes))];
  const key = ({ machineClass: cls, machines, racks }: MapPoint): string =>
    `${cls}/${machines}/${racks}`;
  const rows = [...new Map(points.map((point) => [key(point), point])).values()];
  const racked = points.some(({ racks }) => racks !== null);
  return table({
    caption: mapTitle(formats.count(days)),
    columns: [
      { title: mapHead.class, as: 'words' },
      { title: mapHead.machines, as: 'figures' },
      ...(racked ? [{ title: mapHead.racks, as: 'figures' as const }] : []),
      ...rounds.map((minutes) => ({
        title: round(minutesText(minutes, formats)),
        as: 'figures' as const,
      })),
    ],
    rows: rows.map((row) => [
      className(row.machineClass),
      formats.count(row.machines),
      ...(racked ? [row.racks === null ? english.answer.none : formats.count(row.racks)] : []),
      ...rounds.map((minutes) => {
        const found = points.find(
          (point) => key(point) === key(row) && point.clearingMinutes === minutes,
        );
        return found === undefined ? english.answer.none : signed(found.stockCost - own, whole);
      }),
    ]),
  });
}

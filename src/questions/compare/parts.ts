/** Parts of the comparison's text that are asked for one by one: level, map, what moves the order, planning table. */
import type { LevelAnswer, MovesAnswer, PlanningRow, TradeOffMap } from './answer.js';
import { digitsOf } from '../size/facts.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { inputName } from '../../tell/input-name.js';
import { textTable, wrapText, type Formats } from '../../tell/format.js';
import { listed, type Words } from '../../tell/words.js';

const WIDTH = 100;
const MOST_INPUTS = 12;
type Whole = (amount: number) => string;

export function levelLines(worth: LevelAnswer, formats: Formats, words: Words): string[] {
  const say = words.compare;
  const { levelHead: head } = say;
  const percent = (level: number): string => formats.percent(level, digitsOf(level));
  return [
    say.levelTitle,
    '',
    ...textTable(
      [
        head.level,
        head.pieces,
        head.stock,
        head.short,
        head.stockYear,
        head.shortYear,
        head.total,
        head.safe,
      ].map((title) => ({ title, right: true })),
      worth.points.map((one) => [
        percent(one.level),
        formats.count(one.pieces),
        formats.money(one.stockCost),
        formats.decimal(one.shortADay, 2),
        formats.money(one.stockAYear),
        formats.money(one.shortAYear),
        formats.money(one.totalAYear),
        formats.money(one.perSafeRush),
      ]),
      WIDTH,
    ),
    ...wrapText(
      say.level(
        percent(worth.recommended),
        percent(worth.chosen),
        formats.money(worth.shortDrinkCost),
        formats.percent(1 - worth.newsvendor),
      ) + (worth.knee === null ? '' : ` ${say.knee(percent(worth.knee))}`),
      WIDTH,
    ),
  ];
}

export function mapLines(map: TradeOffMap, formats: Formats, whole: Whole, words: Words): string[] {
  const say = words.compare;
  const rounds = [...new Set(map.points.map(({ clearingMinutes }) => clearingMinutes))];
  const rows = [
    ...new Map(
      map.points.map((point) => [`${point.machineClass}/${point.machines}/${point.racks}`, point]),
    ).values(),
  ];
  const racks = rows.some((row) => row.racks !== null);
  const cell = (row: (typeof rows)[number], clearingMinutes: number): string => {
    const found = map.points.find(
      (point) =>
        point.machineClass === row.machineClass &&
        point.machines === row.machines &&
        point.racks === row.racks &&
        point.clearingMinutes === clearingMinutes,
    );
    return found === undefined ? '–' : whole(found.stockCost);
  };
  const worthOf = ({ to, pieces, stockCost }: (typeof map.machineWorth)[number]): string => {
    const count = Math.round(pieces);
    return count <= 0
      ? say.machineNothing(formats.count(to))
      : say.machineStep(formats.count(to), formats.count(count), count === 1, whole(stockCost));
  };
  const groups = [
    ...new Set(
      map.machineWorth.map(
        ({ machineClass, clearingMinutes, racks: count }) =>
          `${machineClass}\u0000${clearingMinutes}\u0000${count}`,
      ),
    ),
  ];
  const worth = groups.flatMap((key) => {
    const steps = map.machineWorth.filter(
      (one) => `${one.machineClass}\u0000${one.clearingMinutes}\u0000${one.racks}` === key,
    );
    const first = steps[0]!;
    return wrapText(
      say.machineWorth(
        first.machineClass,
        minutesText(first.clearingMinutes, formats),
        steps.map((step) => worthOf(step)).join('; '),
      ),
      WIDTH,
      '  ',
    );
  });
  const { cheapest } = map;
  return [
    say.mapTitle(formats.count(map.days)),
    '',
    ...textTable(
      [
        { title: say.mapHead.class },
        { title: say.mapHead.machines, right: true },
        ...(racks ? [{ title: say.mapHead.racks, right: true }] : []),
        ...rounds.map((minutes) => ({
          title: say.round(minutesText(minutes, formats)),
          right: true,
        })),
      ],
      rows.map((row) => [
        row.machineClass,
        formats.count(row.machines),
        ...(racks ? [row.racks === null ? '–' : formats.count(row.racks)] : []),
        ...rounds.map((minutes) => cell(row, minutes)),
      ]),
      WIDTH,
    ),
    ...worth,
    ...wrapText(
      say.cheapest(
        formats.count(cheapest.machines),
        cheapest.machineClass,
        minutesText(cheapest.clearingMinutes, formats),
        whole(cheapest.total),
      ),
      WIDTH,
    ),
  ];
}

/** Minutes without a decimal where there is none. */
export const minutesText = (minutes: number, formats: Formats): string =>
  Number.isInteger(minutes) ? `${formats.count(minutes)}\u00A0min` : formats.minutes(minutes);

export function movesLines(
  moves: MovesAnswer,
  formats: Formats,
  whole: Whole,
  words: Words,
): string[] {
  const say = words.compare;
  const { movesHead: head } = say;
  const moving = moves.inputs.filter(({ low, high }) => low !== high);
  const drawn = moves.draws > 0;
  const rank = (value: number | null): string => (value === null ? '–' : formats.decimal(value, 2));
  return [
    say.movesTitle(formats.count(moves.days)),
    '',
    ...textTable(
      [
        { title: head.input },
        { title: head.basis },
        { title: head.range },
        ...[head.low, head.high, head.swing, ...(drawn ? [head.rank] : [])].map((title) => ({
          title,
          right: true,
        })),
      ],
      moving
        .slice(0, MOST_INPUTS)
        .map(({ path, basis, lowValue, highValue, low, high, correlation }) => [
          shorten(inputName(path, words), 36),
          basis,
          shorten(cleanText(`${lowValue} … ${highValue}`), 24),
          whole(low),
          whole(high),
          whole(Math.abs(high - low)),
          ...(drawn
            ? [
                correlation === null
                  ? '–'
                  : `${rank(correlation.value)} (${rank(correlation.low)} to ${rank(correlation.high)})`,
              ]
            : []),
        ]),
      WIDTH + 30,
    ),
    ...(moves.inputs.length > moving.length
      ? [say.unmoved(formats.count(moves.inputs.length - moving.length))]
      : []),
    ...(moves.withoutRange.length > 0
      ? wrapText(say.withoutRange(formats.count(moves.withoutRange.length)), WIDTH)
      : []),
    ...(moves.measureFirst.paths.length > 0
      ? wrapText(
          say.measure(
            listed(
              moves.measureFirst.paths.map((path) => inputName(path, words)),
              words,
            ),
            whole(moves.measureFirst.now),
            whole(moves.measureFirst.left),
          ),
          WIDTH,
        )
      : []),
    ...(drawn ? wrapText(say.rankNote, WIDTH) : []),
    ...(moves.spread === null
      ? []
      : wrapText(
          say.spread(
            formats.count(moves.draws),
            whole(moves.spread.low),
            whole(moves.spread.middle),
            whole(moves.spread.high),
          ),
          WIDTH,
        )),
  ];
}

export function planningLines(
  rows: readonly PlanningRow[],
  formats: Formats,
  whole: Whole,
  words: Words,
): string[] {
  const say = words.compare;
  const { planningHead: head } = say;
  const ware = rows[0]?.stock ?? [];
  return [
    say.planningTitle,
    '',
    ...textTable(
      [
        head.seats,
        ...ware.map(({ name }) => shorten(cleanText(name), 14)),
        head.cost,
        head.certified,
        head.busy,
      ].map((title) => ({ title, right: true })),
      rows.map((row) => [
        formats.count(row.seats),
        ...row.stock.map(
          ({ pieces, perSeat }) => `${formats.count(pieces)} (${formats.decimal(perSeat)})`,
        ),
        whole(row.stockCost),
        row.certified === null ? '–' : formats.percent(row.certified.level),
        row.machinesBusy === null ? '–' : formats.percent(row.machinesBusy, 0),
      ]),
      WIDTH + 18,
    ),
    ...wrapText(say.planningNote, WIDTH),
  ];
}

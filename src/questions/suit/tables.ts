/** The tables of suiting: strength and recipes, heat, vessels, what was assumed. */
import type { DrinkAnswer, Served, SuitAnswer, WareAnswer } from '../../suiting/answer.js';
import { table, withColumns, type Block, type Column, type TableBlock } from '../../tell/block.js';
import { minutesText, type Formats } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { english } from '../../tell/words.js';
import { suitWords as say } from './words.js';

export interface Telling {
  readonly formats: Formats;
  /** Of the drinks, in their order. */
  readonly labels: readonly string[];
  /** Of a ware or paper cup, by id. */
  readonly nameOf: (id: string) => string;
}

const words = (title: string): Column => ({ title, as: 'words' });
const figures = (title: string): Column => ({ title, as: 'figures' });
const spare = (column: Column): Column => ({ ...column, spare: true });

const orNone =
  (none: string) =>
  <V>(value: V | null | undefined, text: (value: V) => string): string =>
    value === null || value === undefined ? none : text(value);

/** The table without the columns that hold nothing. */
function filled(caption: string, parts: Pick<TableBlock, 'columns' | 'rows'>, none: string): Block {
  const kept = parts.columns.flatMap((_, at) =>
    at === 0 || parts.rows.some((row) => row[at] !== none) ? [at] : [],
  );
  return withColumns({ kind: 'table', caption, ...parts }, kept);
}

/** How strong each drink is on both sides of the counter, and whether that tastes alike. */
export function strengthTable(drinks: readonly DrinkAnswer[], { formats, labels }: Telling): Block {
  const or = orNone(english.answer.none);
  const strength = ({ solidsPer100Ml }: Served): string => formats.decimal(solidsPer100Ml, 2);
  const difference = (ratio: number): string =>
    (ratio < 1 ? say.weaker : say.stronger)(formats.percent(Math.abs(ratio - 1), 0));
  return filled(
    say.strengthCaption,
    {
      columns: [
        words(say.drink),
        figures(say.inTheHouse),
        figures(say.toTakeAway),
        words(say.compared),
      ],
      rows: drinks.flatMap(({ house, takeaway, ratio, level }, at) =>
        house === null && takeaway === null
          ? []
          : [
              [
                labels[at]!,
                or(house, strength),
                or(takeaway, strength),
                or(ratio, (one) =>
                  level === false
                    ? difference(one)
                    : Math.abs(one - 1) < 0.005
                      ? say.asStrong
                      : say.closeEnough(difference(one)),
                ),
              ],
            ],
      ),
    },
    english.answer.none,
  );
}

/** The recipe of each drink on each side. */
export function madeTable(
  drinks: readonly DrinkAnswer[],
  { formats, labels, nameOf }: Telling,
): Block {
  const { none } = english.answer;
  const grams = (g: number): string => `${formats.decimal(g)}\u00A0g`;
  const row = (label: string, where: string, served: Served): string[] => [
    label,
    where,
    nameOf(served.vessel),
    formats.volume(served.brimMl),
    formats.volume(served.servedMl),
    grams(served.doseG),
    formats.percent(served.shotShare, 0),
    grams(served.coffeeG),
    formats.percent(served.extraction, 0),
    orNone(none)(served.milkRatio, (ratio) => say.milk(formats.decimal(ratio))),
  ];
  return filled(
    say.madeCaption,
    {
      columns: [
        words(say.drink),
        words(say.made.served),
        words(say.vessel),
        figures(say.made.brim),
        figures(say.made.liquid),
        spare(figures(say.made.dose)),
        figures(say.made.share),
        figures(say.made.coffee),
        spare(figures(say.made.extraction)),
        spare(figures(say.made.milk)),
      ],
      rows: drinks.flatMap(({ house, takeaway }, at) => [
        ...(house === null ? [] : [row(labels[at]!, say.made.house, house)]),
        ...(takeaway === null ? [] : [row(labels[at]!, say.made.away, takeaway)]),
      ]),
    },
    none,
  );
}

export function heatTable(
  { drinks, firstSipMin, roomC }: SuitAnswer,
  { formats, labels }: Telling,
): Block {
  const or = orNone(english.answer.none);
  const warm = drinks.flatMap(({ warmth, paperFirstC, firstSipMin: sipMin }, at) =>
    warmth === null ? [] : [{ label: labels[at]!, warmth, paperFirstC, sipMin }],
  );
  const own = warm.some(({ sipMin }) => sipMin !== firstSipMin);
  const low = warm[0]?.warmth.preferred.lowC ?? 0;
  return filled(
    say.heatCaption(own ? null : minutesText(firstSipMin, formats), formats.temperature(roomC)),
    {
      columns: [
        words(say.drink),
        ...(own ? [figures(say.heat.after)] : []),
        figures(say.heat.poured),
        figures(say.heat.cold),
        figures(say.heat.warmed),
        figures(say.heat.paper),
        figures(say.heat.below(formats.temperature(low))),
      ],
      rows: warm.map(({ label, warmth, paperFirstC, sipMin }) => [
        label,
        ...(own ? [minutesText(sipMin, formats)] : []),
        formats.temperature(warmth.pouredC),
        formats.temperature(warmth.firstSipColdC),
        formats.temperature(warmth.firstSipWarmedC),
        or(paperFirstC, formats.temperature),
        or(warmth.belowMin, (minutes) =>
          minutes < 0.5 ? say.heat.atOnce : minutesText(Math.round(minutes), formats),
        ),
      ]),
    },
    english.answer.none,
  );
}

export function wareTable({ ware }: SuitAnswer, { formats, nameOf }: Telling): Block {
  const { none } = english.answer;
  const or = orNone(none);
  const onSaucer = ({ saucers }: WareAnswer): string =>
    saucers.length === 0
      ? none
      : saucers
          .map(({ saucer, reason }) =>
            saucers.length === 1
              ? say.onSaucer[reason]
              : `${nameOf(saucer)}: ${say.onSaucer[reason]}`,
          )
          .join(', ');
  return filled(
    say.wareCaption,
    {
      columns: [
        words(say.ware.item),
        figures(say.ware.brim),
        figures(say.ware.mass),
        figures(say.ware.filled),
        words(say.ware.easy),
        figures(say.ware.rack),
        spare(figures(say.ware.wall)),
        spare(words(say.ware.saucer)),
      ],
      rows: ware.map((piece) => [
        nameOf(piece.ware),
        or(piece.brimMl, formats.volume),
        or(piece.massG, formats.mass),
        or(piece.grip?.filledG, formats.mass),
        or(piece.grip, ({ easy }) => (easy === null ? say.unsure : easy ? say.yes : say.no)),
        or(piece.rack, ({ pieces }) => formats.count(pieces)),
        or(piece.outerWallC, formats.temperature),
        onSaucer(piece),
      ]),
    },
    none,
  );
}

/** Grip and spout, of the vessels of which either is known. */
export function holdTable({ ware }: SuitAnswer, { formats, nameOf }: Telling): Block {
  const or = orNone(english.answer.none);
  return filled(
    say.holdCaption,
    {
      columns: [
        words(say.vessel),
        figures(say.hold.moment),
        figures(say.hold.fingers),
        figures(say.hold.spout),
      ],
      rows: ware
        .filter(({ grip, spout }) => grip !== null || spout !== null)
        .map(({ ware: id, grip, spout }) => [
          nameOf(id),
          or(grip?.momentNm, (moment) => say.moment(formats.decimal(moment, 2))),
          or(grip?.fingers, (fingers) => formats.count(fingers)),
          or(spout, ({ spareMm }) => formats.length(spareMm)),
        ]),
    },
    english.answer.none,
  );
}

/** Units that begin so are shares, which people read in percent: "0.95 share of the brim" is "95 % of the brim". */
const asShare = /^share\b,? ?/;
const percentOf = (share: number, unit = 'share'): string =>
  `${Number((share * 100).toFixed(1))}\u00A0% ${unit.replace(asShare, '')}`.trimEnd();

export function assumedTable({ assumptions }: SuitAnswer): Block {
  return table({
    caption: say.assumedCaption,
    columns: say.assumedHead.map(words),
    rows: assumptions.map(({ path, value, unit, range, source }) => [
      inputName(path),
      asShare.test(unit) ? percentOf(value, unit) : `${value}\u00A0${unit}`,
      asShare.test(unit)
        ? english.answer.to(percentOf(range[0]), percentOf(range[1]))
        : english.answer.to(String(range[0]), String(range[1])),
      source,
    ]),
  });
}

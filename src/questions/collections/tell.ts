/** Collections in blocks: one sheet with a column a collection, then the vessels of each. */
import { isMisfit } from '../../racking/saucer-fit.js';
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { asSentence } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { listed } from '../../tell/words.js';
import { suitWords } from '../suit/words.js';
import { costsBesideGoods, moneyIn } from '../order/money.js';
import type { CollectionLine, Collections, VesselLine } from './answer.js';
import { say } from './words.js';

/** Costs nearer than this are not told apart: stock and losses are not known better. Assumed, no source. */
const TOO_NEAR = 0.02;

export function collectionsBlocks(answer: Collections, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { collections } = answer;
  const days = formats.count(answer.horizonDays);
  const names = new Map(
    collections.flatMap(({ vessels }) => vessels.map(({ ware, name }) => [ware, name])),
  );
  return [
    heading(say.heading(shortName(answer.title))),
    paragraphs([leadOf(answer, formats)], 'lead'),
    table({
      caption: say.caption(formats.percent(answer.level, 0)),
      columns: [
        { title: say.measure, as: 'words' },
        ...collections.map(({ name }) => ({ title: shortName(name), as: 'figures' as const })),
      ],
      rows: sheetRows(answer, formats).filter(([, ...cells]) =>
        cells.some((cell) => cell !== say.none),
      ),
    }),
    paragraphs(collections.every(({ proved }) => proved) ? [] : [say.proof], 'small'),
    list(collections.flatMap((one) => ending(one, answer, formats))),
    ...collections.map((one) => vesselTable(one, names, formats)),
    ...collections.map((one) =>
      fold(say.warnings(shortName(one.name)), [list([...new Set(one.warnings)].map(asSentence))]),
    ),
    paragraphs([say.notes(days, costsBesideGoods().join(', ')), say.lead, say.colour], 'small'),
  ];
}

function leadOf(answer: Collections, { count }: Formats): string {
  const money = moneyIn(answer);
  const priced = answer.collections.flatMap(({ name, overMinor }) =>
    overMinor === null ? [] : [{ name: shortName(name), overMinor }],
  );
  const [first, ...others] = priced.toSorted((a, b) => a.overMinor - b.overMinor);
  if (first === undefined || others.length === 0) return say.notPriced;
  const near = others.filter(({ overMinor }) => overMinor < first.overMinor * (1 + TOO_NEAR));
  if (near.length > 0)
    return say.tooNear(listed([first, ...near].map(({ name }) => name)), count(answer.horizonDays));
  return say.cheapest(
    first.name,
    money(first.overMinor),
    count(answer.horizonDays),
    `; ${listed(others.map(({ name, overMinor }) => say.against(name, money(overMinor))))}`,
  );
}

/** A row a measure; a dash where there is nothing to say. */
function sheetRows(answer: Collections, formats: Formats): string[][] {
  const { count, decimal, temperature } = formats;
  const money = moneyIn(answer);
  const row = (label: string, cell: (one: CollectionLine) => string): string[] => [
    label,
    ...answer.collections.map(cell),
  ];
  const or = (value: number | null, text: (value: number) => string): string =>
    value === null ? say.none : text(value);
  const { rows } = say;
  return [
    row(rows.pieces, ({ pieces }) => count(pieces)),
    row(rows.ordered, ({ ordered }) => count(ordered)),
    row(rows.now, ({ nowMinor }) => or(nowMinor, money)),
    row(rows.each, ({ nowMinor, ordered }) =>
      nowMinor === null || ordered === 0 ? say.none : money(nowMinor / ordered),
    ),
    row(rows.over(count(answer.horizonDays)), ({ overMinor }) => or(overMinor, money)),
    row(rows.racks, ({ fullRacksADay }) => decimal(fullRacksADay)),
    row(rows.alike, ({ alike, compared }) =>
      compared === 0 ? say.none : say.of(count(alike), count(compared)),
    ),
    row(rows.sip, ({ vessels }) => {
      const sips = vessels.flatMap(({ firstSipC }) => firstSipC ?? []);
      return sips.length === 0 ? say.none : temperature(Math.min(...sips));
    }),
    row(rows.heavy, ({ vessels }) =>
      vessels.every(({ filledG }) => filledG === null)
        ? say.none
        : count(vessels.filter(({ heavy }) => heavy).length),
    ),
    row(rows.saucers, ({ saucerKinds }) => count(saucerKinds)),
    row(rows.saved, ({ saucersSaved }) => count(saucersSaved)),
    row(rows.misfits, ({ misfits }) => count(misfits)),
    row(rows.top, ({ onTop }) =>
      onTop === null ? say.none : say.of(count(onTop.pieces), count(onTop.of)),
    ),
    row(rows.colours, ({ colourPairs, otherColours }) =>
      colourPairs === 0 ? say.none : say.of(count(colourPairs - otherColours), count(colourPairs)),
    ),
    row(rows.ends, ({ discontinued }) => discontinued?.until ?? say.none),
    row(rows.spares, ({ discontinued }) => or(discontinued?.sparesMinor ?? null, money)),
    row(rows.replaced, ({ discontinued }) => or(discontinued?.replacedMinor ?? null, money)),
  ];
}

function ending(
  { name, discontinued }: CollectionLine,
  answer: Collections,
  { count }: Formats,
): string[] {
  if (discontinued === null) return [];
  const money = moneyIn(answer);
  const { names, until, spares, sparesMinor, replacedPieces, replacedMinor } = discontinued;
  return [
    `${say.ends(shortName(name), listed(names.map(shortName)), until === null ? say.endsNow : say.endsOn(until))} ${say.endsCost(
      count(spares),
      money(sparesMinor),
      count(replacedPieces),
      money(replacedMinor),
    )}`,
  ];
}

function vesselTable(
  { name, vessels }: CollectionLine,
  names: ReadonlyMap<string, string>,
  formats: Formats,
): Block {
  const { count, decimal, mass, temperature, volume } = formats;
  const or = <T>(value: T | null, text: (value: T) => string): string =>
    value === null ? say.none : text(value);
  const spare = [6, 8];
  return table({
    caption: say.vessels(shortName(name)),
    columns: say.vesselHead.map((title, at) => ({
      title,
      as: at < 2 || at === 8 ? 'words' : 'figures',
      ...(spare.includes(at) ? { spare: true } : {}),
    })),
    rows: vessels.map((one) => [
      shortName(one.name),
      one.standsFor.length === 0
        ? say.none
        : one.standsFor.map((id) => shortName(names.get(id) ?? id)).join(', '),
      or(one.brimMl, volume),
      count(one.pieces),
      count(one.perRack),
      or(one.filledG, mass),
      or(one.momentNm, (moment) => say.moment(decimal(moment, 2))),
      or(one.firstSipC, temperature),
      onSaucer(one),
    ]),
  });
}

const onSaucer = ({ fit }: VesselLine): string =>
  fit === null ? say.none : suitWords.onSaucer[isMisfit(fit) ? fit.byMeasures : fit.reason];

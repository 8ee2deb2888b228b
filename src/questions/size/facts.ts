/**
 * The answer in sentences and rows of text: what the terminal and the letter both say. No layout here.
 */
import { power } from '../../elementary/powers.js';
import type { Answer, StockLine } from './answer.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext, WareKind } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { ruleOfThumb } from './rules-of-thumb.js';
import { english, listed, type Words } from '../../tell/words.js';

/** Wares that a sentence still names one by one. */
const NAMED_AT_MOST = 6;
const NAME_LENGTH = 40;

export interface Row {
  readonly label: string;
  readonly value: string;
  /** Part of the row above it. */
  readonly part?: boolean;
}

/** One line of the order table; '' where a cell stays empty. */
export interface OrderRow {
  readonly kind: 'ware' | 'group' | 'total';
  readonly name: string;
  readonly pieces: string;
  readonly perSeat: string;
  readonly rule: string;
  readonly alone: string;
  readonly interval: string;
  readonly unitCost: string;
  readonly cost: string;
}

export interface AnswerFacts {
  readonly sentence: string;
  readonly order: readonly OrderRow[];
  readonly day: readonly Row[];
  readonly busy: readonly Row[];
  /** Only where a stock was given. */
  readonly stock: readonly Row[];
  readonly overloads: readonly string[];
  readonly warnings: readonly string[];
  readonly days: string;
  readonly tightest: Tightest;
}

export interface Tightest {
  readonly text: string;
  /** Places that hold a piece of some ware. */
  readonly places: readonly string[];
  /** Name, pieces in each place, and all of them together. */
  readonly rows: readonly {
    readonly name: string;
    readonly counts: readonly string[];
    readonly off: string;
  }[];
}

export function answerFacts(answer: Answer, context: ReportContext): AnswerFacts {
  const words = context.words ?? english;
  const formats = formatsFor(context);
  const nameOf = (id: string): string =>
    shorten(cleanText(answer.stock.find(({ ware }) => ware === id)?.name ?? id), NAME_LENGTH);
  return {
    sentence: sentence(answer, formats, words),
    order: orderRows(answer, context, formats, words),
    day: dayRows(answer, formats, words),
    busy: busyRows(answer, formats, words),
    stock: stockRows(answer, formats, words, nameOf),
    overloads: answer.overloads.map(({ what, load, fromMinute, wouldDo }) =>
      words.answer.overload(
        what,
        formats.percent(load, 0),
        formats.clock(fromMinute),
        formats.count(wouldDo),
      ),
    ),
    warnings: answer.warnings.map(({ message, path }) =>
      shorten(
        words.answer.warningAt(asSentence(cleanText(message)), shorten(cleanText(path), 80)),
        600,
      ),
    ),
    days: daysText(answer, formats, words),
    tightest: tightest(answer, formats, words, nameOf),
  };
}

function sentence(answer: Answer, formats: Formats, words: Words): string {
  const say = words.answer;
  const bought = answer.stock.filter(({ pieces }) => pieces > 0);
  if (bought.length === 0 && answer.rushLevel === undefined) return say.nothing;
  const all = bought.length === 0 ? answer.stock : bought;
  const stock =
    all.length <= NAMED_AT_MOST
      ? listed(
          all.map(({ pieces, name }) =>
            say.pieces(formats.count(pieces), shorten(cleanText(name), NAME_LENGTH), pieces === 1),
          ),
          words,
        )
      : say.manyPieces(
          formats.count(all.reduce((sum, { pieces }) => sum + pieces, 0)),
          formats.count(all.length),
        );
  const share = answer.rushLevel ?? answer.certified;
  if (share === null)
    return say.uncertified(
      stock,
      formats.money(answer.cost),
      formats.percent(answer.level, digitsOf(answer.level)),
    );
  const [level, low, high, confidence] = [
    formats.percent(share.level),
    formats.percent(share.low),
    formats.percent(share.high),
    formats.percent(share.confidence, 0),
  ] as const;
  if (answer.rushLevel !== undefined) {
    const fill =
      answer.fillRate === undefined ? '' : ` ${say.fillRate(formats.percent(answer.fillRate))}`;
    return say.given(stock, level, low, high, confidence) + fill;
  }
  const asked = formats.percent(answer.level, digitsOf(answer.level));
  const verdict =
    share.high < answer.level
      ? say.promiseMissed(asked)
      : share.low > answer.level
        ? say.promiseKept(asked)
        : say.promiseUnsure(asked);
  return `${say.certified(stock, formats.money(answer.cost), level, low, high, confidence)} ${verdict}`;
}

/** 95 % needs no decimal, 97.5 % one, 99.95 % two. */
/** A clause as a sentence of its own. */
const asSentence = (clause: string): string =>
  `${clause.charAt(0).toUpperCase()}${clause.slice(1)}${/[.!?]$/.test(clause) ? '' : '.'}`;

export const digitsOf = (level: number): number =>
  [0, 1].find(
    (digits) =>
      Math.abs(level * power(10, digits + 2) - Math.round(level * power(10, digits + 2))) < 1e-6,
  ) ?? 2;

function orderRows(
  answer: Answer,
  context: ReportContext,
  formats: Formats,
  words: Words,
): OrderRow[] {
  const say = words.answer;
  const kindOf = new Map(context.ware.map(({ id, kind }) => [id, kind]));
  const kinds = new Map<WareKind, StockLine[]>();
  for (const line of answer.stock) {
    const kind = kindOf.get(line.ware) ?? 'other';
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  const sum = (lines: readonly StockLine[]): number =>
    lines.reduce((total, { pieces }) => total + pieces, 0);
  const saucers = sum(kinds.get('saucer') ?? []);
  const perSeat = (pieces: number): string =>
    context.seats === null || context.seats === 0
      ? say.none
      : formats.decimal(pieces / context.seats);
  const rule = (kind: WareKind): string => {
    const pieces = ruleOfThumb(kind, context.seats, saucers);
    if (pieces === null) return say.none;
    const [low, high] = pieces.map(formats.count) as [string, string];
    return low === high ? low : say.to(low, high);
  };
  const rows: OrderRow[] = answer.stock.map((line) => {
    const kind = kindOf.get(line.ware) ?? 'other';
    return {
      kind: 'ware',
      name: cleanText(line.name) || line.ware,
      pieces: formats.count(line.pieces),
      perSeat: perSeat(line.pieces),
      rule: kinds.get(kind)!.length === 1 ? rule(kind) : '',
      alone: formats.count(line.alone),
      interval: intervalText(line, formats, words),
      unitCost: formats.money(line.unitCost),
      cost: formats.money(line.pieces * line.unitCost),
    };
  });
  for (const [kind, lines] of kinds) {
    if (lines.length < 2 || ruleOfThumb(kind, context.seats, saucers) === null) continue;
    const blank = { alone: '', interval: '', unitCost: '', cost: '' };
    rows.push({
      kind: 'group',
      name: say.allOfKind[kind],
      pieces: formats.count(sum(lines)),
      perSeat: perSeat(sum(lines)),
      rule: rule(kind),
      ...blank,
    });
  }
  rows.push({
    kind: 'total',
    name: say.total,
    pieces: formats.count(sum(answer.stock)),
    perSeat: perSeat(sum(answer.stock)),
    rule: '',
    alone: '',
    interval: '',
    unitCost: '',
    cost: formats.money(answer.cost),
  });
  return rows;
}

function intervalText({ low, high }: StockLine, formats: Formats, words: Words): string {
  if (low !== null && low === high) return formats.count(low);
  if (low !== null && high !== null)
    return words.answer.to(formats.count(low), formats.count(high));
  if (low !== null) return words.answer.atLeast(formats.count(low));
  return high === null ? words.answer.none : words.answer.atMost(formats.count(high));
}

function dayRows({ guests, minutes, loads }: Answer, formats: Formats, words: Words): Row[] {
  const say = words.answer;
  return [
    { label: say.served, value: formats.decimal(guests.served) },
    { label: say.seated, value: formats.decimal(guests.seated), part: true },
    { label: say.tookAway, value: formats.decimal(guests.tookAway), part: true },
    { label: say.turnedAway, value: formats.decimal(guests.turnedAway) },
    { label: say.left, value: formats.decimal(guests.left), part: true },
    { label: say.takeawayInstead, value: formats.decimal(guests.takeawayInstead), part: true },
    { label: say.counterWait, value: formats.minutes(minutes.counterWait) },
    { label: say.loads, value: formats.decimal(loads.aDay) },
    { label: say.racks, value: formats.decimal(loads.racksADay) },
    { label: say.rackFill, value: formats.percent(loads.fill, 0) },
  ];
}

const busyRows = ({ busy }: Answer, formats: Formats, words: Words): Row[] =>
  (['machines', 'makers', 'seats', 'clearers', 'hands'] as const).map((what) => {
    const share = busy[what];
    return {
      label: words.answer.busyOf[what],
      value: share === null ? words.answer.unlimited : formats.percent(share, 0),
    };
  });

function stockRows(
  answer: Answer,
  formats: Formats,
  words: Words,
  nameOf: (id: string) => string,
): Row[] {
  const { rushLevel, fillRate, drinksShort, firstShortMinute } = answer;
  const say = words.answer;
  if (rushLevel === undefined) return [];
  const rows: Row[] = [
    {
      label: say.rushLevel,
      value: `${formats.percent(rushLevel.level)} (${say.to(formats.percent(rushLevel.low), formats.percent(rushLevel.high))})`,
    },
  ];
  if (fillRate !== undefined)
    rows.push({ label: say.fillRateRow, value: formats.percent(fillRate, 2) });
  for (const { ware, aDay } of drinksShort ?? [])
    rows.push({
      label: say.shortOf(nameOf(ware)),
      value: `${formats.decimal(aDay, 2)} ${say.aDay}`,
    });
  if (firstShortMinute !== undefined) {
    const { median, earliest } = firstShortMinute;
    rows.push({
      label: say.firstShort,
      value:
        median === null || earliest === null
          ? say.noShort
          : say.firstShortAt(formats.clock(median), formats.clock(earliest)),
    });
  }
  return rows;
}

function daysText(answer: Answer, formats: Formats, words: Words): string {
  const { days, rushLevel, certified } = answer;
  const seed = shorten(cleanText(answer.seed), NAME_LENGTH);
  if (rushLevel !== undefined)
    return words.answer.daysGiven(formats.count(days.chosenOn + days.certifiedOn), seed);
  return certified === null
    ? words.answer.daysListed(formats.count(days.chosenOn))
    : words.answer.days(formats.count(days.chosenOn), formats.count(days.certifiedOn), seed);
}

function tightest(
  { tightest: found }: Answer,
  formats: Formats,
  words: Words,
  nameOf: (id: string) => string,
): Tightest {
  const places = found.places
    .map((_, place) => place)
    .filter((place) => found.pieces.some(({ counts }) => (counts[place] ?? 0) > 0));
  return {
    text: words.answer.tightest(nameOf(found.ware), formats.clock(found.minute)),
    places: places.map((place) => found.places[place]!),
    rows: found.pieces.map(({ ware, counts }) => ({
      name: nameOf(ware),
      counts: places.map((place) => formats.count(counts[place] ?? 0)),
      off: formats.count(counts.reduce((sum, one) => sum + one, 0)),
    })),
  };
}

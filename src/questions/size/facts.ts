/**
 * The answer in sentences and rows of text, for the blocks of `tell.ts`. No layout here.
 */
import type { Answer, StockLine } from './answer.js';
import { together } from '../../quantities/warned.js';
import { asSentence, cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext, WareKind } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { ruleOfThumb } from './rules-of-thumb.js';
import { answerWords } from '../../tell/words/answer.js';
import { daysOf, leadOf } from './lead.js';
import { sizeWords as say } from './words.js';

const NAME_LENGTH = 40;

export { digitsOf } from '../../tell/format.js';

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
  readonly have: string;
  readonly add: string;
  readonly perSeat: string;
  readonly rule: string;
  readonly alone: string;
  readonly interval: string;
  readonly unitCost: string;
  readonly cost: string;
}

export interface AnswerFacts {
  readonly sentence: string;
  readonly measured: string;
  readonly order: readonly OrderRow[];
  readonly day: readonly Row[];
  readonly busy: readonly Row[];
  readonly loop: readonly Row[];
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
  const formats = formatsFor(context);
  const nameOf = (id: string): string =>
    shorten(cleanText(answer.stock.find(({ ware }) => ware === id)?.name ?? '') || id, NAME_LENGTH);
  return {
    ...leadOf(answer, context, formats),
    order: orderRows(answer, context, formats, nameOf),
    day: dayRows(answer, formats),
    busy: busyRows(answer, formats),
    loop: answer.minutes.loop.flatMap(({ ware, minutes }) =>
      minutes > 0 ? [{ label: nameOf(ware), value: formats.minutes(minutes) }] : [],
    ),
    stock: stockRows(answer, context, formats, nameOf),
    overloads: answer.overloads.map(({ what, load, fromMinute, wouldDo }) =>
      say.overload(
        what,
        formats.percent(load, 0),
        formats.clock(fromMinute),
        formats.count(wouldDo),
      ),
    ),
    warnings: together(answer.warnings).map(({ message, path }) =>
      shorten(say.warningAt(asSentence(cleanText(message)), shorten(cleanText(path), 600)), 999),
    ),
    days: daysText(answer, formats),
    tightest: tightest(answer, formats, nameOf),
  };
}

function orderRows(
  answer: Answer,
  context: ReportContext,
  formats: Formats,
  nameOf: (id: string) => string,
): OrderRow[] {
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
      ? answerWords.none
      : formats.decimal(pieces / context.seats);
  const rule = (kind: WareKind): string => {
    const pieces = ruleOfThumb(kind, context.seats, saucers);
    if (pieces === null) return answerWords.none;
    const [low, high] = pieces.map(formats.count) as [string, string];
    return low === high ? low : answerWords.to(low, high);
  };
  const rows: OrderRow[] = answer.stock.map((line) => {
    const kind = kindOf.get(line.ware) ?? 'other';
    return {
      kind: 'ware',
      name: nameOf(line.ware),
      pieces: formats.count(line.pieces),
      have: formats.count(line.have),
      add: formats.count(line.add),
      perSeat: perSeat(line.pieces),
      rule: kinds.get(kind)!.length === 1 ? rule(kind) : '',
      alone: formats.count(line.alone),
      interval: intervalText(line, formats),
      unitCost: formats.money(line.unitCost),
      cost: formats.money(line.add * line.unitCost),
    };
  });
  for (const [kind, lines] of kinds) {
    if (lines.length < 2 || ruleOfThumb(kind, context.seats, saucers) === null) continue;
    const blank = { have: '', add: '', alone: '', interval: '', unitCost: '', cost: '' };
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
    have: '',
    add: formats.count(answer.stock.reduce((total, { add }) => total + add, 0)),
    rule: '',
    alone: '',
    interval: '',
    unitCost: '',
    cost: formats.money(answer.spend),
  });
  return rows;
}

function intervalText({ low, high }: StockLine, formats: Formats): string {
  if (low !== null && low === high) return formats.count(low);
  if (low !== null && high !== null) return answerWords.to(formats.count(low), formats.count(high));
  if (low !== null) return say.atLeast(formats.count(low));
  return high === null ? answerWords.none : say.atMost(formats.count(high));
}

function dayRows({ guests, minutes, loads }: Answer, formats: Formats): Row[] {
  return [
    { label: say.served, value: formats.decimal(guests.served) },
    { label: say.seated, value: formats.decimal(guests.seated), part: true },
    { label: say.tookAway, value: formats.decimal(guests.tookAway), part: true },
    {
      label: say.tookAwayInstead,
      value: formats.decimal(guests.takeawayInstead),
      part: true,
    },
    { label: say.left, value: formats.decimal(guests.left) },
    { label: say.counterWait, value: formats.minutes(minutes.counterWait) },
    {
      label: loads.aDay > loads.racksADay + 0.05 ? say.loadsWithFood : say.loads,
      value: formats.decimal(loads.aDay),
    },
    { label: say.racks, value: formats.decimal(loads.racksADay) },
    { label: say.rackFill, value: formats.percent(loads.fill, 0) },
  ];
}

const busyRows = ({ busy }: Answer, formats: Formats): Row[] =>
  (['machines', 'makers', 'seats', 'clearers', 'hands'] as const).map((what) => {
    const share = busy[what];
    return {
      label: say.busyOf[what],
      value: share === null ? say.unlimited : formats.percent(share, 0),
    };
  });

function stockRows(
  answer: Answer,
  context: ReportContext,
  formats: Formats,
  nameOf: (id: string) => string,
): Row[] {
  const { rushLevel, fillRate, drinksShort, firstShortMinute } = answer;
  if (rushLevel === undefined) return [];
  const rows: Row[] = [
    {
      label: say.rushLevel(daysOf(context)),
      value: `${formats.percent(rushLevel.level)} (${answerWords.to(formats.percent(rushLevel.low), formats.percent(rushLevel.high))})`,
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

function daysText(answer: Answer, formats: Formats): string {
  const { days, rushLevel, certified } = answer;
  const seed = shorten(cleanText(answer.seed), NAME_LENGTH);
  if (rushLevel !== undefined)
    return say.daysGiven(formats.count(days.chosenOn + days.certifiedOn), seed);
  return certified === null
    ? say.daysListed(formats.count(days.chosenOn))
    : say.daysRun(formats.count(days.chosenOn), formats.count(days.certifiedOn), seed);
}

function tightest(
  { tightest: found }: Answer,
  formats: Formats,
  nameOf: (id: string) => string,
): Tightest {
  const places = found.places
    .map((_, place) => place)
    .filter((place) => found.pieces.some(({ counts }) => (counts[place] ?? 0) > 0));
  if (places.length === 0) return { text: say.noneTight, places: [], rows: [] };
  return {
    text: say.tightest(nameOf(found.ware), formats.clock(found.minute)),
    places: places.map((place) => found.places[place]!),
    rows: found.pieces.map(({ ware, counts }) => ({
      name: nameOf(ware),
      counts: places.map((place) => formats.count(counts[place] ?? 0)),
      off: formats.count(counts.reduce((sum, one) => sum + one, 0)),
    })),
  };
}

/** The verdict on one alternative as a sentence that an owner can act on. */
import { annuityFactor } from '../../comparing/annuity.js';
import type { Formats } from '../../tell/format.js';
import { listed, type Words } from '../../tell/words.js';
import type { ComparedAlternative, Comparison } from './answer.js';
import { yearsText, type Whole } from './money-text.js';

export interface Telling {
  readonly formats: Formats;
  readonly whole: Whole;
  readonly words: Words;
  readonly name: (id: string) => string;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Amounts below half a unit are none. */
const some = (amount: number): boolean => Math.abs(amount) >= 0.5;

/** "Second machine: saves 7 pieces (€32) and 12 staff minutes a day, but costs €6,600 now and €310 a year. More cups win, ..." */
export function verdictSentence(
  comparison: Comparison,
  one: ComparedAlternative,
  telling: Telling,
): string {
  const { words, name } = telling;
  const say = words.compare;
  const base = comparison.alternatives[0]!;
  const all = changesOf(base, one);
  // Of what is no choice, only what it asks of the house.
  const changes = comparison.ranking.notRanked.includes(one.id)
    ? { ...all, now: 0, year: 0, staff: Math.max(0, all.staff) }
    : all;
  const [gains, costs] = [gainsOf(changes, telling), costsOf(changes, telling)];
  const does =
    gains === '' && costs === ''
      ? say.changesLittle
      : gains === '' || costs === ''
        ? `${gains}${costs}`
        : say.andCosts(gains, costs);
  const what = saidOf(comparison, one, telling);
  const then = [wouldPay(comparison, one, telling), buysMachine(base, one) ? say.trades : '']
    .filter((text) => text !== '')
    .join(' ');
  return `${name(one.id)}: ${does}. ${capital(what)}.${then === '' ? '' : ` ${then}`}`;
}

interface Changes {
  readonly pieces: number;
  readonly ware: number;
  readonly staff: number;
  readonly now: number;
  readonly year: number;
}

function changesOf(base: ComparedAlternative, one: ComparedAlternative): Changes {
  return {
    pieces: one.pieces - base.pieces,
    ware: one.stockAgainstBase?.difference ?? 0,
    staff: one.staffMinutes - base.staffMinutes,
    // What is bought beside the ware.
    now: one.nowTotal - one.now.ware - (base.nowTotal - base.now.ware),
    year: one.yearTotal - base.yearTotal,
  };
}

function gainsOf({ pieces, ware, staff, now, year }: Changes, telling: Telling): string {
  const { formats, whole, words } = telling;
  const say = words.compare;
  const minutes = Math.round(-staff);
  const items = [
    ...(some(ware) && ware < 0
      ? [
          pieces < 0
            ? say.pieces(formats.count(-pieces), pieces === -1, whole(-ware))
            : say.wareAlone(whole(-ware)),
        ]
      : []),
    ...(minutes >= 1 ? [say.staffADay(formats.count(minutes), minutes === 1)] : []),
    ...(some(now) && now < 0 ? [say.moneyNow(whole(-now))] : []),
    ...(some(year) && year < 0 ? [say.moneyAYear(whole(-year))] : []),
  ];
  return items.length === 0 ? '' : `${say.saves} ${listed(items, words)}`;
}

function costsOf({ pieces, ware, staff, now, year }: Changes, telling: Telling): string {
  const { formats, whole, words } = telling;
  const say = words.compare;
  const minutes = Math.round(staff);
  const needs =
    some(ware) && ware > 0
      ? [
          pieces > 0
            ? say.morePieces(formats.count(pieces), pieces === 1, whole(ware))
            : say.wareAlone(whole(ware)),
        ]
      : [];
  const takes = minutes >= 1 ? [say.moreStaffADay(formats.count(minutes), minutes === 1)] : [];
  const money = [
    ...(some(now) && now > 0 ? [say.moneyNow(whole(now))] : []),
    ...(some(year) && year > 0 ? [say.moneyAYear(whole(year))] : []),
  ];
  const parts = [
    ...needs.map((item) => `${say.needs} ${item}`),
    ...takes.map((item) => `${say.takes} ${item}`),
    ...(money.length === 0 ? [] : [`${say.costs} ${listed(money, words)}`]),
  ];
  return parts.length === 0 ? '' : listed(parts, words);
}

function saidOf(
  { horizonYears, ranking }: Comparison,
  one: ComparedAlternative,
  { formats, whole, words }: Telling,
): string {
  const say = words.compare;
  const { said } = say;
  const years = yearsText(horizonYears, formats);
  if (ranking.notRanked.includes(one.id)) return said.other;
  const { difference, low, high } = one.totalAgainstBase!;
  const lessOrMore = (amount: number): string =>
    amount < 0 ? say.less(whole(-amount)) : say.more(whole(amount));
  switch (one.said) {
    case 'cheaper':
      return said.cheaper(whole(-difference), whole(-high), whole(-low), years);
    case 'dearer': {
      const savesWare = one.stockAgainstBase!.difference < -0.5;
      const tell =
        savesWare && one.now.machines > 0 && boughtMore(one) ? said.moreCups : said.dearer;
      return tell(whole(difference), whole(low), whole(high), years);
    }
    case 'alike':
      return said.alike(whole(ranking.indifference), years);
    case 'habits': {
      const turned = one.habitsOff
        .filter((off) => Math.sign(off.difference) !== Math.sign(difference))
        .toSorted((a, b) => Math.abs(b.difference) - Math.abs(a.difference))[0];
      const best = one.atBest?.againstBase?.difference ?? 0;
      return turned === undefined
        ? said.habits(lessOrMore(difference), lessOrMore(best), say.when.best)
        : said.habits(
            lessOrMore(difference),
            lessOrMore(turned.difference),
            say.when[turned.habit](turned.times > 1),
          );
    }
    case 'staff': {
      const worth = formats.money(one.staffHourAtWhichItTurns!);
      return difference > 0 ? said.staffPays(worth) : said.staffCosts(worth);
    }
    default:
      return said.open(lessOrMore(low), lessOrMore(high), years);
  }
}

/** Whether the price of machines is part of the difference. */
const boughtMore = (one: ComparedAlternative): boolean =>
  one.breakEven.some(({ what }) => what === 'machines');

const buysMachine = (base: ComparedAlternative, one: ComparedAlternative): boolean =>
  some(one.now.machines - base.now.machines) && one.now.machines > base.now.machines;

/** At what price, wage or number of failures something that does not pay would. */
function wouldPay(
  { ranking, horizonYears, discount }: Comparison,
  one: ComparedAlternative,
  { formats, whole, words }: Telling,
): string {
  const say = words.compare;
  if (one.said !== 'dearer' || ranking.notRanked.includes(one.id)) return '';
  const machine = one.breakEven.find(({ what }) => what === 'machines');
  const price =
    machine === undefined
      ? ''
      : machine.flipsAt === null
        ? say.neverPays
        : say.wouldPayBelow(whole(machine.flipsAt));
  const others = [
    ...(one.staffHourAtWhichItTurns === null
      ? []
      : [say.orStaff(formats.money(one.staffHourAtWhichItTurns))]),
    ...failures(one, annuityFactor(discount, horizonYears), formats, words),
  ];
  if (price === '' && others.length === 0) return '';
  const rest = listedOr(others);
  if (price === '') return `${say.itWouldPay} ${rest}.`;
  const or = machine?.flipsAt === null ? say.unless : say.or;
  return `${price}${rest === '' ? '' : `, ${or} ${rest}`}.`;
}

const listedOr = (items: readonly string[]): string => items.join(', or if ');

/** Days a year on which a machine would have to fail for what a failure costs to outweigh the difference. */
function failures(
  one: ComparedAlternative,
  years: number,
  { count }: Formats,
  words: Words,
): string[] {
  if (one.failureSpares === null || one.failureSpares <= 0) return [];
  const days = one.totalAgainstBase!.difference / years / one.failureSpares;
  return days > 0 && days < 366 ? [words.compare.orFails(count(Math.ceil(days)), days <= 1)] : [];
}

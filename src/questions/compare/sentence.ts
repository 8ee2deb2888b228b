/** The verdict on one alternative as a sentence that an owner can act on. */
import { english } from '../../tell/words.js';
import { annuityFactor } from '../../comparing/annuity.js';
import type { Changes, ComparedAlternative, Comparison, Difference } from './answer.js';
import { changesText, some, type Telling } from './changes-text.js';
import { yearsText } from './money-text.js';

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** "Second machine: saves 7 pieces (€32) and 12 staff minutes a day, but costs €6,600 now and €310 a year. More cups win: ..." */
export function verdictSentence(
  comparison: Comparison,
  one: ComparedAlternative,
  telling: Telling,
): string {
  const { name } = telling;
  const base = comparison.alternatives[0]!;
  const sentences = [
    `${name(one.id)}: ${changesText(changesOf(base, one), telling)}`,
    saidOf(comparison, one, telling),
    ...(one.withinHabits ? [english.compare.withinHabits] : []),
    ...wouldPay(comparison, one, telling),
  ].map((text) => `${capital(text)}.`);
  return [...sentences, ...(buysMachine(base, one) ? [english.compare.trades] : [])].join(' ');
}

function changesOf(base: ComparedAlternative, one: ComparedAlternative): Changes {
  return {
    pieces: one.pieces - base.pieces,
    ware: one.stockAgainstBase?.difference ?? 0,
    staff: one.staffMinutes - base.staffMinutes,
    // What is bought beside the ware.
    now: one.nowTotal - one.now.ware - (base.nowTotal - base.now.ware),
    racks: one.now.racks - base.now.racks,
    year: one.yearTotal - base.yearTotal,
  };
}

/** Whether the whole interval rounds to no money at all. */
export const isNothing = ({ low, high }: Difference): boolean => low > -0.5 && high < 0.5;

function saidOf(
  { horizonYears, ranking, alternatives }: Comparison,
  one: ComparedAlternative,
  { formats, whole }: Telling,
): string {
  const say = english.compare;
  const { said } = say;
  const years = yearsText(horizonYears, formats);
  const { difference, low, high } = one.totalAgainstBase!;
  const lessOrMore = (amount: number): string =>
    amount < 0 ? say.less(whole(-amount)) : say.more(whole(amount));
  switch (one.said) {
    case 'cheaper':
      return said.cheaper(whole(-difference), whole(-high), whole(-low), years);
    case 'dearer': {
      const { pieces, ware } = changesOf(alternatives[0]!, one);
      const savesWare = pieces < 0 && ware < -0.5;
      const tell = savesWare && buysMachine(alternatives[0]!, one) ? said.moreCups : said.dearer;
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
        ? said.habitsAtBest(lessOrMore(difference), lessOrMore(best), years)
        : said.habits(
            lessOrMore(difference),
            lessOrMore(turned.difference),
            say.when[turned.habit](turned.times > 1),
            years,
          );
    }
    case 'staff': {
      const worth = formats.money(one.staffHourAtWhichItTurns!);
      return difference > 0 ? said.staffPays(worth) : said.staffCosts(worth);
    }
    default:
      if (isNothing(one.totalAgainstBase!)) return said.nothing(years);
      return said.open(lessOrMore(low), lessOrMore(high), years);
  }
}

const buysMachine = (base: ComparedAlternative, one: ComparedAlternative): boolean =>
  some(one.now.machines - base.now.machines) && one.now.machines > base.now.machines;

/** At what price, wage or number of failures something that does not pay would. */
function wouldPay(
  { horizonYears, discount, daysAYear, alternatives }: Comparison,
  one: ComparedAlternative,
  { formats, whole, days }: Telling,
): string[] {
  const say = english.compare;
  if (one.said !== 'dearer') return [];
  const base = alternatives[0]!;
  const machine = buysMachine(base, one)
    ? one.breakEven.find(({ what }) => what === 'machines')
    : undefined;
  const oneMore = (one.machines ?? 0) > (base.machines ?? 0);
  const failing = failuresAYear(one, annuityFactor(discount, horizonYears));
  const ifs = [
    ...(machine === undefined || machine.flipsAt === null
      ? []
      : [(oneMore ? say.ifPrice : say.ifPriceMore)(whole(machine.flipsAt))]),
    ...(one.staffHourAtWhichItTurns === null
      ? []
      : [say.ifStaff(formats.money(one.staffHourAtWhichItTurns))]),
    ...(failing === null || failing > daysAYear
      ? []
      : [say.ifFails(formats.count(failing), formats.count(daysAYear), days)]),
  ];
  const never = machine !== undefined && machine.flipsAt === null;
  const only = never ? say.atItsPrice : say.itWouldPay;
  return [
    ...(never ? [say.neverPays] : []),
    ...(ifs.length === 0 ? [] : [`${only} ${ifs.join(say.or)}`]),
  ];
}

/** Days a year on which a machine would have to fail for what a failure costs to outweigh the difference. */
function failuresAYear(one: ComparedAlternative, years: number): number | null {
  if (one.failureSpares === null || one.failureSpares <= 0) return null;
  const days = one.totalAgainstBase!.difference / years / one.failureSpares;
  return days > 0 ? Math.ceil(days) : null;
}

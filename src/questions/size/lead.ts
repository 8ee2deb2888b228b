/** The first sentences of the answer: what to have and how often it lasts, then how that was measured. */
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { digitsOf, type Formats } from '../../tell/format.js';
import { listed } from '../../tell/words.js';
import { answerWords } from '../../tell/words/answer.js';
import { TAKEN_AS_PLENTIFUL, type Answer } from './answer.js';
import { tightestKind } from './tell-kinds.js';
import { sizeWords as say } from './words.js';

/** Items that a sentence still names one by one. */
const NAMED_AT_MOST = 6;
export const NAME_LENGTH = 40;

export interface Lead {
  /** The answer in words that anybody can act on. */
  readonly sentence: string;
  /** The measured level with its interval, and how it compares with the level asked for; '' without any. */
  readonly measured: string;
}

/** Whether the answer is that no ware is needed at all. */
export const needsNothing = ({ stock, rushLevel }: Answer): boolean =>
  rushLevel === undefined && stock.every(({ pieces }) => pieces === 0);

export function leadOf(answer: Answer, context: ReportContext, formats: Formats): Lead {
  const bought = answer.stock.filter(({ pieces }) => pieces > 0);
  if (needsNothing(answer)) return { sentence: say.nothing[whyNothing(answer)], measured: '' };
  const stock = stockText(bought.length === 0 ? answer.stock : bought, formats);
  const asked = formats.percent(answer.level, digitsOf(answer.level));
  const have = answer.stock.some(({ have: owned }) => owned > 0)
    ? say.haveSome(stock, toBuy(answer.stock, formats), formats.money(answer.spend))
    : say.have(stock, formats.money(answer.cost));
  const tightest = tightestKind(answer);
  const days = tightest === null ? daysOf(context) : say.kinds.daysOf(tightest);
  const others = tightest === null ? [] : [say.kinds.others];
  const { rushLevel, certified, fillRate } = answer;
  if (rushLevel !== undefined) {
    const fill = fillRate === undefined ? [] : [say.fillRate(formats.percent(fillRate))];
    const tested = formats.count(answer.days.chosenOn + answer.days.certifiedOn);
    const given = answer.warnings.some(({ code }) => code === TAKEN_AS_PLENTIFUL)
      ? say.withPlenty
      : say.with;
    return {
      sentence: [given(stock), howOften(rushLevel.level, days, formats), ...others].join(' '),
      measured: [say.measured(tested, ...shareTexts(rushLevel, formats)), ...fill].join(' '),
    };
  }
  if (certified === null)
    return {
      sentence: `${have} ${say.listed(asked, formats.count(answer.days.chosenOn))}`,
      measured: say.notMeasured,
    };
  const { assured } = answer;
  if (assured !== undefined) {
    const sure = formats.percent(assured.confidence, digitsOf(assured.confidence));
    const tested = formats.count(answer.days.certifiedOn);
    const seen = [
      tested,
      formats.percent(certified.level),
      formats.percent(certified.low),
    ] as const;
    return {
      sentence: assured.held
        ? `${have} ${say.assured(asked, tightest === null ? days : say.kinds.every, sure)}`
        : [have, howOften(certified.level, days, formats), ...others].join(' '),
      measured: `${say.measuredSure(...seen, sure)}${assured.tries > 1 ? ` ${say.tries(formats.count(assured.tries))}` : ''}${assured.held ? '' : ` ${say.notAssured(asked)}`}`,
    };
  }
  const points = (share: number): string => formats.decimal(100 * share);
  const within = (level: string): string =>
    say.levelWithin(
      level,
      points(answer.level - certified.low),
      points(certified.high - answer.level),
    );
  const verdict =
    certified.high < answer.level
      ? say.levelMissed
      : certified.low > answer.level
        ? say.levelBeaten
        : within;
  return {
    sentence: [have, howOften(certified.level, days, formats), ...others].join(' '),
    measured: `${say.measuredFresh(formats.count(answer.days.certifiedOn), ...shareTexts(certified, formats))} ${verdict(asked)}`,
  };
}

/** What is to be bought on top of what is owned; '' where nothing is. */
function toBuy(stock: Answer['stock'], formats: Formats): string {
  const lines = stock.filter(({ add }) => add > 0).map((line) => ({ ...line, pieces: line.add }));
  return lines.length === 0 ? '' : stockText(lines, formats);
}

function whyNothing({ guests }: Answer): keyof typeof say.nothing {
  if (guests.served > 0) return guests.turnedAway > 0 ? 'noSeat' : 'paper';
  return guests.turnedAway > 0 ? 'turnedAway' : 'noGuests';
}

export function stockText(stock: Answer['stock'], formats: Formats): string {
  if (stock.length > NAMED_AT_MOST)
    return say.manyPieces(
      formats.count(stock.reduce((sum, { pieces }) => sum + pieces, 0)),
      formats.count(stock.length),
    );
  return listed(
    stock.map(({ pieces, name }) =>
      answerWords.pieces(
        formats.count(pieces),
        shorten(cleanText(name), NAME_LENGTH),
        pieces === 1,
      ),
    ),
  );
}

const shareTexts = (
  { level, low, high, confidence }: NonNullable<Answer['certified']>,
  formats: Formats,
): readonly [string, string, string, string] => [
  formats.percent(level),
  formats.percent(low),
  formats.percent(high),
  formats.percent(confidence, 0),
];

/** "On about 95 of 100 mornings nothing will run out." All and none are said only where they were measured. */
function howOften(level: number, days: string, formats: Formats): string {
  if (level >= 1) return say.always(days);
  if (level <= 0) return say.never(days);
  const all = level > 0.985 ? 1000 : 100;
  const count = Math.round(level * all);
  const of = count === all ? say.moreThan : count === 0 ? say.fewerThan : say.about;
  const shown = Math.min(all - 1, Math.max(1, count));
  return say.often(of(formats.count(shown), formats.count(all)), days);
}

const NOON = 12 * 60;
const LUNCH_ENDS = 14 * 60;
const EVENING = 17 * 60;

/** What a simulated day is to this house: a morning where it closes by two, an evening where it opens after five. */
export function daysOf({ openingMinute, openMinutes }: ReportContext): string {
  if (openingMinute === null) return say.noClock;
  const closing = openingMinute + openMinutes;
  if (openingMinute < NOON && closing <= LUNCH_ENDS) return say.days.morning;
  if (openingMinute >= EVENING) return say.days.evening;
  if (openingMinute >= NOON && closing <= EVENING + 60) return say.days.afternoon;
  return say.days.day;
}

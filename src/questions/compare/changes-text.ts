/** What a change does to a house as half a sentence: "saves 7 pieces (€32) and 12 staff minutes a day, but costs €310 a year". */
import type { Formats } from '../../tell/format.js';
import { listed, english } from '../../tell/words.js';
import type { AtBest, Changes } from './answer.js';
import type { Whole } from './money-text.js';

export interface Telling {
  readonly formats: Formats;
  readonly whole: Whole;
  readonly name: (id: string) => string;
  /** What a day of the house is: "mornings". */
  readonly days: string;
}

/** Amounts below half a unit are none. */
export const some = (amount: number): boolean => Math.abs(amount) >= 0.5;

export function changesText(changes: Changes, telling: Telling): string {
  const say = english.compare;
  const [gains, costs] = [gainsOf(changes, telling), costsOf(changes, telling)];
  if (gains !== '' && costs !== '') return say.andCosts(gains, costs);
  if (gains !== '') return gains;
  if (costs === '') return say.changesLittle;
  // Where only money is spent, that nothing comes of it is worth a word.
  return costs.startsWith(say.costs) && some(changes.now) ? say.savesNothing(costs) : costs;
}

function gainsOf(changes: Changes, telling: Telling): string {
  const { pieces, ware, staff, now, year } = changes;
  const { formats, whole } = telling;
  const say = english.compare;
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
    ...(some(now) && now < 0 ? [nowText(changes, whole(-now))] : []),
    ...(some(year) && year < 0 ? [say.moneyAYear(whole(-year))] : []),
  ];
  return items.length === 0 ? '' : `${say.saves} ${listed(items)}`;
}

function costsOf(changes: Changes, telling: Telling): string {
  const { pieces, ware, staff, now, year } = changes;
  const { formats, whole } = telling;
  const say = english.compare;
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
    ...(some(now) && now > 0 ? [nowText(changes, whole(now))] : []),
    ...(some(year) && year > 0 ? [say.moneyAYear(whole(year))] : []),
  ];
  const parts = [
    ...needs.map((item) => `${say.needs} ${item}`),
    ...takes.map((item) => `${say.takes} ${item}`),
    ...(money.length === 0 ? [] : [`${say.costs} ${listed(money)}`]),
  ];
  return parts.length === 0 ? '' : listed(parts);
}

/** What is bought beside the pieces, by its name where it is racks alone: beside the cost of the pieces it would look like the sum. */
const nowText = ({ now, racks }: Changes, money: string): string =>
  some(racks) && !some(now - racks)
    ? english.compare.racksNow(money)
    : english.compare.moneyNow(money);

/** "start a rack that is not full only once it is 90 % full (the fullest we tried) and has waited 24 min" */
export function habitText({ waitMinutes, from, edges }: AtBest, formats: Formats): string {
  const say = english.compare;
  const edge = edges.includes('longestWait')
    ? say.tried.longest
    : edges.includes('shortestWait')
      ? say.tried.shortest
      : '';
  const minutes = `${formats.minutes(waitMinutes!)}${edge}`;
  const fullest = edges.includes('fullest') ? say.tried.fullest : '';
  return from === null
    ? say.waiting(minutes)
    : say.fullFirst(`${formats.percent(from, 0)} full${fullest}`, minutes);
}

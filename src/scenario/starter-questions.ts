/**
 * The questions a café is begun with, as data: what is asked, what is usual, how an answer is read and shown again.
 * The terminal and the blank letter ask the same ones.
 */
import {
  plain,
  readAmount,
  readClock,
  readClosing,
  readCurrency,
  readMinutes,
  readShare,
  readWhole,
  readYes,
  refused,
  took,
  numberIn,
  type Read,
} from './starter-answers.js';
import { readMenu, type StarterDrink, type VesselId } from './starter-drinks.js';
import { shapes, usualShape, type ShapeId } from './starter-shapes.js';

/** What a starter is written from. Moments are minutes since midnight. */
export interface StarterAnswers {
  readonly name: string;
  readonly seats: number;
  /** Guests in the busiest hour, those who take their drink away included. */
  readonly guests: number;
  readonly from: number;
  readonly to: number;
  readonly shape: ShapeId;
  /** Share of guests who stay in, 0..1. */
  readonly stay: number;
  /** Minutes a guest stays on average; null: as is common. */
  readonly dwell: number | null;
  readonly menu: readonly StarterDrink[];
  readonly machine: { readonly class: 'undercounter' | 'hood'; readonly count: number };
  /** Cups, saucers and spoons go through the machine in one rack. */
  readonly shareRacks: boolean;
  /** ISO 4217. */
  readonly currency: string;
  /** What a staff hour costs, in whole units of the currency ("22.50"). */
  readonly staffHour: string;
  /** What a cup costs, in whole units of the currency; null: as is common. */
  readonly cupPrice: string | null;
}

export type QuestionKey = keyof StarterAnswers;
export type Served = Readonly<Record<string, VesselId>>;
export type SoFar = { readonly [K in QuestionKey]?: StarterAnswers[K] | undefined };

export interface Question<K extends QuestionKey> {
  readonly key: K;
  /** The same as an option of the command. */
  readonly option: string;
  readonly ask: string;
  /** A line of help beneath it; '' for none. */
  readonly help: string;
  /** What may be chosen from, where that is all there is. */
  readonly choices?: readonly string[];
  /** Taken as usual where nobody is there to be asked. */
  readonly optional: boolean;
  /** The usual answer after those before it; null: there is none. */
  usual(soFar: SoFar): string | null;
  /** @param served what drinks that are not known are served in */
  read(text: string, soFar: SoFar, served: Served): Read<StarterAnswers[K]>;
  /** A value as it is shown again. */
  show(value: StarterAnswers[K]): string;
}

/** "07:30" */
export const clockText = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.round(minutes) % 60).padStart(2, '0')}`;
const percentText = (share: number): string => `${Number((share * 100).toPrecision(6))} %`;
const AS_IS_COMMON = 'as is common';
const isCommon = (text: string): boolean => /^(as (is )?)?(common|usual)$/.test(plain(text));

/** What an hour of staff costs with all charges, in some currencies; from memory, assumed. */
const STAFF_HOUR: Readonly<Record<string, string>> = {
  EUR: '22',
  GBP: '16',
  USD: '22',
  CAD: '24',
  AUD: '36',
  NZD: '30',
  CHF: '38',
};

const joined = (text: string): string => plain(text).replace(/ /g, '');

/** One of the choices by number, name or a slip of it. */
function chosen<T extends string>(text: string, choices: readonly T[]): Read<T> {
  const said = plain(text);
  const found = /^\d$/.test(said)
    ? choices[Number(said) - 1]
    : choices.find((one) => said !== '' && joined(one).startsWith(joined(said).slice(0, 4)));
  return found === undefined ? refused(`is none of ${choices.join(', ')}`) : took(found);
}

function readMachine(text: string): Read<StarterAnswers['machine']> {
  const said = plain(text).replace(/under counter/g, 'undercounter');
  const count = /^[12]$/.test(said) ? null : numberIn(said);
  const hood = said === '2' || /hood|pass|dome|door/.test(said);
  if (!hood && said !== '1' && !/under|front|glass|small|counter/.test(said))
    return refused('is neither undercounter nor hood');
  if (count !== null && (!Number.isInteger(count) || count < 1 || count > 9))
    return refused('is not from 1 to 9 machines');
  return took({ class: hood ? 'hood' : 'undercounter', count: count ?? 1 });
}

type Questions = { readonly [K in QuestionKey]: Question<K> };

/** In the order they are asked. */
export const questions: Questions = {
  name: {
    key: 'name',
    option: 'name',
    ask: 'What is the café called?',
    help: '',
    optional: true,
    usual: () => 'My café',
    read: (text) => (text.trim() === '' ? refused('is empty') : took(text.trim().slice(0, 200))),
    show: (value) => value,
  },
  seats: {
    key: 'seats',
    option: 'seats',
    ask: 'How many seats are there?',
    help: '',
    optional: false,
    usual: () => '40',
    read: (text) => readWhole(text, 'seats', 1, 5000),
    show: String,
  },
  guests: {
    key: 'guests',
    option: 'guests',
    ask: 'How many guests come in the busiest hour?',
    help: 'Count those who take their drink away too.',
    optional: false,
    usual: () => '60',
    read: (text) => readWhole(text, 'guests', 1, 5000),
    show: String,
  },
  from: {
    key: 'from',
    option: 'from',
    ask: 'When does the busy time begin?',
    help: '',
    optional: false,
    usual: () => '07:00',
    read: readClock,
    show: clockText,
  },
  to: {
    key: 'to',
    option: 'to',
    ask: 'When does it end?',
    help: '',
    optional: false,
    usual: ({ from }) => clockText(Math.min(1440, (from ?? 420) + 240)),
    read: (text, { from }) => readClosing(text, from),
    show: clockText,
  },
  shape: {
    key: 'shape',
    option: 'shape',
    ask: 'How do guests spread over these hours?',
    help: Object.values(shapes)
      .map(({ name, about }, i) => `${i + 1} ${name}: ${about}`)
      .join('\n'),
    choices: Object.keys(shapes),
    optional: true,
    usual: ({ from, to }) => usualShape(from ?? 420, to ?? 660),
    read: (text) => chosen(text, Object.keys(shapes) as ShapeId[]),
    show: (value) => value,
  },
  stay: {
    key: 'stay',
    option: 'stay',
    ask: 'What share of guests stay in?',
    help: '',
    optional: false,
    usual: () => '50 %',
    read: readShare,
    show: percentText,
  },
  dwell: {
    key: 'dwell',
    option: 'dwell',
    ask: 'How long do they stay, once they have their drinks?',
    help: 'In minutes, on average. Common: 22 minutes alone, 42 in company.',
    optional: true,
    usual: () => AS_IS_COMMON,
    read: (text) => (isCommon(text) ? took(null) : readMinutes(text)),
    show: (value) => (value === null ? AS_IS_COMMON : `${value} min`),
  },
  menu: {
    key: 'menu',
    option: 'menu',
    ask: 'What is on the menu?',
    help: 'Drinks, separated by commas. For any other drink add what it is served in, such as "matcha in a small cup".',
    optional: false,
    usual: () => 'flat white, cappuccino, latte, tea',
    read: (text, _, served) => readMenu(text, served),
    show: (value) => value.map(({ name }) => name.toLowerCase()).join(', '),
  },
  machine: {
    key: 'machine',
    option: 'machine',
    ask: 'Which dishwasher washes them?',
    help: '1 undercounter: opens at the front\n2 hood: a rack slides through\nWith a number for more than one, such as "two hoods".',
    choices: ['undercounter', 'hood', '2 undercounter', '2 hood'],
    optional: true,
    usual: () => 'undercounter',
    read: readMachine,
    show: (value) => `${value.count === 1 ? '' : `${value.count} `}${value.class}`,
  },
  shareRacks: {
    key: 'shareRacks',
    option: 'share-racks',
    ask: 'Do cups, saucers and spoons share a rack?',
    help: 'Yes if one rack goes in with all of them; no if each has racks of its own.',
    choices: ['no', 'yes'],
    optional: true,
    usual: () => 'no',
    read: readYes,
    show: (value) => (value ? 'yes' : 'no'),
  },
  currency: {
    key: 'currency',
    option: 'currency',
    ask: 'In which currency do you pay?',
    help: '',
    optional: false,
    usual: () => 'EUR',
    read: readCurrency,
    show: (value) => value,
  },
  staffHour: {
    key: 'staffHour',
    option: 'staff-hour',
    ask: 'What does an hour of staff cost, with all charges?',
    help: '',
    optional: false,
    usual: ({ currency }) => STAFF_HOUR[currency ?? 'EUR'] ?? null,
    read: (text, { currency }) => readAmount(text, currency),
    show: (value) => value,
  },
  cupPrice: {
    key: 'cupPrice',
    option: 'cup-price',
    ask: 'What does a cup cost, without its saucer?',
    help: 'All cups and mugs take this price; what a saucer, glass or spoon costs can be said later.',
    optional: true,
    usual: () => AS_IS_COMMON,
    read: (text, { currency }) => (isCommon(text) ? took(null) : readAmount(text, currency)),
    show: (value) => value ?? AS_IS_COMMON,
  },
};

export const questionKeys = Object.keys(questions) as readonly QuestionKey[];

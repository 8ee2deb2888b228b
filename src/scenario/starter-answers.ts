/**
 * What people type, as values: "50", "7am", "£14", "half an hour". Each reader takes every spelling a person would
 * call obvious and says in one clause why it cannot take another.
 */
import { parseCurrency } from '../quantities/money.js';

/** A value, or why there is none: a clause that follows the answer ("is not a time of day, such as 7:30"). */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: string };

export const took = <T>(value: T): Read<T> => ({ ok: true, value });
export const refused = (why: string): { readonly ok: false; readonly why: string } => ({
  ok: false,
  why,
});

/** Lower case, one space between words, no accents: "Caffè  Latte" and "caffe latte" are one. */
export const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

const WORDS: Readonly<Record<string, number>> = {
  no: 0,
  none: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
};

/** The first number of a text: 1,200 is a thousand and more, 14,50 a fraction; null if it has none, or a power of ten. */
export function numberIn(text: string): number | null {
  // Of 1e9 only the 1 would be seen.
  if (/\de[-+]?\d/i.test(text)) return null;
  const digits = /\d+(?:[.,' ]\d{3})+(?!\d)|\d*[.,]?\d+/.exec(text)?.[0];
  if (digits === undefined) {
    const word = plain(text)
      .split(' ')
      .find((one) => Object.hasOwn(WORDS, one));
    return word === undefined ? null : WORDS[word]!;
  }
  if (/^\d{1,3}([.,' ]\d{3})+$/.test(digits) && !digits.startsWith('0'))
    return Number(digits.replace(/\D/g, ''));
  return Number(digits.replace(',', '.').replace(/[' ]/g, ''));
}

/** A whole number from `least` to `most`, whatever words stand around it ("about 40 seats"). */
export function readWhole(text: string, what: string, least: number, most: number): Read<number> {
  const number = /-\s*\d/.test(text) ? -1 : numberIn(text);
  if (number === null) return refused(`is not a number of ${what}, such as 40`);
  if (!Number.isInteger(number)) return refused(`is not a whole number of ${what}`);
  return number >= least && number <= most
    ? took(number)
    : refused(`is not between ${least} and ${most.toLocaleString('en')} ${what}`);
}

/** A share: 50, 50 %, 0.5, half, all. A whole number counts as a percentage. */
export function readShare(text: string): Read<number> {
  const said = plain(text);
  const words: Readonly<Record<string, number>> = {
    half: 0.5,
    all: 1,
    everyone: 1,
    everybody: 1,
    none: 0,
    nobody: 0,
    'a third': 1 / 3,
    'two thirds': 2 / 3,
    'a quarter': 0.25,
    'three quarters': 0.75,
  };
  if (Object.hasOwn(words, said)) return took(words[said]!);
  const fraction = /^(\d+)\s*\/\s*(\d+)$/.exec(said);
  const number = fraction === null ? numberIn(said) : null;
  const share =
    fraction !== null
      ? Number(fraction[1]) / Number(fraction[2])
      : number === null || text.trim().startsWith('-')
        ? Number.NaN
        : !said.includes('%') && /^\s*0?[.,]\d/.test(said)
          ? number
          : number / 100;
  return share >= 0 && share <= 1
    ? took(share)
    : refused('is not a share from 0 to 100 %, such as 50 %');
}

/** Minutes since midnight of a time of day: 7, 7am, 7.30, 07:30, 0730, 7h30, noon. */
export function readClock(text: string): Read<number> {
  const said = plain(text)
    .replace(/([ap])\.?\s?m\b\.?|o'?\s?clock|\bat\b|\buhr\b/g, (_, half: string | undefined) =>
      half === undefined ? '' : `${half}m`,
    )
    .trim();
  const named: Readonly<Record<string, number>> = { noon: 720, midday: 720, midnight: 1440 };
  if (Object.hasOwn(named, said)) return took(named[said]!);
  const parts =
    /^(\d{1,2})(?:\s*[:.h]\s*(\d{2})?)?\s*(am|pm)?$/.exec(said) ??
    /^(\d{1,2})(\d{2})\s*(am|pm)?$/.exec(said);
  if (parts === null) return refused('is not a time of day, such as 7:30 or 2pm');
  const minute = Number(parts[2] ?? 0);
  let hour = Number(parts[1]);
  if (parts[3] !== undefined) {
    if (hour < 1 || hour > 12) return refused('is not a time of day, such as 7:30 or 2pm');
    hour = (hour % 12) + (parts[3] === 'pm' ? 12 : 0);
  }
  return minute < 60 && hour * 60 + minute <= 1440
    ? took(hour * 60 + minute)
    : refused('is not a time of day, such as 7:30 or 2pm');
}

/** Closing: a plain hour that would lie before opening is one of the afternoon (11 to 3). */
export function readClosing(text: string, from: number | undefined): Read<number> {
  const read = readClock(text);
  if (!read.ok || from === undefined || read.value > from) return read;
  const plainHour = !/[ap]\.?\s?m|noon|midnight|^0/i.test(text) && read.value < 720;
  if (plainHour && read.value + 720 > from) return took(read.value + 720);
  return refused('is not after opening; the busy time must lie within one day');
}

/** Minutes: 40, 40 min, 1 h, 1h30, half an hour, 30 to 45 (the middle). */
export function readMinutes(text: string): Read<number> {
  const said = plain(text.replace(/[–—-]/g, ' to '));
  const named: Readonly<Record<string, number>> = {
    'half an hour': 30,
    'an hour': 60,
    'a quarter of an hour': 15,
    'three quarters of an hour': 45,
    'an hour and a half': 90,
  };
  const ends = said.split(/\bto\b/).map((end) => minutesOf(end, said));
  const minutes = Object.hasOwn(named, said)
    ? named[said]!
    : ends.length <= 2 && ends.every((end) => end !== null)
      ? ends.reduce<number>((sum, end) => sum + end!, 0) / ends.length
      : Number.NaN;
  return minutes >= 1 && minutes <= 480
    ? took(Math.round(minutes * 10) / 10)
    : refused('is not a time from 1 minute to 8 hours, such as 40 min');
}

function minutesOf(text: string, whole: string): number | null {
  const both = /(\d+)\s*h(?:ours?|rs?)?\s*(?:and\s*)?(\d{1,2})\b/.exec(text);
  if (both !== null) return Number(both[1]) * 60 + Number(both[2]);
  const number = numberIn(text);
  if (number === null) return null;
  return /\d\s*h/.test(whole) && !/\bm(in|$)/.test(text) ? number * 60 : number;
}

/** Yes or no. */
export function readYes(text: string): Read<boolean> {
  const said = plain(text);
  if (/^(y|yes|yeah|yep|true|ja|oui|si|together|shared?|same)\b/.test(said)) return took(true);
  if (/^(n|no|nope|false|nein|non|apart|separate|separately|own)\b/.test(said)) return took(false);
  return refused('is neither yes nor no');
}

const SIGNS: readonly (readonly [pattern: RegExp, code: string])[] = [
  [/(au|a)\s?\$|australian/, 'AUD'],
  [/(nz)\s?\$|new zealand/, 'NZD'],
  [/(ca|c)\s?\$|canadian/, 'CAD'],
  [/(sg|s)\s?\$|singapore/, 'SGD'],
  [/(hk)\s?\$|hong kong/, 'HKD'],
  [/€|\beuros?\b/, 'EUR'],
  [/£|\bpounds?\b|\bsterling\b|\bquid\b/, 'GBP'],
  [/\$|\bdollars?\b|\bbucks\b/, 'USD'],
  [/¥|\byen\b/, 'JPY'],
  [/₹|\brupees?\b/, 'INR'],
  [/\bfrancs?\b|\bfranken\b/, 'CHF'],
  [/₩|\bwon\b/, 'KRW'],
  [/zł|\bzloty\b/, 'PLN'],
];

/** The currency that a text names by code, sign or word; null if it names none. */
export function currencyIn(text: string): string | null {
  for (const word of text.toUpperCase().match(/[A-Z]{3,}/g) ?? [])
    if (word.length === 3 && parseCurrency(word).ok) return word;
  const said = text.toLowerCase();
  return SIGNS.find(([pattern]) => pattern.test(said))?.[1] ?? null;
}

export function readCurrency(text: string): Read<string> {
  const code = currencyIn(text);
  return code === null
    ? refused('is not a currency known here; give its three letters, such as EUR, GBP or USD')
    : took(code);
}

/** An amount above zero in whole units of the currency, as it is to be written ("22.50"). */
export function readAmount(text: string, currency: string | undefined): Read<string> {
  const named = currencyIn(text);
  const sameSign = named === 'USD' && text.includes('$') && currency?.endsWith('D') === true;
  if (named !== null && currency !== undefined && named !== currency && !sameSign)
    return refused(`is in ${named}, and the currency is ${currency}`);
  const number = /-\s*\d/.test(text) ? null : numberIn(text);
  return number === null || number <= 0 || number > 1e7
    ? refused('is not an amount of money above zero, such as 22.50')
    : took(String(Math.round(number * 100) / 100));
}

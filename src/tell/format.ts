/**
 * Numbers as people of a place write them, and tables that line up in fixed-width type.
 */
import { power } from '../elementary/powers.js';
import { columnsOf, shorten } from './clean-text.js';
import type { ReportContext } from './context.js';
import { measuresIn, type Measures } from './measures.js';

/** Figures as text; spaces within them are no-break spaces (U+00A0). */
export interface Formats extends Measures {
  /** Whole number. */
  count(value: number): string;
  /** At most one decimal: means a day, pieces a seat. */
  decimal(value: number, digits?: number): string;
  /** A share 0..1 as a percentage, `24 %`; never shown as 100 % or 0 % when it is not quite that. */
  percent(share: number, digits?: number): string;
  /** Whole units of the scenario's currency. */
  money(amount: number): string;
  /** Minutes from opening as the time of day, or hours:minutes since opening where the house has no clock. */
  clock(minute: number): string;
  /** Minutes, with the unit. */
  minutes(value: number): string;
}

type FormatContext = Pick<ReportContext, 'locale' | 'currency' | 'openingMinute' | 'units'>;

/** `locale` if the machine knows how to read it, else English as written in Ireland (day before month, 24 hours). */
export function safeLocale(locale: string): string {
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? 'en-IE';
  } catch {
    return 'en-IE';
  }
}

/**
 * A figure as it is printed: all kinds of space become the one no-break space, so that a figure keeps its unit on
 * its line; a hyphen before it becomes a minus, and goes before nothing; marks of direction go.
 */
export const asPrinted = (text: string): string =>
  text
    .replace(/[ \u202F\u2009]/g, '\u00A0')
    .replace(/[\u200E\u200F\u061C]/g, '')
    .replace(/^-(?=[^1-9]*$)/, '')
    .replace(/^-/, '−');

export function formatsFor({
  locale,
  currency,
  openingMinute,
  units = 'metric',
}: FormatContext): Formats {
  const tag = safeLocale(locale);
  const number = (digits: number, least = 0): Intl.NumberFormat =>
    new Intl.NumberFormat(tag, { minimumFractionDigits: least, maximumFractionDigits: digits });
  const whole = number(0);
  const decimals = [whole, number(1, 1), number(2, 2), number(3, 3)];
  const percents = [0, 1, 2].map(
    (digits) =>
      new Intl.NumberFormat(tag, {
        style: 'percent',
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
      }),
  );
  const moneys = moneyFormat(tag, currency);
  // 07:30 where the day has 24 hours, 7:30 am where it has two times twelve.
  const { hour12 } = new Intl.DateTimeFormat(tag, { hour: 'numeric' }).resolvedOptions();
  const time = new Intl.DateTimeFormat(tag, {
    hour: hour12 === true ? 'numeric' : '2-digit',
    minute: '2-digit',
    timeZone: 'UTC',
  });
  const upTo = [whole, number(1), number(2)];
  return {
    ...measuresIn(units, (value, most, least = 0) =>
      asPrinted(
        (least === 0 ? (upTo[most] ?? upTo[2]!) : (decimals[most] ?? decimals[3]!)).format(value),
      ),
    ),
    count: (value) => asPrinted(whole.format(value)),
    decimal: (value, digits = 1) => asPrinted((decimals[digits] ?? decimals[3]!).format(value)),
    percent(share, digits = 1) {
      const step = power(10, -(digits + 2));
      const shown =
        share < 1 && share > 1 - step / 2 ? 1 - step : share > 0 && share < step / 2 ? step : share;
      return asPrinted((percents[digits] ?? percents[2]!).format(shown)).replace(
        /(?<=\d)%/,
        '\u00A0%',
      );
    },
    money: (amount) => asPrinted(moneys.format(amount)),
    clock(minute) {
      const whole = Math.round(minute);
      if (openingMinute === null)
        return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}\u00A0h`;
      return asPrinted(time.format(new Date((openingMinute + whole) * 60_000)));
    },
    minutes: (value) => `${asPrinted((value < 10 ? decimals[1]! : whole).format(value))}\u00A0min`,
  };
}

/** Decimals that a level needs as a percentage: 95 % none, 97.5 % one, 99.95 % two. */
export const digitsOf = (level: number): number =>
  [0, 1].find(
    (digits) =>
      Math.abs(level * power(10, digits + 2) - Math.round(level * power(10, digits + 2))) < 1e-6,
  ) ?? 2;

function moneyFormat(tag: string, currency: string): Intl.NumberFormat {
  try {
    return new Intl.NumberFormat(tag, { style: 'currency', currency });
  } catch {
    return new Intl.NumberFormat(tag, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  }
}

/** Minutes without a decimal where there is none. */
export const minutesText = (minutes: number, formats: Formats): string =>
  Number.isInteger(minutes) ? `${formats.count(minutes)}\u00A0min` : formats.minutes(minutes);

export interface TextColumn {
  /** Heading; '\n' parts its lines. */
  readonly title: string;
  readonly right?: boolean;
}

/**
 * A table in fixed-width type: every line has the same number of columns, at most `width` (the first
 * column, which holds names, gives way; it keeps 8).
 * @param rows cells in the order of `columns`; null draws a line across
 */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[] | null)[],
  width = 100,
): string[] {
  const heads = columns.map(({ title }) => title.split('\n'));
  const lines = Math.max(...heads.map((head) => head.length));
  const gap = 2;
  const widths = columns.map((_, i) =>
    Math.max(
      ...heads[i]!.map(columnsOf),
      ...rows.map((row) => (row === null ? 0 : columnsOf(row[i] ?? ''))),
    ),
  );
  const over = widths.reduce((sum, one) => sum + one, gap * (columns.length - 1)) - width;
  if (over > 0) widths[0] = Math.max(8, widths[0]! - over);
  const cell = (text: string, i: number): string => {
    const shown = shorten(text, widths[i]!);
    const pad = ' '.repeat(widths[i]! - columnsOf(shown));
    return columns[i]!.right === true ? pad + shown : shown + pad;
  };
  const line = (cells: readonly string[]): string =>
    columns.map((_, i) => cell(cells[i] ?? '', i)).join(' '.repeat(gap));
  const rule = '-'.repeat(widths.reduce((sum, one) => sum + one, gap * (columns.length - 1)));
  const headLines = Array.from({ length: lines }, (_, n) =>
    line(heads.map((head) => head[n - lines + head.length] ?? '')),
  );
  return [...headLines, rule, ...rows.map((row) => (row === null ? rule : line(row)))];
}

/** `text` broken between words into lines of at most `width` columns; later lines begin with `indent`. Words too long are cut, unless `tooLong` says otherwise. */
export function wrapText(
  text: string,
  width = 100,
  indent = '',
  tooLong: (word: string, most: number) => string = shorten,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const shown = tooLong(word, width - indent.length);
    if (line !== '' && columnsOf(line) + 1 + columnsOf(shown) > width) {
      lines.push(line);
      line = indent + shown;
    } else line = line === '' ? shown : `${line} ${shown}`;
  }
  return [...lines, line];
}

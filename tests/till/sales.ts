/**
 * Made-up sales for the tests, written as exports of several forms, and the way from a map's text to a fit.
 */
import { Stream, streamKey } from '../../src/engine/streams.js';
import { formatProblem } from '../../src/scenario/problems.js';
import { readTillMap } from '../../src/questions/till/read-map.js';
import type { TillMap } from '../../src/till/compile-map.js';
import { isoDate } from '../../src/till/clock.js';
import { fitTill, type TillFit } from '../../src/till/fit-till.js';
import type { Outcome } from '../../src/till/flaw.js';
import { readTill } from '../../src/till/read-till.js';
import type { Tally } from '../../src/till/tally.js';

/** A map, or its problems as they are printed. */
export function readMap(text: string): {
  readonly map: TillMap | null;
  readonly told: readonly string[];
} {
  const read = readTillMap(text, 'map.yaml');
  return read.ok
    ? { map: read.map, told: [] }
    : { map: null, told: read.problems.map(formatProblem) };
}

export function mustMap(text: string): TillMap {
  const { map, told } = readMap(text);
  if (map === null) throw new Error(told.join('\n'));
  return map;
}

export function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok)
    throw new Error(
      outcome.flaws
        .map((flaw) => `${flaw.path.join('.')}: ${flaw.rule}; ${flaw.remedy}`)
        .join('\n'),
    );
  return outcome.value;
}

export async function* inPieces(
  ...pieces: readonly (string | Uint8Array)[]
): AsyncGenerator<string | Uint8Array> {
  for (const piece of pieces) yield piece;
}

export async function tallyOf(text: string, map: TillMap): Promise<Tally> {
  return must(await readTill(inPieces(text), map));
}

export async function fitOf(text: string, map: TillMap): Promise<TillFit> {
  return must(fitTill(await tallyOf(text, map), map, 'sales.csv'));
}

export interface Ticket {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly second: number;
  readonly items: readonly string[];
}

/** `NONE` is no dish but what a till writes for an empty row. */
const foods = ['Bread', 'Cake, lemon', 'Toast "thick"', 'NONE'];
const drinkNames = ['Flat White', 'Tea', 'Hot  chocolate'];

/** Poisson of this mean, by counting exponential gaps. */
export function poisson(stream: Stream, mean: number): number {
  let count = 0;
  for (let at = stream.exponential(); at < mean; at += stream.exponential()) count += 1;
  return count;
}

/** Gamma with mean 1 and CV 1/√shape for a whole shape: a mean of exponentials. */
export function gammaOfWholeShape(stream: Stream, shape: number): number {
  let sum = 0;
  for (let k = 0; k < shape; k += 1) sum += stream.exponential();
  return sum / shape;
}

function pick(stream: Stream, weights: readonly number[]): number {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  let at = stream.uniform() * all;
  for (let k = 0; k < weights.length; k += 1) {
    at -= weights[k]!;
    if (at < 0) return k;
  }
  return weights.length - 1;
}

export interface Truth {
  readonly days: number;
  /** Expected parties in each quarter hour from 08:00. */
  readonly rates: readonly number[];
  /** Whole shape of the day's gamma level: CV 1/√shape; 0 for none. */
  readonly shape: number;
  /** Shares of parties of 1, 2, 3 … */
  readonly sizes: readonly number[];
  /** Shares of the three drinks. */
  readonly menu: readonly number[];
}

export const firstDay = 18_262; // 2020-01-01, a Wednesday

/** Parties by day and quarter hour, drawn from the truth. */
export function drawTable(truth: Truth, seed: string): number[][] {
  const stream = new Stream(streamKey(seed, 'till test'));
  return Array.from({ length: truth.days }, (_, day) => {
    stream.toDay(day);
    const level = truth.shape === 0 ? 1 : gammaOfWholeShape(stream, truth.shape);
    return truth.rates.map((rate) => poisson(stream, rate * level));
  });
}

/** Tickets in order of time, no two in the same second; half as many again hold food alone. */
export function drawTickets(truth: Truth, seed: string): Ticket[] {
  const stream = new Stream(streamKey(seed, 'till test tickets'));
  return drawTable(truth, seed).flatMap((row, day) => {
    stream.toDay(day);
    return row.flatMap((parties, slot) => {
      const food = poisson(stream, truth.rates[slot]! / 2);
      const seconds = new Set<number>();
      while (seconds.size < parties + food)
        seconds.add(8 * 3600 + slot * 900 + Math.floor(stream.uniform() * 900));
      const tickets = [...seconds].map((second, at): Ticket => {
        const drinks =
          at < parties
            ? Array.from(
                { length: 1 + pick(stream, truth.sizes) },
                () => drinkNames[pick(stream, truth.menu)]!,
              )
            : [];
        const dishes = Array.from(
          { length: drinks.length === 0 ? 1 : poisson(stream, 0.7) },
          () => foods[pick(stream, [4, 3, 2, 1])]!,
        );
        return { day: firstDay + day, second, items: [...drinks, ...dishes] };
      });
      return tickets.sort((one, other) => one.second - other.second);
    });
  });
}

export interface Form {
  readonly separator: ',' | ';' | '\t';
  readonly date: 'iso' | 'day-first' | 'month-first';
  readonly oneColumn: boolean;
  readonly ids: boolean;
  readonly quantity: boolean;
  readonly lineEnd: '\n' | '\r\n';
  readonly bom: boolean;
  /** Write a line break into the names of foods. */
  readonly breaks: boolean;
}

const two = (value: number): string => String(value).padStart(2, '0');

function dateText(day: number, form: Form): string {
  const [year, month, date] = isoDate(day).split('-') as [string, string, string];
  if (form.date === 'iso') return `${year}-${month}-${date}`;
  return form.date === 'day-first'
    ? `${Number(date)}.${Number(month)}.${year}`
    : `${month}/${date}/${year}`;
}

function timeText(second: number, form: Form): string {
  const [hour, minute, rest] = [
    Math.floor(second / 3600),
    Math.floor(second / 60) % 60,
    second % 60,
  ];
  if (form.date !== 'month-first') return `${two(hour)}:${two(minute)}:${two(rest)}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}:${two(rest)} ${hour < 12 ? 'AM' : 'PM'}`;
}

/** The tickets as the text of an export. */
export function writeExport(tickets: readonly Ticket[], form: Form): string {
  const field = (text: string): string =>
    /[",;\t\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  const rows = tickets.flatMap(({ day, second, items }, ticket) => {
    const counted = form.quantity
      ? [...new Set(items)].map((item) => ({
          item,
          count: items.filter((other) => other === item).length,
        }))
      : items.map((item) => ({ item, count: 1 }));
    return counted.map(({ item, count }) => {
      const name = form.breaks && foods.includes(item) ? `${item}${form.lineEnd}of the day` : item;
      const when = form.oneColumn
        ? [`${dateText(day, form)} ${timeText(second, form)}`]
        : [dateText(day, form), timeText(second, form)];
      return [
        ...when,
        ...(form.ids ? [String(1000 + ticket)] : []),
        name,
        ...(form.quantity ? [String(count)] : []),
      ];
    });
  });
  const heading = [
    ...(form.oneColumn ? ['Moment'] : ['Date', 'Time']),
    ...(form.ids ? ['No.'] : []),
    'Item',
    ...(form.quantity ? ['Pieces'] : []),
  ];
  return (
    (form.bom ? '\uFEFF' : '') +
    [heading, ...rows].map((row) => row.map(field).join(form.separator) + form.lineEnd).join('')
  );
}

/** The map for such an export; `rest` are further lines. */
export function mapFor(form: Form, rest = ''): string {
  const columns = [
    form.oneColumn ? 'date: Moment' : 'date: Date, time: Time',
    ...(form.ids ? ['ticket: No.'] : []),
    'item: Item',
    ...(form.quantity ? ['quantity: Pieces'] : []),
  ];
  return `
columns: { ${columns.join(', ')} }
dates: ${form.date}
separator: ${{ ',': 'comma', ';': 'semicolon', '\t': 'tab' }[form.separator]}
drinks:
  flat white: flat-white
  TEA: tea
  Hot choc*: hot-chocolate
ignored: [NONE]
days: { week: any }
hours: { from: "08:00", to: "12:00" }
${rest}`;
}

export const plainForm: Form = {
  separator: ',',
  date: 'iso',
  oneColumn: false,
  ids: true,
  quantity: false,
  lineEnd: '\n',
  bom: false,
  breaks: false,
};

/** Sixteen quarter hours with a rush in them. */
export const rushTruth: Truth = {
  days: 40,
  rates: [2, 3, 4, 6, 8, 9, 8, 7, 6, 5, 4, 4, 3, 3, 2, 2],
  shape: 16,
  sizes: [0.6, 0.28, 0.09, 0.03],
  menu: [0.6, 0.3, 0.1],
};

/** The same tickets counted by day and slot, with nothing of src in the counting. */
export function writeCounts(tickets: readonly Ticket[]): string {
  const cells = new Map<string, number[]>();
  for (const { day, second, items } of tickets) {
    const quarter = Math.floor(second / 900);
    const key = `${isoDate(day)},${two(Math.floor(quarter / 4))}:${two((quarter % 4) * 15)}`;
    const cell = cells.get(key) ?? [0, 0, 0, 0, 0];
    const drinks = items.filter((item) => drinkNames.includes(item));
    cell[0]! += 1;
    if (drinks.length > 0) cell[1]! += 1;
    for (const drink of drinks) cell[2 + drinkNames.indexOf(drink)]! += 1;
    cells.set(key, cell);
  }
  return `day,from,tickets,with a drink,flat whites,teas,chocolates\n${[...cells].map(([key, cell]) => `${key},${cell.join(',')}\n`).join('')}`;
}

export const countsMap = `
counts: { date: day, slot: from, every: 15 min, parties: with a drink, tickets: tickets }
dates: iso
drinks: { flat whites: flat-white, teas: tea, chocolates: hot-chocolate }
days: { week: any }
hours: { from: "08:00", to: "12:00" }
`;

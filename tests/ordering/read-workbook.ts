/** A workbook as a spreadsheet has it: unzipped, its formulas worked out by an evaluator that knows nothing of the values beside them. */
import { inflateRawSync } from 'node:zlib';
import write from 'write-excel-file/universal';
import { orderSheetXlsx } from '../../src/ordering/order-sheet-xlsx.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';

/** The files of a zip archive, by its central directory (PKWARE APPNOTE 4.3.12). */
function unzip(bytes: Buffer): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  let at = bytes.readUInt32LE(bytes.lastIndexOf(Buffer.from('PK\u0005\u0006')) + 16);
  while (bytes.readUInt32LE(at) === 0x02014b50) {
    const [method, size, nameLength] = [
      bytes.readUInt16LE(at + 10),
      bytes.readUInt32LE(at + 20),
      bytes.readUInt16LE(at + 28),
    ];
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const data = bytes.subarray(start, start + size);
    files.set(
      bytes.toString('utf8', at + 46, at + 46 + nameLength),
      (method === 0 ? data : inflateRawSync(data)).toString('utf8'),
    );
    at += 46 + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return files;
}

interface Cell {
  readonly formula: string | null;
  readonly value: number | string;
}

export type Book = ReadonlyMap<string, ReadonlyMap<string, Cell>>;

const unescaped = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');

export async function readBack(sheet: OrderSheet): Promise<Book> {
  const book = orderSheetXlsx(sheet);
  const blob = await write(book.sheets, { features: book.features }).toBlob();
  const files = unzip(Buffer.from(await blob.arrayBuffer()));
  const strings = [
    ...(files.get('xl/sharedStrings.xml') ?? '').matchAll(/<si>.*?<t[^>]*>(.*?)<\/t>.*?<\/si>/gs),
  ].map(([, text]) => unescaped(text!));
  return new Map(
    book.sheets.map(({ sheet: name }, index) => {
      const xml = files.get(`xl/worksheets/sheet${index + 1}.xml`)!;
      const cells = [...xml.matchAll(/<c ([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)].flatMap(
        ([, attributes, inner]): [string, Cell][] => {
          const place = /r="([A-Z]+\d+)"/.exec(attributes!)![1]!;
          const value = /<v>(.*?)<\/v>/s.exec(inner ?? '')?.[1];
          if (value === undefined) return [];
          const text = /t="s"/.test(attributes!);
          return [
            [
              place,
              {
                formula: unescaped(/<f>(.*?)<\/f>/s.exec(inner!)?.[1] ?? '') || null,
                value: text ? strings[Number(value)]! : Number(value),
              },
            ],
          ];
        },
      );
      return [name, new Map(cells)];
    }),
  );
}

/** Works out a formula of + − * /, brackets, comparisons, references, SUM, SUMPRODUCT, LOOKUP, ROUND, ROUNDUP (to whole numbers), IF, AND, OR. */
export function worked(book: Book, sheet: string, formula: string): number {
  const cellAt = (name: string, place: string): number => {
    const cell = book.get(name)!.get(place.replaceAll('$', ''));
    return cell === undefined
      ? 0
      : cell.formula === null
        ? Number(cell.value)
        : worked(book, name, cell.formula);
  };
  const tokens = formula.match(
    /SUMPRODUCT|SUM|LOOKUP|ROUNDUP|ROUND|IF|AND|OR|(?:[A-Z][a-z]+!)?\$?[A-Z]+\$?\d+|\d+(?:\.\d+)?|>=|[-+*/(),:=>]/g,
  )!;
  let at = 0;
  const take = (token: string): boolean => (tokens[at] === token ? (at++, true) : false);
  const reference = (): readonly [string, string] => {
    const parts = tokens[at++]!.split('!');
    return parts.length === 2 ? [parts[0]!, parts[1]!] : [sheet, parts[0]!];
  };
  /** The values of a range of one column. */
  const range = (): number[] => {
    const [name, first] = reference();
    take(':');
    const [, last] = reference();
    const rowOf = (place: string): number => Number(place.replace(/\D/g, ''));
    return Array.from({ length: rowOf(last) - rowOf(first) + 1 }, (_, row) =>
      cellAt(name, `${first.replace(/[$\d]/g, '')}${rowOf(first) + row}`),
    );
  };
  const listOf = <T>(one: () => T): T[] => {
    take('(');
    const all = [one()];
    while (take(',')) all.push(one());
    take(')');
    return all;
  };
  const compared = (): number => {
    const left = sum();
    if (take('=')) return Number(left === sum());
    if (take('>=')) return Number(left >= sum());
    if (take('>')) return Number(left > sum());
    return left;
  };
  const atom = (): number => {
    if (take('(')) {
      const value = compared();
      take(')');
      return value;
    }
    if (take('SUM'))
      return listOf(range)
        .flat()
        .reduce((total, value) => total + value, 0);
    if (take('SUMPRODUCT')) {
      const [left, right] = listOf(range);
      return left!.reduce((total, value, row) => total + value * right![row]!, 0);
    }
    if (take('LOOKUP')) {
      take('(');
      const wanted = sum();
      take(',');
      const keys = range();
      take(',');
      const values = range();
      take(')');
      return values[keys.findLastIndex((key) => key <= wanted)]!;
    }
    if (take('ROUNDUP')) return Math.ceil(listOf(compared)[0]!);
    if (take('ROUND')) {
      const [value, digits] = listOf(compared);
      // As spreadsheets do: halves away from zero, after dropping what lies beyond 15 digits.
      return Math.round(Number((value! * 10 ** digits!).toPrecision(15))) / 10 ** digits!;
    }
    if (take('IF')) {
      const [test, yes, no] = listOf(compared);
      return test === 1 ? yes! : no!;
    }
    if (take('AND')) return Number(listOf(compared).every((one) => one === 1));
    if (take('OR')) return Number(listOf(compared).some((one) => one === 1));
    if (/^\d/.test(tokens[at]!)) return Number(tokens[at++]);
    return cellAt(...reference());
  };
  const product = (): number => {
    let value = atom();
    for (;;) {
      if (take('*')) value *= atom();
      else if (take('/')) value /= atom();
      else return value;
    }
  };
  const sum = (): number => {
    let value = product();
    for (;;) {
      if (take('+')) value += product();
      else if (take('-')) value -= product();
      else return value;
    }
  };
  const value = compared();
  if (at !== tokens.length) throw new Error(`could not read ${formula}`);
  return value;
}

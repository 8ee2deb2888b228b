/**
 * The rows of a CSV export, one at a time, each with the line it starts on.
 *
 * Reading is csv-parse's; it holds one row at a time, whatever the length of the export.
 */
import { CsvError, parse } from 'csv-parse/stream';
import type { TillSource, Encoding } from './text.js';
import { plainBytes } from './text.js';
import { ReadingEnds } from './flaw.js';

export type Separator = 'comma' | 'semicolon' | 'tab';

export const separators: Readonly<Record<Separator, string>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
};

/** A row longer than this is no row of a till: a quotation mark was opened and never closed. */
const LONGEST_ROW = 100_000;

export interface Row {
  /** The line of the export, from 1, on which the row starts. */
  readonly line: number;
  readonly fields: readonly string[];
}

function unclosedQuote(line: number): ReadingEnds {
  return new ReadingEnds({
    about: 'export',
    path: [],
    value: undefined,
    rule: 'opens a quotation mark that is never closed, so the rows after it cannot be separated',
    remedy: 'close or remove it (inside a quoted field a quotation mark is written twice)',
    line,
  });
}

function streamOf(pieces: AsyncGenerator<Uint8Array>): ReadableStream<Uint8Array> {
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await pieces.next();
      if (done) controller.close();
      else controller.enqueue(value);
    },
    async cancel() {
      await pieces.return(undefined);
    },
  });
}

/** A quoted field with spaces after its closing quotation mark keeps the marks: take both off. */
function withoutMarks(field: string): string {
  return field.startsWith('"') && /"\s+$/.test(field) ? field.trimEnd().slice(1, -1) : field;
}

function lineBreaks(field: string): number {
  return field.includes('\n') ? field.split('\n').length - 1 : 0;
}

/**
 * Read rows; empty lines are passed over. A quotation mark within a field that is not quoted is a letter
 * like any other.
 *
 * @throws ReadingEnds where the text is in another encoding or a quotation mark is never closed.
 */
export async function* readRows(
  source: TillSource,
  separator: Separator,
  encoding: Encoding,
): AsyncGenerator<Row> {
  // The parser runs ahead of whoever reads the rows: this is its own place in the export.
  let lastLine = 0;
  const parser = parse({
    delimiter: separators[separator],
    relax_column_count: true,
    // Not `trim`, nor skipping bad records: either makes the parser drop the rest of a piece after a stray mark.
    relax_quotes: true,
    ltrim: true,
    skip_empty_lines: true,
    max_record_size: LONGEST_ROW,
    on_record: (fields, { lines }) => {
      lastLine = lines;
      // The line rides along as a last field: the parser's own way to give it costs three objects a row.
      fields.push(String(lines));
      return fields;
    },
  }) as TransformStream<Uint8Array, string[]>;
  const reader = streamOf(plainBytes(source, encoding)).pipeThrough(parser).getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      const lastLineOfRow = Number(value.pop());
      yield {
        line: lastLineOfRow - value.reduce((sum, field) => sum + lineBreaks(field), 0),
        fields: value.map(withoutMarks),
      };
    }
  } catch (error) {
    throw error instanceof CsvError ? unclosedQuote(lastLine + 1) : error;
  } finally {
    await reader.cancel().catch(() => undefined);
  }
}

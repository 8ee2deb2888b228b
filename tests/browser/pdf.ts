/**
 * What stands on the pages of a PDF (ISO 32000-1), as far as the browser's own writer makes use of it:
 * objects in plain sight, streams deflated, text as numbers of glyphs with a table back to letters.
 */
import { inflateSync } from 'node:zlib';

export interface PdfPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  /** Everything written on it, in the order drawn. */
  readonly text: string;
  /** Pictures made of dots. */
  readonly images: number;
}

interface PdfObject {
  readonly head: string;
  readonly stream: string;
}

type Glyphs = ReadonlyMap<number, string>;

export function pagesOf(pdf: Uint8Array): PdfPage[] {
  const objects = objectsOf(pdf);
  const glyphs = new Map<string, Glyphs>();
  const fontOf = (reference: string): Glyphs => {
    if (!glyphs.has(reference))
      glyphs.set(
        reference,
        glyphsOf(
          objects.get(/\/ToUnicode (\d+) 0 R/.exec(objects.get(reference)?.head ?? '')?.[1] ?? '')
            ?.stream ?? '',
        ),
      );
    return glyphs.get(reference)!;
  };
  return [...objects.values()]
    .filter(({ head }) => /\/Type \/Page\b(?!s)/.test(head))
    .map(({ head }) => {
      const [, , width, height] = /\/MediaBox \[([^\]]*)\]/
        .exec(head)![1]!
        .trim()
        .split(/\s+/)
        .map(Number);
      const contents = objects.get(/\/Contents (\d+) 0 R/.exec(head)![1]!)!;
      const drawn = { text: '', images: 0 };
      draw({ head, stream: contents.stream }, objects, fontOf, drawn);
      return {
        width: width!,
        height: height!,
        text: drawn.text.replace(/\s+/g, ' ').trim(),
        images: drawn.images,
      };
    });
}

function objectsOf(pdf: Uint8Array): Map<string, PdfObject> {
  const text = Buffer.from(pdf).toString('latin1');
  const objects = new Map<string, PdfObject>();
  for (const { 1: number, index, 0: start } of text.matchAll(/^(\d+) 0 obj\n/gm)) {
    const from = index + start.length;
    const streamAt = text.indexOf('stream\n', from);
    const end = text.indexOf('endobj', from);
    if (streamAt < 0 || streamAt > end)
      objects.set(number!, { head: text.slice(from, end), stream: '' });
    else {
      const head = text.slice(from, streamAt);
      const bytes = pdf.subarray(
        streamAt + 7,
        streamAt + 7 + Number(/\/Length (\d+)/.exec(head)![1]),
      );
      objects.set(number!, {
        head,
        stream: head.includes('/FlateDecode') ? inflateSync(bytes).toString('latin1') : '',
      });
    }
  }
  return objects;
}

/** A table from glyph numbers to letters. */
function glyphsOf(table: string): Glyphs {
  const glyphs = new Map<number, string>();
  const letters = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, body] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, to] of body!.matchAll(/<([0-9A-F]+)> <([0-9A-F]+)>/gi))
      glyphs.set(Number.parseInt(glyph!, 16), letters(to!));
  }
  for (const [, body] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, first] of body!.matchAll(
      /<([0-9A-F]+)> <([0-9A-F]+)> <([0-9A-F]+)>/gi,
    )) {
      const start = Number.parseInt(from!, 16);
      for (let glyph = start; glyph <= Number.parseInt(to!, 16); glyph += 1)
        glyphs.set(glyph, String.fromCharCode(Number.parseInt(first!, 16) + glyph - start));
    }
  }
  return glyphs;
}

function draw(
  { head, stream }: PdfObject,
  objects: Map<string, PdfObject>,
  fontOf: (reference: string) => Glyphs,
  onto: { text: string; images: number },
): void {
  const named = (name: string): string => new RegExp(`/${name} (\\d+) 0 R`).exec(head)?.[1] ?? '';
  let font: Glyphs = new Map();
  for (const [place, fontName, hex, formName] of stream.matchAll(
    /\/(F\d+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\/(X\d+) Do|\bTm\b/g,
  )) {
    if (fontName !== undefined) font = fontOf(named(fontName));
    // Each run of text is put in its place anew; within a run glyphs are moved along.
    if (place === 'Tm') onto.text += ' ';
    if (hex !== undefined)
      onto.text +=
        hex
          .match(/.{4}/g)
          ?.map((glyph) => font.get(Number.parseInt(glyph, 16)) ?? '')
          .join('') ?? '';
    if (formName !== undefined) {
      const form = objects.get(named(formName));
      if (form?.head.includes('/Subtype /Image') === true) onto.images += 1;
      else if (form !== undefined) draw(form, objects, fontOf, onto);
    }
  }
  onto.text += ' ';
}

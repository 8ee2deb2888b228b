/**
 * Text that came from a file and is about to be shown: no control characters (a terminal obeys them,
 * XML refuses them), nothing that turns the direction of what follows, one line.
 */

/** Controls, zero-width and direction marks, byte-order mark, non-characters. */
const unwanted =
  /[\p{Cc}\u200B\u200E\u200F\u061C\u2028\u2029\u202A-\u202E\u2060-\u2069\uFEFF\uFFFE\uFFFF]/gu;
/** Halves of a pair that stand alone. */
const loneSurrogate = /\p{Cs}/gu;

/** `text` in one line: line breaks and tabs become spaces, the rest of the unwanted is dropped. Spaces stay. */
export const harmless = (text: string): string =>
  text
    .replace(/[\t\n\v\f\r\u0085\u2028\u2029]+/g, ' ')
    .replace(unwanted, '')
    .replace(loneSurrogate, '\uFFFD');

/** The same, without spaces at its ends or more than one in a row. */
export const cleanText = (text: string): string =>
  harmless(text)
    .replace(/[ \u00A0]{2,}/g, ' ')
    .trim();

/** Made when first needed: it takes longer than most of what is loaded at the beginning of a command. */
const made: { segmenter?: Intl.Segmenter } = {};
const graphemes = (text: string): Intl.Segments =>
  (made.segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' })).segment(text);
/** Characters that a terminal draws two columns wide (Unicode Standard Annex 11: W and F), and emoji. */
const wide =
  /\p{Emoji_Presentation}|[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{20000}-\u{3FFFD}]/u;

/** Letters, dashes, quotes and signs of which each is one column and joins no other: the segmenter is slow. */
const plainColumns =
  /^[\x20-\x7E\u00A1-\u00A8\u00AA-\u00AC\u00B0-\u02FF\u2010-\u2026\u20AC\u2212\u2248\u2264\u2265]*$/;

/** Columns that a clean text takes in fixed-width type. */
export function columnsOf(text: string): number {
  if (plainColumns.test(text)) return text.length;
  let columns = 0;
  for (const { segment } of graphemes(text)) columns += wide.test(segment) ? 2 : 1;
  return columns;
}

/** `text` cut to at most `most` columns (≥ 1), ending in … where something was cut. */
export function shorten(text: string, most: number): string {
  if (text.length <= most && columnsOf(text) <= most) return text;
  let kept = '';
  let columns = 0;
  for (const { segment } of graphemes(text)) {
    const width = columnsOf(segment);
    if (columns + width > most - 1)
      return columns + width === most && kept.length + segment.length === text.length
        ? text
        : `${kept.trimEnd()}…`;
    kept += segment;
    columns += width;
  }
  return kept;
}

/** A clause as a sentence of its own. */
export const asSentence = (clause: string): string =>
  `${clause.charAt(0).toUpperCase()}${clause.slice(1)}${/[.!?]$/.test(clause) ? '' : '.'}`;

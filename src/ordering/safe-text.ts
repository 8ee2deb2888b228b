/**
 * Text for a spreadsheet's cell, in one line and without control characters, which spreadsheets and XML refuse. A cell
 * that begins with one of these signs would be read as a formula, even one that was a name in a file somebody sent; an
 * apostrophe in front makes it text (the OWASP advice on CSV injection).
 */
const FORMULA_START = /^\s*[=+\-@＝＋－＠]/u;
const BREAKS = /[\t\n\v\f\r\u0085\u2028\u2029]+/g;
/** Controls, marks of direction, the byte-order mark and what is no character. */
const UNWANTED = /[\p{Cc}\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069\uFEFF\uFFFE\uFFFF]/gu;
const LONE_SURROGATE = /\p{Cs}/gu;

export function safeText(text: string): string {
  const clean = text
    .replace(BREAKS, ' ')
    .replace(UNWANTED, '')
    .replace(LONE_SURROGATE, '\uFFFD')
    .trim();
  return FORMULA_START.test(clean) ? `'${clean}` : clean;
}

/**
 * Text for a spreadsheet's cell. A cell that begins with one of these signs would be read as a formula, even
 * one that was a name in a file somebody sent; an apostrophe in front makes it text (the OWASP
 * advice on CSV injection).
 */
const FORMULA_START = /^[=+\-@\t\r\n＝＋－＠]/u;

export const safeText = (text: string): string => (FORMULA_START.test(text) ? `'${text}` : text);

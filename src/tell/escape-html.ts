/** Text made safe to stand in HTML or SVG, between tags or in a quoted attribute. */
import { harmless } from './clean-text.js';

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export const escapeHtml = (text: string): string =>
  harmless(text).replace(/[&<>"']/g, (sign) => entities[sign]!);

/** A CSS string, quotes included, safe inside a style element: everything but letters, digits and spaces is written as a code point. */
export const cssString = (text: string): string =>
  `"${[...harmless(text)].map((sign) => (/[A-Za-z0-9 ]/.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16)} `)).join('')}"`;

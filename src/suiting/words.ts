/**
 * How figures are written in sentences and tables: metric first, US fluid ounces and Fahrenheit beside.
 */
import { ML_PER_FLUID_OUNCE } from '../quantities/unit-sizes.js';

/** "180 ml (6.1 fl oz)", US fluid ounces. */
export const millilitres = (ml: number): string =>
  `${Math.round(ml)} ml (${(ml / ML_PER_FLUID_OUNCE).toFixed(1)} fl oz)`;
/** "62 °C (144 °F)". */
export const celsius = (c: number): string =>
  `${Math.round(c)} °C (${Math.round((c * 9) / 5 + 32)} °F)`;
export const grams = (g: number): string => `${Math.round(g)} g`;
export const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * A name from a file as one plain line: control and direction marks dropped, spaces joined, cut to 60
 * characters, so that it can neither steer a terminal nor break a table.
 */
export function plainName(name: string): string {
  const line = name
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\p{Cf}\p{Cs}]/gu, '')
    .replace(/ {2,}/g, ' ')
    .trim();
  const signs = [...line];
  return signs.length > 60 ? `${signs.slice(0, 59).join('')}…` : line;
}

/** What an input is, in one line of words where there are any, else its path. */
import { cleanText, shorten } from './clean-text.js';
import type { Words } from './words.js';

export function inputName(path: string, words: Words): string {
  const named = /^(menu|ware|racks\.owned|racks\.families)\.([^.]+)/.exec(path);
  const position = /\[(\d+)\]|\.(\d+)(?=\.|$)/.exec(path);
  const general = (named === null ? path : `${named[1]!}.*${path.slice(named[0].length)}`).replace(/\[\d+\]|\.\d+(?=\.|$)/g, '');
  const label = Object.hasOwn(words.inputs, general) ? words.inputs[general]! : path;
  const which = named?.[2] ?? (position === null ? '' : String(Number(position[1] ?? position[2]) + (position[1] === undefined ? 0 : 1)));
  return cleanText(label === path || which === '' ? label : `${label}: ${shorten(which, 30)}`);
}

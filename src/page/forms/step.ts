/** Stepping the number in a box by the arrow keys, whatever its unit. */
import { decimalExponent, power } from '../../elementary/powers.js';

const pattern = /^(\s*(?:about\s+)?)([-+]?(?:\d+\.?\d*|\.\d+))(.*)$/su;

const decimalsOf = (digits: string): number => (digits.split('.')[1] ?? '').length;

/**
 * The text with its number one step up or down: one unit of its second digit, whole numbers by no less
 * than one. Never below zero. null where the text does not begin with a number.
 * @param times how many steps (ten for a long one)
 */
export function stepped(text: string, direction: 1 | -1, times = 1): string | null {
  const found = pattern.exec(text);
  // Not a time of day, a date or an exponent.
  if (found === null || /^\s*(?::|-\d|[eE][-+]?\d)/.test(found[3]!)) return null;
  const number = Number(found[2]);
  const decimals = decimalsOf(found[2]!);
  // Going down from 100, steps are those of 99.
  const size = Math.abs(direction < 0 ? number * (1 - 1e-9) : number);
  const bySize = size === 0 ? power(10, -decimals) : power(10, decimalExponent(size) - 1);
  const step = decimals === 0 ? Math.max(1, bySize) : Math.max(bySize, power(10, -decimals));
  const next = Math.max(0, number + direction * times * step);
  const kept = Math.max(decimals, Math.max(0, -decimalExponent(step)));
  return `${found[1]!}${next.toFixed(kept)}${found[3]!}`;
}

/**
 * Laws as a file writes them ("about 10 min", { gamma: { mean: 42 min, sd: 18 min } }), changed in their mean.
 *
 * Whoever tries other values changes the mean; the kind of the law and the ratio of its spread to its mean
 * stay, as they describe how people and machines vary and not how long they take.
 */
import { parseWithUnit, durationUnits } from './unit-tables.js';
import { clean } from './parsed.js';
import { splitNumber } from './unit-sizes.js';

const isGroup = (node: unknown): node is Record<string, unknown> =>
  typeof node === 'object' && node !== null && !Array.isArray(node);

const prefixOf = (text: string): string => /^\s*about\s+/.exec(text)?.[0] ?? '';

/** Twelve digits: no dust of binary fractions in what is read again as text. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** A law as written, every duration in it times `factor`; text that is no duration stays. */
export function scaleWritten(law: unknown, factor: number): unknown {
  if (typeof law === 'string') {
    const prefix = prefixOf(law);
    const split = splitNumber(law.slice(prefix.length));
    return split === null ? law : `${prefix}${tidy(split.number * factor)} ${split.rest}`.trim();
  }
  if (Array.isArray(law)) return law.map((item: unknown) => scaleWritten(item, factor));
  if (!isGroup(law)) return law;
  return Object.fromEntries(
    Object.entries(law).map(([key, part]) => [key, scaleWritten(part, factor)]),
  );
}

/** Mean of a law as written, ms; null where it is no single law. */
export function writtenMean(law: unknown): number | null {
  const ms = (text: unknown): number | null => {
    if (typeof text !== 'string') return null;
    const parsed = parseWithUnit(text.slice(prefixOf(text).length), durationUnits);
    return parsed.ok ? parsed.value : null;
  };
  if (!isGroup(law)) return ms(law);
  const [kind, part] = Object.entries(law)[0] ?? [];
  if (kind === 'constant' || kind === 'exponential') return ms(part);
  if (kind === 'lognormal' || kind === 'gamma') return isGroup(part) ? ms(part['mean']) : null;
  if (kind !== 'measured' || !Array.isArray(part) || part.length === 0) return null;
  const all = part.map(ms);
  return all.includes(null) ? null : all.reduce<number>((sum, one) => sum + one!, 0) / all.length;
}

/** Whether the text or group is a law that varies, as opposed to a plain duration. */
export const isSpread = (law: unknown): boolean =>
  typeof law === 'string' ? prefixOf(law) !== '' : isGroup(law) && writtenMean(law) !== null;

/**
 * The law with another mean, written as a plain duration ("12 min"): "about 10 min" becomes "about 12 min". Where
 * the law cannot be read, or has no mean above zero, it becomes that plain duration.
 */
export function withMean(law: unknown, mean: string): unknown {
  const now = writtenMean(law);
  const wanted = writtenMean(mean);
  if (!isSpread(law) || now === null || now === 0 || wanted === null) return mean;
  if (typeof law === 'string') return `${prefixOf(law)}${mean.trim()}`;
  const [kind] = Object.keys(law as object);
  const scaled = scaleWritten(law, clean(wanted / now)) as Record<string, unknown>;
  if (kind === 'exponential' || kind === 'constant') return { [kind]: mean.trim() };
  const part = scaled[kind!];
  return isGroup(part) ? { [kind!]: { ...part, mean: mean.trim() } } : scaled;
}

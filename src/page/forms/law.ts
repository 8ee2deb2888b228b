/** A law of durations as two numbers and a tick: the mean, the spread, and "about" for what people do. */
import { typedAs, type Units } from '../../quantities/us-units.js';
import type { Edit } from '../../scenario/edit.js';
import type { FormField } from '../../scenario/input-forms.js';

export interface Law {
  readonly mean: string;
  /** Standard deviation; '': none, or that of "about". */
  readonly sd: string;
  readonly about: boolean;
  /** The law that has both; a gamma law where none is written yet. */
  readonly name: string;
}

const SPREAD =
  /^\{\s*"?(lognormal|gamma)"?\s*:\s*\{\s*"?mean"?\s*:\s*"?([^,"{}]+?)"?\s*,\s*"?sd"?\s*:\s*"?([^,"{}]+?)"?\s*\}\s*\}$/;
const PLAIN = /^(about\s+)?([\d.].*)$/;

/** @returns null where the text is a law of another kind, which stays one line */
export function lawOf(written: string): Law | null {
  if (written === '') return { mean: '', sd: '', about: false, name: 'gamma' };
  const spread = SPREAD.exec(written);
  if (spread !== null) return { mean: spread[2]!, sd: spread[3]!, about: false, name: spread[1]! };
  const plain = PLAIN.exec(written.trim());
  return plain === null
    ? null
    : { mean: plain[2]!, sd: '', about: plain[1] !== undefined, name: 'gamma' };
}

/** @returns the change that makes the field say this law; null where nothing changes */
export function lawEdit(field: FormField, now: Law, next: Law, units: Units): Edit | null {
  const { at, optional, origin } = field;
  const duration = (text: string, shown: string): string =>
    String(typedAs(text, 'duration', units, shown));
  const mean = duration(next.mean, now.mean);
  const sd = duration(next.sd, now.sd === '' ? mean : now.sd);
  if (mean === '') return optional && origin === 'file' ? { kind: 'remove', path: at } : null;
  if (mean === now.mean && sd === now.sd && next.about === now.about) return null;
  if (next.about) return { kind: 'set', path: at, value: `about ${mean}` };
  if (sd === '') return { kind: 'set', path: at, value: mean };
  const quoted = (text: string): string => JSON.stringify(text);
  return {
    kind: 'set',
    path: at,
    flow: `{ ${next.name}: { mean: ${quoted(mean)}, sd: ${quoted(sd)} } }`,
  };
}

/** Two letters beside each other: what differs, in what was put in and in what came out. */
import type { Formats } from '../tell/format.js';
import * as english from '../tell/english.js';
import type { GivenScenario } from '../letter/live.js';
import type { FormGroup } from '../scenario/input-forms.js';
import { differencesOf } from './differences.js';
import { shownValue } from './forms/field-box.js';
import { labelOf } from './forms/labels.js';
import type { Look, View } from './messages.js';

/** A letter as far as it is compared. */
export interface LetterRead {
  readonly name: string;
  readonly view: View;
  readonly groups: readonly FormGroup[];
}

export interface DifferentRow {
  readonly label: string;
  readonly one: string;
  readonly other: string;
}

/** What a saved letter carries; null where the file is none, or is an empty letter. */
export function scenarioIn(html: string): GivenScenario | null {
  // Read as a document of its own: nothing in it runs, and nothing is fetched.
  const data = new DOMParser().parseFromString(html, 'text/html').getElementById('given');
  try {
    const { scenario } = JSON.parse(data?.textContent ?? '') as { scenario?: GivenScenario | null };
    return typeof scenario?.text === 'string' && Array.isArray(scenario.answer?.stock)
      ? scenario
      : null;
  } catch {
    return null;
  }
}

export function differentInputs(one: LetterRead, other: LetterRead, look: Look): DifferentRow[] {
  const rows = differencesOf(one.groups, other.groups).map(({ field, from, to }) => {
    const shown = (written: string | null): string =>
      written === null || written === ''
        ? english.page.nothingThere
        : shownValue({ ...field, written }, look.units);
    return { label: labelOf(field, { at: [] }), one: shown(from), other: shown(to) };
  });
  // Not given in one and not there in the other is the same to a reader.
  return rows.filter((row) => row.one !== row.other);
}

/** Pieces of each ware, what they cost, and how safe they are; equal rows too, as they are the answer. */
export function answersBeside(
  one: LetterRead,
  other: LetterRead,
  formats: readonly [Formats, Formats],
): DifferentRow[] {
  const say = english.page;
  const ids = [...new Set([...one.view.ware, ...other.view.ware].map(({ id }) => id))];
  const pieces = ids.map((id): DifferentRow => {
    const [a, b] = [one, other].map(({ view }) => view.ware.find((ware) => ware.id === id));
    const count = (ware: typeof a): string =>
      ware === undefined ? say.nothingThere : formats[0].count(ware.pieces);
    return { label: (a ?? b)!.name, one: count(a), other: count(b) };
  });
  const share = ({ view }: LetterRead, { percent }: Formats): string =>
    view.share === null ? say.nothingThere : percent(view.share.level);
  return [
    ...pieces,
    {
      label: say.besideCost,
      one: formats[0].money(one.view.cost),
      other: formats[1].money(other.view.cost),
    },
    { label: say.besideSafe, one: share(one, formats[0]), other: share(other, formats[1]) },
  ];
}

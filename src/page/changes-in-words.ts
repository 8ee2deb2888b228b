/** The values that a change touched, each as one short sentence: "Guests in the busiest hour 64 → 72". */
import type { Formats } from '../tell/format.js';
import * as english from '../tell/english.js';
import { differencesOf } from './differences.js';
import { shownValue } from './forms/field-box.js';
import { labelOf } from './forms/labels.js';
import type { PageState, Settled } from './store.js';

export function changesInWords(
  before: Pick<Settled, 'groups' | 'view'>,
  { groups, view, look }: Pick<PageState, 'groups' | 'view' | 'look'>,
  formats: Formats,
): string[] {
  if (view === null) return [];
  const say = english.page;
  const decimal = (value: number): string => formats.decimal(value, value < 100 ? 1 : 0);
  // What one box changes in many places is said once.
  const machines = [before.view.machines?.length ?? 0, view.machines?.length ?? 0] as const;
  const wholes = [
    {
      path: 'guests.dwell',
      label: say.six.stay,
      from: before.view.stayMinutes,
      to: view.stayMinutes,
    },
    {
      path: 'arrivals.s',
      label: say.six.guests,
      from: before.view.busiestHour,
      to: view.busiestHour,
    },
    ...(machines[0] === machines[1]
      ? []
      : [{ path: 'washing.machines', label: say.machines, from: machines[0], to: machines[1] }]),
  ];
  const differences = differencesOf(before.groups, groups);
  const covered = wholes.filter(({ path }) =>
    differences.some(({ field }) => field.path.startsWith(path)),
  );
  const single = differences.filter(
    ({ field }) => !wholes.some(({ path }) => field.path.startsWith(path)),
  );
  return [
    ...covered.map(({ label, from, to }) =>
      say.changedValue(
        label,
        Number.isInteger(from) ? formats.count(from) : decimal(from),
        Number.isInteger(to) ? formats.count(to) : decimal(to),
      ),
    ),
    ...single.map(({ field, from, to }) => {
      const shown = (written: string | null): string =>
        written === null || written === ''
          ? say.nothingThere
          : shownValue({ ...field, written }, look.units);
      return say.changedValue(labelOf(field, { at: [] }), shown(from), shown(to));
    }),
  ];
}

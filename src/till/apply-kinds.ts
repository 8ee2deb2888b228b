/** Kinds of day of a till as those of a scenario's calendar: each with what differs, all else as in the file. */
import { isMap } from 'yaml';
import type { Document, YAMLMap } from 'yaml';
import type { KindFit, TillKinds } from './fit-kinds.js';
import type { TillFit } from './fit-till.js';
import { shareMarks, sizesMark, spreadMark } from './marks.js';
import { menuShares } from './menu-shares.js';
import { mapUnder, marked, sourceOf, three, type Marked } from './yaml-nodes.js';

/** What a kind changes, by path; the shape and so on of the file's own days where they do not differ. */
function changesOf(
  { fit, differs, times }: KindFit,
  base: TillFit,
  drinks: ReadonlyMap<string, number | null>,
): readonly (readonly [string, Marked])[] {
  const source = sourceOf(fit);
  const changes: (readonly [string, Marked])[] = [];
  const own = differs.includes('shape');
  if (own || differs.includes('volume')) {
    const factor = fit.partiesADay.mean / base.partiesADay.mean;
    const value = own
      ? fit.slots.map(({ parties }) =>
          three(differs.includes('volume') ? parties : parties / factor),
        )
      : base.slots.map(({ parties }) => three(parties * factor));
    const how = own
      ? ''
      : `; ${times.times.toFixed(2)} times the parties of the other days, spread over the day as these are`;
    changes.push([
      'arrivals.slots.parties',
      { value, basis: 'measured', source: `${source}${how}` },
    ]);
  }
  if (differs.includes('spread')) changes.push(['arrivals.dayFactor', spreadMark(fit, source)]);
  if (differs.includes('sizes')) changes.push(['guests.partySize', sizesMark(fit, source)]);
  if (differs.includes('mix'))
    for (const [drink, mark] of shareMarks(menuShares(fit.groups, drinks), source))
      changes.push([`menu.${drink}.share`, mark]);
  return changes;
}

/** Puts the kinds in the calendar; gives notes on what else changes. */
export function setKinds(
  document: Document,
  root: YAMLMap,
  { base, fit, fitted, daysAYear }: TillKinds,
  drinks: ReadonlyMap<string, number | null>,
): readonly string[] {
  const calendar = mapUnder(document, root, 'calendar');
  for (const key of ['daysAYear', 'daysAWeek', 'weeksAYear']) calendar.delete(key);
  const kinds = document.createNode({}) as YAMLMap;
  kinds.set(base.id, document.createNode({ daysAYear }, { flow: true }));
  for (const kind of fitted) {
    const change = document.createNode({}) as YAMLMap;
    for (const [path, mark] of changesOf(kind, fit, drinks))
      change.set(path, marked(document, mark));
    const node = document.createNode({ daysAYear: kind.daysAYear }) as YAMLMap;
    node.set('change', change);
    kinds.set(kind.id, node);
  }
  calendar.set('kinds', kinds);
  const year = fitted.reduce((days, kind) => days + kind.daysAYear, daysAYear ?? 0);
  const elsewhere = (
    [
      ['costs', 'daysAYear'],
      ['supply', 'openDaysAWeek'],
    ] as const
  ).flatMap(([section, key]) => {
    const node: unknown = root.get(section, true);
    if (!isMap(node) || !node.has(key)) return [];
    node.delete(key);
    if (node.items.length === 0) root.delete(section);
    return [`${section}.${key}`];
  });
  return [
    `The calendar has ${fitted.length + 1} kinds of day with ${year} days a year in all, counted from the days of the export. Correct their daysAYear where the export does not show a usual year${elsewhere.length === 0 ? '.' : `; they replace ${elsewhere.join(' and ')}.`}`,
  ];
}

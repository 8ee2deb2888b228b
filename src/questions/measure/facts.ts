/** What a sheet needs to know of its house. */
import { MOST_SIZES, PARTS, type PartId } from '../../measuring/sheet.js';
import { nameOf } from '../../quantities/name.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { ReportContext } from '../../tell/context.js';

/** Places that print on US Letter. */
const LETTER = /-(US|CA|MX|PH)\b/i;

export interface SheetFacts {
  readonly name: string;
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly sizes: number;
  readonly machines: number;
  readonly ware: readonly { readonly id: string; readonly name: string }[];
  /** In order of worth. */
  readonly parts: readonly PartId[];
  readonly paper: 'A4' | 'letter';
}

/** @param parts those worth a morning; a stay is timed beside the tally, as the counts need to know how stays vary */
export function sheetFacts(
  scenario: Scenario,
  { openingMinute, openMinutes, locale }: ReportContext,
  parts: readonly PartId[],
): SheetFacts {
  const fromMinute = openingMinute ?? 0;
  const machines = scenario.washing.machines;
  return {
    name: scenario.name,
    fromMinute,
    toMinute: fromMinute + openMinutes,
    sizes: Math.min(MOST_SIZES, Math.max(2, scenario.guests.partySize.length)),
    machines: Array.isArray(machines) ? machines.length : 1,
    ware: Object.entries(scenario.ware).map(([id, ware]) => ({ id, name: nameOf(id, ware) })),
    parts: withStays(parts),
    paper: LETTER.test(locale) || scenario.currency === 'USD' ? 'letter' : 'A4',
  };
}

function withStays(parts: readonly PartId[]): PartId[] {
  const all = parts.length === 0 ? PARTS.filter((part) => part !== 'dirty') : [...parts];
  const at = all.indexOf('tally');
  return at < 0 || all.includes('stays')
    ? all
    : [...all.slice(0, at + 1), 'stays', ...all.slice(at + 1)];
}

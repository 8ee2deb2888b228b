/** Warnings that only the rush itself can give. */
import type { ListedDay } from '../../cafe/listed-day.js';
import type { CafeModel } from '../../cafe/model.js';
import type { DaysRun } from '../../cafe/rush.js';
import type { Warning } from '../../quantities/flaw.js';
import { runningWarnings } from './running-warnings.js';
import type { RushFacts } from './rush-facts.js';

const BUSY = 0.85;
const MANY_TURNED_AWAY = 0.05;

export function rushWarnings(
  model: CafeModel,
  run: DaysRun,
  facts: RushFacts,
  listed: readonly ListedDay[] | null,
): Warning[] {
  const warnings: Warning[] = [];
  const { busy, guests } = facts;
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  if (busy.machines !== null && busy.machines > BUSY) {
    warnings.push({
      code: 'machine-busy',
      message: `the dishwasher is busy ${percent(busy.machines)} of the opening hours; above ${percent(BUSY)}, a few more guests need many more cups`,
      path: 'washing.machines',
    });
  }
  const all = guests.served + guests.left;
  if (all > 0 && guests.turnedAway / all > MANY_TURNED_AWAY) {
    warnings.push({
      code: 'guests-turned-away',
      message: `${percent(guests.turnedAway / all)} of guests find no seat; the stock is for those who do, ${whatWouldSeat(model)}`,
      path: 'seats',
    });
  }
  if (run.sums.unserved > 0 && run.byDay.length === 0) {
    warnings.push({
      code: 'drinks-never-served',
      message: `${run.sums.unserved} drinks in ${run.days} days were never served, because the cups for them never came back clean; check how long part loads wait and what else these drinks may be served in (fallBacks)`,
      path: 'washing.partLoadWait',
    });
  }
  const late = (listed ?? []).flatMap(({ parties }) =>
    parties.filter(({ minute }) => minute * 60_000 >= model.closingMs),
  );
  if (late.length > 0)
    warnings.push({
      code: 'arrives-after-closing',
      message: `${late.length} listed parties arrive at or after closing; they are served anyway`,
      path: 'hours',
    });
  return [...warnings, ...runningWarnings(model, facts)];
}

/** What would seat more guests: tables that are free sooner help no party that is larger than the house. */
function whatWouldSeat({ guests: { partySize }, seats: { count } }: CafeModel): string {
  const sizes = partySize.flatMap((share, at) => (share > 0 ? [at + 1] : []));
  const fit = sizes.filter((size) => count === null || size <= count);
  if (fit.length === sizes.length) return 'so with more seats or faster tables you would need more';
  return fit.length > 0
    ? 'so with more seats you would need more; faster tables help no party that is larger than the house'
    : 'so with more seats you would need more; faster tables do not help, as every party is larger than the house';
}

/** Warnings that only the rush itself can give. */
import type { ListedDay } from '../../cafe/listed-day.js';
import type { CafeModel } from '../../cafe/model.js';
import type { DaysRun } from '../../cafe/rush.js';
import type { Warning } from '../../scenario/warning.js';
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
      message: `the dishwasher is busy ${percent(busy.machines)} of the opening hours; above ${percent(BUSY)} a small change in guests means a large one in stock`,
      path: 'washing.machines',
    });
  }
  const all = guests.served + guests.left;
  if (all > 0 && guests.turnedAway / all > MANY_TURNED_AWAY) {
    warnings.push({
      code: 'guests-turned-away',
      message: `${percent(guests.turnedAway / all)} of guests find no seat; the stock is for those who do, and more seats or faster tables would raise it`,
      path: 'seats',
    });
  }
  if (run.sums.unserved > 0 && run.byDay.length === 0) {
    warnings.push({
      code: 'drinks-never-served',
      message: `${run.sums.unserved} drinks in ${run.days} days waited for ware that never came back; look at partLoadWait and fallBacks`,
      path: 'washing.partLoadWait',
    });
  }
  const late = (listed ?? []).flatMap(({ parties }) =>
    parties.filter(({ minute }) => minute * 60_000 >= model.closingMs),
  );
  if (late.length > 0)
    warnings.push({
      code: 'arrives-after-closing',
      message: `${late.length} listed parties arrive at or after closing; they are served all the same`,
      path: 'hours',
    });
  return [...warnings, ...runningWarnings(model, facts)];
}

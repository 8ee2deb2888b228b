/** The alternatives worked out so far, for the reader who waits. */
import type { Scenario } from '../../scenario/scenario.js';
import { table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import { english } from '../../tell/words.js';
import { frameOf } from './costs.js';
import { signed, wholeMoney, yearsText } from './money-text.js';
import type { RowSoFar } from './so-far.js';
import { shortName } from './tell.js';

export function tellSoFar(
  [own, ...others]: readonly RowSoFar[],
  scenario: Scenario,
  context: ReportContext,
): Block[] {
  if (own === undefined) return [];
  const { head, soFar } = english.compare;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const years = yearsText(frameOf(scenario).horizonYears, formats);
  return [
    table({
      caption: soFar,
      columns: [
        { title: head.alternative, as: 'words' },
        { title: head.pieces, as: 'figures' },
        { title: head.stock, as: 'figures' },
        { title: head.against(years), as: 'figures' },
      ],
      rows: [
        [shortName(own.name), formats.count(own.pieces), whole(own.stockCost), whole(own.total)],
        ...others.map((one) => [
          shortName(one.name),
          signed(one.pieces - own.pieces, formats.count),
          signed(one.stockCost - own.stockCost, whole),
          one.planFor ? english.answer.none : signed(one.total - own.total, whole),
        ]),
      ],
    }),
  ];
}

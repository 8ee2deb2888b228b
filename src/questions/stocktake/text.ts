/** The stocktake for a terminal. */
import type { Stocktake } from '../../ordering/stocktake.js';
import { cleanText } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, textTable, wrapText } from '../../tell/format.js';
import { english } from '../../tell/words.js';

const WIDTH = 100;

export function stocktakeText(stocktake: Stocktake, context: ReportContext): string {
  const say = (context.words ?? english).order;
  const formats = formatsFor(context);
  const nameOf = (id: string): string =>
    cleanText(context.ware.find((ware) => ware.id === id)?.name ?? id);
  const rate = (value: number): string => formats.decimal(value, 2);
  const table = textTable(
    say.stocktakeHead.map((title, at) => ({ title, right: at > 0 })),
    stocktake.lines.map((line) => [
      nameOf(line.ware),
      formats.count(line.expected),
      formats.count(line.counted),
      formats.count(line.retired),
      formats.count(line.missing),
      line.seen === null
        ? say.none
        : say.seen(rate(line.seen.rate), rate(line.seen.low), rate(line.seen.high)),
      line.breakage === null
        ? say.none
        : say.update(
            rate(line.breakage.prior.mean),
            say.seen(
              rate(line.breakage.posterior.mean),
              rate(line.breakage.posterior.low),
              rate(line.breakage.posterior.high),
            ),
          ),
      line.policy.reorderPoint === null ? say.none : formats.count(line.policy.reorderPoint),
      formats.count(line.topUp),
    ]),
    130,
  );
  return `${[say.stocktake(stocktake.days), '', ...table, '', ...wrapText(say.updateNote, WIDTH), ...(stocktake.uncounted.length === 0 ? [] : [say.uncounted(stocktake.uncounted.map(nameOf).join(', '))])].join('\n')}\n`;
}

/** Which level is worth buying, as blocks, and in the lead where it is not the one asked for. */
import { english } from '../../tell/words.js';
import { digitsOf } from '../size/facts.js';
import { paragraphs, table, type Block } from '../../tell/block.js';
import type { LevelAnswer } from './answer.js';
import type { Telling } from './changes-text.js';

/** '' where the level asked for is the one worth buying. */
export function levelLead(worth: LevelAnswer, { formats, whole }: Telling): string {
  const at = (level: number) => worth.points.find((point) => point.level === level);
  const [chosen, best] = [at(worth.chosen), at(worth.recommended)];
  if (chosen === undefined || best === undefined || chosen === best) return '';
  const saves = chosen.totalAYear - best.totalAYear;
  // Less than a unit of money a year is nothing to think about.
  if (saves < 1) return '';
  const percent = (level: number): string => formats.percent(level, digitsOf(level));
  const more = best.stockCost - chosen.stockCost;
  const say = english.compare;
  return (more >= 0 ? say.levelFirst : say.levelLess)(
    percent(best.level),
    percent(chosen.level),
    whole(Math.abs(more)),
    whole(saves),
    formats.money(worth.shortDrinkCost),
  );
}

export function levelBlocks(worth: LevelAnswer, { formats }: Telling): Block[] {
  const say = english.compare;
  const { levelHead: head } = say;
  const percent = (level: number): string => formats.percent(level, digitsOf(level));
  return [
    table({
      caption: say.levelTitle,
      columns: [
        { title: head.level, as: 'words' },
        ...[head.pieces, head.stock, head.short, head.stockYear, head.shortYear, head.total].map(
          (title) => ({ title, as: 'figures' as const }),
        ),
        { title: head.safe, as: 'figures', spare: true },
      ],
      rows: worth.points.map((one) => [
        percent(one.level),
        formats.count(one.pieces),
        formats.money(one.stockCost),
        formats.decimal(one.shortADay, 2),
        formats.money(one.stockAYear),
        formats.money(one.shortAYear),
        formats.money(one.totalAYear),
        formats.money(one.perSafeRush),
      ]),
    }),
    paragraphs([
      say.level(
        percent(worth.recommended),
        percent(worth.chosen),
        formats.money(worth.shortDrinkCost),
        formats.percent(1 - worth.newsvendor),
      ) + (worth.knee === null ? '' : ` ${say.knee(percent(worth.knee))}`),
    ]),
  ];
}

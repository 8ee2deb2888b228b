/** What a morning's sheet is worth, as blocks. */
import type { PartId } from '../../measuring/sheet.js';
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, minutesText, type Formats } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { listed } from '../../tell/words.js';
import type { MeasurePlan, PartWorth, StockRange, Swing } from './answer.js';
import { partWords, say } from './words.js';

const MOST_SWINGS = 12;

export function planBlocks(plan: MeasurePlan, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { parts, left, factor, days, seed } = plan;
  const lead =
    parts.length === 0
      ? say.nothing
      : say.lead(rangeText(plan.now, formats), rangeText(plan.foretold, formats));
  const staysToo = left.includes('stays') && parts.some(({ part }) => part === 'tally');
  return [
    heading(say.heading),
    paragraphs([lead], 'lead'),
    paragraphs(
      parts.length === 0
        ? []
        : [
            say.factor(formats.percent(factor, 0)),
            say.second(rangeText(plan.foretoldTwo, formats), formats.percent(plan.factorTwo, 0)),
          ],
    ),
    table({
      caption: say.worth,
      columns: [
        { title: say.part, as: 'words' },
        { title: say.narrows, as: 'figures' },
        { title: say.takes, as: 'words' },
        { title: say.says, as: 'words', spare: true },
      ],
      rows: parts.map((worth) => [
        partWords[worth.part].title,
        formats.percent(worth.narrows, 0),
        takes(worth, formats),
        [...new Set(worth.inputs.map((path) => inputName(path).split(':')[0]!.toLowerCase()))].join(
          ', ',
        ),
      ]),
    }),
    list([
      ...(parts.length === 0 ? [] : [say.estimate]),
      ...(left.length === 0 ? [] : [say.left(listed(left.map(titleOf)))]),
      ...(staysToo ? [say.leftStays] : []),
      say.days(formats.count(days), seed),
    ]),
    fold(say.swings, [swingTable(plan, formats)]),
    { ...paragraphs([say.next]), only: 'text' },
  ];
}

const titleOf = (part: PartId): string => partWords[part].title.toLowerCase();

export const rangeText = ({ piecesLow, piecesHigh }: StockRange, formats: Formats): string =>
  `${formats.count(Math.max(0, Math.round(piecesLow)))} and ${formats.count(Math.round(piecesHigh))}`;

function takes({ part, minutes }: PartWorth, formats: Formats): string {
  if (part !== 'tally') return say.takesMinutes(minutesText(minutes, formats));
  const hours = Math.round(minutes / 6) / 10;
  return say.takesTally(
    `${Number.isInteger(hours) ? formats.count(hours) : formats.decimal(hours)}\u00A0h`,
  );
}

function swingTable({ swings }: MeasurePlan, formats: Formats): Block {
  const shown = swings.slice(0, MOST_SWINGS);
  return table({
    caption: say.swingsCaption,
    columns: [
      { title: say.input, as: 'words' },
      { title: say.low, as: 'figures' },
      { title: say.high, as: 'figures' },
      { title: say.basis, as: 'words', spare: true },
      { title: say.leaves, as: 'figures' },
    ],
    rows: shown.map((swing) => [
      `${inputName(swing.path)}${swing.fifthOff ? ' ± 20 %' : ''}`,
      formats.money(swing.cost[0]),
      formats.money(swing.cost[1]),
      swing.basis,
      leavesText(swing, formats),
    ]),
  });
}

function leavesText({ leaves }: Swing, formats: Formats): string {
  const best = Math.min(1, ...Object.values(leaves));
  return best === 1 ? '–' : formats.percent(best, 0);
}

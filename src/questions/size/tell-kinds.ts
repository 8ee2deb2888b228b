/** The stock on each kind of day, where the scenario lists several. */
import { table, type Block } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { Formats } from '../../tell/format.js';
import { answerWords } from '../../tell/words/answer.js';
import type { Answer } from './answer.js';
import { sizeWords as say } from './words.js';

const NAME_LENGTH = 40;

const nameOf = (name: string): string => shorten(cleanText(name), NAME_LENGTH);

/** The kind of day that the stock carries least; null where there is one kind alone. */
export function tightestKind({ kinds, tightestKind: tightest }: Answer): string | null {
  const found = kinds?.find(({ id }) => id === tightest);
  return found === undefined ? null : nameOf(found.name);
}

/** Nothing where there is one kind alone. */
export function kindsBlocks({ kinds }: Answer, formats: Formats): Block[] {
  if (kinds === undefined) return [];
  return [
    table({
      caption: say.kinds.caption,
      columns: [
        { title: say.kinds.kind, as: 'words' },
        { title: say.kinds.daysAYear, as: 'figures' },
        { title: say.kinds.safe, as: 'figures' },
        { title: say.kinds.interval, as: 'figures', spare: true },
        { title: say.kinds.guests, as: 'figures', spare: true },
        { title: say.kinds.loads, as: 'figures', spare: true },
      ],
      rows: kinds.map(({ name, daysAYear, certified, guests, loads }) => [
        nameOf(name),
        formats.count(daysAYear),
        certified === null ? answerWords.none : formats.percent(certified.level),
        certified === null
          ? answerWords.none
          : answerWords.to(formats.percent(certified.low), formats.percent(certified.high)),
        formats.decimal(guests.served),
        formats.decimal(loads.aDay),
      ]),
    }),
  ];
}

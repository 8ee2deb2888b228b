/** What a house plans for rather than chooses, as blocks: how far its stock carries it, and what more it would need. */
import { heading, list, paragraphs, type Block } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { listed, english } from '../../tell/words.js';
import { digitsOf } from '../size/facts.js';
import type { ComparedAlternative, Comparison } from './answer.js';
import type { Telling } from './changes-text.js';

export function planBlocks(comparison: Comparison, telling: Telling): Block[] {
  const say = english.compare.plans;
  const plans = comparison.ranking.notRanked.map((id) =>
    comparison.alternatives.find((one) => one.id === id)!,
  );
  return plans.length === 0
    ? []
    : [
        heading(say.head, 2),
        paragraphs([say.intro]),
        list(plans.map((one) => planSentence(comparison, one, telling))),
      ];
}

/** "Machine out of order: with the stock as it is nothing runs out on 71 % of such mornings. To keep 95 %, have 18 more pieces (€69): ..." */
function planSentence(
  { alternatives, level }: Comparison,
  one: ComparedAlternative,
  { formats, whole, name, days }: Telling,
): string {
  const say = english.compare.plans;
  const base = alternatives[0]!;
  const asked = formats.percent(level, digitsOf(level));
  const { asItIsLasts: lasts } = one;
  const more = one.stock.flatMap(({ ware, name: of, pieces }) => {
    const now = base.stock.find((line) => line.ware === ware)?.pieces ?? 0;
    return pieces > now
      ? [
          english.answer.pieces(
            formats.count(pieces - now),
            shorten(cleanText(of), 40),
            pieces - now === 1,
          ),
        ]
      : [];
  });
  const ware = one.stockAgainstBase!.difference;
  const minutes = Math.round(one.staffMinutes - base.staffMinutes);
  const enough = lasts !== null && lasts.high >= level && ware < 0.5;
  return [
    lasts === null
      ? `${name(one.id)}.`
      : `${name(one.id)}: ${say.lasts(formats.percent(lasts.level, 0), days)}.`,
    enough
      ? say.enough(asked)
      : ware >= 0.5 && more.length > 0
        ? say.have(asked, listed(more), whole(ware))
        : lasts !== null && lasts.high < level
          ? say.unsure(asked)
          : say.noMore(asked),
    ...(minutes >= 1 ? [say.staff(formats.count(minutes), minutes === 1)] : []),
  ].join(' ');
}

/** Which cup goes on which saucer, and where the pieces go: on the machine, in reserve, or nowhere. */
import { poolingSentence } from '../../ordering/saucers.js';
import { fitWords } from '../../racking/saucer-fit.js';
import { heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { asSentence } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { listed } from '../../tell/words.js';
import { orderDrawings } from './pictures.js';
import type { OrderStudy } from './study.js';
import { say } from './words.js';

const nameIn =
  (context: ReportContext) =>
  (id: string): string =>
    shortName(context.ware.find((ware) => ware.id === id)?.name ?? id);

export function saucerBlocks({ saucers, pools }: OrderStudy, context: ReportContext): Block[] {
  const { decimal } = formatsFor(context);
  const nameOf = nameIn(context);
  return [
    list(
      [
        ...saucers.pairs.map((pair) =>
          say.fit(
            nameOf(pair.cup),
            nameOf(pair.saucer),
            fitWords(pair, (mm) => `${decimal(mm)} mm`),
          ),
        ),
        ...pools.map(({ saucer, gain }) => say.pool(nameOf(saucer), poolingSentence(gain))),
        ...saucers.orphanCups.map((cup) => say.orphanCup(nameOf(cup))),
        ...saucers.orphanSaucers.map((saucer) => say.orphanSaucer(nameOf(saucer))),
      ].map(asSentence),
      say.saucers,
    ),
  ];
}

/** How many drinks come in a cold cup; nothing where no cup is to be warm. */
function coldSentence(fetching: OrderStudy['fetching'], context: ReportContext): string {
  if (fetching === null || fetching.coldShare === null) return '';
  const { percent } = formatsFor(context);
  const nameOf = nameIn(context);
  const cold = fetching.coldByWare.filter(({ share }) => share > 0);
  return cold.length === 0
    ? say.allWarm
    : say.coldCups(
        percent(fetching.coldShare),
        listed(cold.map(({ ware, share }) => say.coldOf(nameOf(ware), percent(share)))),
      );
}

export function storageBlocks(
  { storage, fetching, ...study }: OrderStudy,
  context: ReportContext,
): Block[] {
  if (storage === null) return [];
  const { count, decimal, percent } = formatsFor(context);
  const nameOf = nameIn(context);
  const tooFew = (fetching?.onePlace ?? []).filter((id) =>
    storage.lines.some(({ ware, onTop }) => ware === id && onTop > 0),
  );
  return [
    heading(say.storage, 2),
    paragraphs([
      fetching === null
        ? ''
        : say.fetching(decimal(fetching.trips), decimal(fetching.waits), percent(fetching.safe)),
      coldSentence(fetching, context),
      storage.lines.some(({ onTop }) => onTop === 0) ? say.withinReach : '',
      tooFew.length === 0 ? '' : say.tooFewOnTop(listed(tooFew.map(nameOf))),
      ...storage.homeless.map(({ ware, pieces }) => say.homeless(nameOf(ware), pieces)),
      ...storage.remedies,
    ]),
    { kind: 'picture', pictures: orderDrawings({ storage, fetching, ...study }, context) },
    table({
      caption: say.storageCaption,
      columns: say.storageHead.map((title, at) => ({ title, as: at === 0 ? 'words' : 'figures' })),
      rows: storage.lines.map((line) => [
        shortName(line.name),
        count(line.onTop),
        count(line.inReserve),
        line.trigger === null ? say.none : count(line.trigger),
      ]),
    }),
  ];
}

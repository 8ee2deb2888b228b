/** What is said of one item in one kind of rack: its count, and how near that is to another count. */
import { rackKind } from '../../catalogue/catalogue.js';
import { table, type Block } from '../../tell/block.js';
import type { Formats } from '../../tell/format.js';
import { changedMeasure } from '../../tell/words/dimensions.js';
import { shortName } from '../../tell/section-parts.js';
import type { RackLine } from './answer.js';
import { rackWords as say } from './words.js';

/** "25-compartment rack", as it stands within a sentence. */
export const rackName = (id: string, name = rackKind(id)?.name ?? id): string =>
  `${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/** "rim 1.9 mm wider". */
export function changeText(
  { changeMm, dimension }: NonNullable<RackLine['cliff']>,
  formats: Formats,
): string {
  return changedMeasure(
    dimension,
    formats.length(Math.abs(changeMm)),
    changeMm < 0 ? 'less' : 'more',
  );
}

/** "Medium cup: one open rack holds 21. With its rim 1.9 mm wider a rack would hold 20." */
export function fitText(line: RackLine, formats: Formats): string {
  const { name, pieces, cliff } = line;
  const fits = say.fits(shortName(name), formats.count(pieces), rackName(line.rack, line.rackName));
  if (pieces === 0) return fits;
  const near =
    cliff === null
      ? say.noCliff
      : say.cliff(changeText(cliff, formats), formats.count(cliff.piecesThen));
  return `${fits} ${near}`;
}

/** Rounded down, so that no room is promised that is not there. */
export const slackText = ({ slackMm, pieces }: RackLine, formats: Formats): string =>
  slackMm === null ? (pieces === 0 ? say.unknown : say.ample) : formats.room(slackMm);

/** Lines as a table; only name, rack, pieces, limit, nearest change and lift stay in a narrow terminal. */
export function linesTable(caption: string, lines: readonly RackLine[], formats: Formats): Block {
  return table({
    caption,
    columns: [
      { title: say.ware, as: 'words' },
      { title: say.rack, as: 'words' },
      { title: say.pieces, as: 'figures' },
      { title: say.bound, as: 'words' },
      { title: say.near, as: 'words' },
      { title: say.mass, as: 'figures' },
      { title: say.lift, as: 'figures' },
      { title: say.turns, as: 'figures', spare: true },
      { title: say.area, as: 'figures', spare: true },
      { title: say.slack, as: 'figures', spare: true },
      { title: say.loads, as: 'figures', spare: true },
    ],
    rows: lines.map((line) => [
      shortName(line.name),
      line.planned && !line.used
        ? say.planned(rackName(line.rack, line.rackName))
        : rackName(line.rack, line.rackName),
      formats.count(line.pieces),
      say.binds[line.binds],
      line.cliff === null
        ? say.unknown
        : say.nearCell(changeText(line.cliff, formats), formats.count(line.cliff.piecesThen)),
      line.loadedKg === null ? say.unknown : formats.mass(line.loadedKg * 1000),
      line.liftingIndex === null
        ? line.loadedKg === null
          ? say.unknown
          : say.noLoad
        : formats.decimal(line.liftingIndex),
      line.straight === null || line.at45 === null
        ? say.unknown
        : `${formats.count(line.straight)} / ${formats.count(line.at45)}`,
      formats.percent(line.areaShare, 0),
      slackText(line, formats),
      line.loadsPer100 === null ? say.unknown : formats.count(line.loadsPer100),
    ]),
  });
}

/** What each count is held against: no arrangement of one layer holds more. */
export const boundsTable = (lines: readonly RackLine[], formats: Formats): Block =>
  table({
    caption: say.mostTitle,
    columns: [
      { title: say.ware, as: 'words' },
      { title: say.rack, as: 'words' },
      { title: say.found, as: 'figures' },
      { title: say.most, as: 'figures' },
      { title: say.mostBy, as: 'words' },
    ],
    rows: lines.flatMap(({ name, rack, rackName: called, pieces, most }) =>
      most === null
        ? []
        : [
            [
              shortName(name),
              rackName(rack, called),
              formats.count(pieces),
              formats.count(most.pieces),
              say.boundBy[most.by],
            ],
          ],
    ),
  });

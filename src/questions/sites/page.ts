/** All sites as one page: a table that sorts and filters, a small picture a site, and all that is said of them together. Offline, one file. */
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import type { Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import type { SitesAnswer } from './answer.js';
import type { SiteAnswer } from './site-answer.js';
import { smallPicture } from './picture.js';
import {
  sortedPage,
  sortedTable,
  type PageParts,
  type SortedCell,
  type SortedRow,
} from './sorted-page.js';
import {
  busiestText,
  furtherBlocks,
  intervalText,
  leadBlocks,
  levelText,
  mindOf,
  sitesFormats,
} from './tell.js';
import { say } from './words.js';

/** With more sites pictures would make the page too large to open at once. */
const MOST_PICTURES = 2000;

/** Names of the letters that were written beside it, by id of the site. */
type Letters = ReadonlyMap<string, string>;

export async function sitesPage(
  answer: SitesAnswer,
  context: ReportContext,
  { letters, ...parts }: PageParts & { readonly letters: Letters },
): Promise<string> {
  const formats = sitesFormats(context);
  return sortedPage(
    {
      title: say.heading(
        shortName(answer.base),
        say.siteCount(answer.sites.length, formats.count(answer.sites.length)),
      ),
      base: answer.base,
      seed: answer.seed,
      before: leadBlocks(answer, formats),
      table: answer.sites.length === 0 ? '' : sitesTable(answer, formats, letters),
      after: furtherBlocks(answer, formats),
    },
    context,
    parts,
  );
}

const sum = (values: Readonly<Record<string, number>>): number =>
  Object.values(values).reduce((total, one) => total + one, 0);

function sitesTable({ sites, ware }: SitesAnswer, formats: Formats, letters: Letters): string {
  const pictures = sites.length <= MOST_PICTURES;
  return sortedTable({
    caption: say.caption,
    only: say.page.only,
    shown: say.page.shown,
    first: say.site,
    picture: pictures ? say.page.picture : null,
    heads: [
      say.drop,
      say.opening,
      say.seats,
      say.guests,
      ...ware.map(({ name }) => shortName(name)),
      say.pieces,
      say.add,
      say.level,
      say.interval,
      say.cost,
      say.toPay,
      say.busiest,
      say.warnings,
    ],
    rows: sites.map((site): SortedRow => {
      const mind = mindOf(site, formats);
      const letter = letters.get(site.id);
      return {
        name: shortName(site.name),
        text: `${site.id} ${site.name} ${site.drop}`,
        stands: mind.length > 0,
        ...(letter === undefined ? {} : { link: { to: letter, text: say.page.letter } }),
        ...(pictures ? { picture: pictureOf(site, ware) } : {}),
        cells: cellsOf(site, ware, formats),
        last: { value: mind.length, details: mind },
      };
    }),
  });
}

function pictureOf(site: SiteAnswer, ware: SitesAnswer['ware']): string {
  const course = ware.find(({ id }) => id === site.course?.ware)?.name ?? '';
  return smallPicture(site, escapeHtml(say.page.course(shortName(course))));
}

const cellsOf = (site: SiteAnswer, ware: SitesAnswer['ware'], formats: Formats): SortedCell[] => [
  { text: site.drop },
  { text: site.opening ?? '' },
  {
    text: site.seats === null ? say.unlimited : formats.count(site.seats),
    value: site.seats,
  },
  { text: formats.count(site.guestsAnHour), value: site.guestsAnHour },
  ...ware.map(({ id }) => ({
    text: formats.count(site.pieces[id] ?? 0),
    value: site.pieces[id] ?? 0,
  })),
  { text: formats.count(sum(site.pieces)), value: sum(site.pieces) },
  { text: formats.count(sum(site.add)), value: sum(site.add) },
  { text: levelText(site, formats), value: site.certified?.level ?? null },
  { text: intervalText(site, formats), value: site.certified?.low ?? null },
  { text: formats.money(site.cost), value: site.cost },
  { text: formats.money(site.spend), value: site.spend },
  { text: busiestText(site, formats), value: site.busiest?.share ?? null },
];

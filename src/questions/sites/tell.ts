/** The answer about all sites as blocks: for the terminal, and for the parts of the page beneath its table. */
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { formatsFor, type Formats, digitsOf } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import type { ReportContext } from '../../tell/context.js';
import type { SitesAnswer } from './answer.js';
import type { SiteAnswer } from './site-answer.js';
import { guideBlocks, listBlocks, sparesBlocks } from './tell-chain.js';
import { orderBlocks, rollOutBlocks } from './tell-order.js';
import { listed } from './tell-parts.js';
import { say } from './words.js';

/** Rows of a table on a terminal; all are in the files. */
const MOST_ROWS = 60;
const MOST_WARNINGS = 12;

export const sitesFormats = (context: ReportContext): Formats =>
  formatsFor({ ...context, openingMinute: null });

export function sitesBlocks(answer: SitesAnswer, context: ReportContext): Block[] {
  const formats = sitesFormats(context);
  return [
    ...leadBlocks(answer, formats),
    siteTable(answer, formats),
    fold(say.wareCaption, [wareTable(answer, formats)]),
    ...furtherBlocks(answer, formats),
    paragraphs([`${say.informs} ${say.made(context.version, answer.seed)}`], 'small'),
  ];
}

/** All but the table of sites. */
export function furtherBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  return [
    ...mindBlocks(answer, formats),
    ...orderBlocks(answer, formats),
    ...rollOutBlocks(answer, formats),
    ...sparesBlocks(answer, formats),
    ...listBlocks(answer, formats),
    ...guideBlocks(answer, formats),
  ];
}

const sum = (values: Readonly<Record<string, number>>): number =>
  Object.values(values).reduce((total, one) => total + one, 0);

export function leadBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  const { sites, failed, totals, level } = answer;
  return [
    heading(
      say.heading(shortName(answer.base), say.siteCount(sites.length, formats.count(sites.length))),
    ),
    ...(sites.length === 0
      ? []
      : [
          paragraphs(
            [
              say.lead(
                formats.count(sum(totals.pieces)),
                formats.money(totals.cost),
                formats.percent(level, digitsOf(level)),
              ),
              ...(totals.spend === totals.cost
                ? []
                : [say.spend(formats.count(sum(totals.add)), formats.money(totals.spend))]),
            ],
            'lead',
          ),
        ]),
    ...(failed.length === 0
      ? []
      : [
          paragraphs(
            failed.map((one) => say.failed(one.name, one.failed)),
            'alarm',
          ),
        ]),
  ];
}

/** What is said of a site's busiest stage. */
export const busiestText = ({ busiest }: SiteAnswer, formats: Formats): string =>
  busiest === null ? say.none : `${say.stage[busiest.stage]} ${formats.percent(busiest.share, 0)}`;

export const levelText = ({ certified }: SiteAnswer, formats: Formats): string =>
  certified === null ? say.none : formats.percent(certified.level);

export const intervalText = ({ certified }: SiteAnswer, formats: Formats): string =>
  certified === null
    ? say.none
    : `${formats.percent(certified.low)}–${formats.percent(certified.high)}`;

/** Everything that a reader should know of a site before buying. */
export const mindOf = (site: SiteAnswer, formats: Formats): string[] => [
  ...site.overloads.map(({ what, load }) =>
    say.overload(
      what in say.stage ? say.stage[what as keyof typeof say.stage] : what,
      formats.percent(load, 0),
    ),
  ),
  ...site.warnings.map(({ message }) => message),
];

function siteTable({ sites, totals }: SitesAnswer, formats: Formats): Block {
  return table({
    caption: say.caption,
    columns: [
      { title: say.site, as: 'words' },
      { title: say.seats, as: 'figures', spare: true },
      { title: say.guests, as: 'figures', spare: true },
      { title: say.pieces, as: 'figures' },
      { title: say.add, as: 'figures' },
      { title: say.level, as: 'figures' },
      { title: say.interval, as: 'figures', spare: true },
      { title: say.cost, as: 'figures' },
      { title: say.busiest, as: 'words' },
      { title: say.warnings, as: 'figures' },
    ],
    rows: sites
      .slice(0, MOST_ROWS)
      .map((site) => [
        shortName(site.name),
        site.seats === null ? say.unlimited : formats.count(site.seats),
        formats.count(site.guestsAnHour),
        formats.count(sum(site.pieces)),
        formats.count(sum(site.add)),
        levelText(site, formats),
        intervalText(site, formats),
        formats.money(site.cost),
        busiestText(site, formats),
        formats.count(mindOf(site, formats).length),
      ]),
    totals: [
      say.total,
      '',
      '',
      formats.count(sum(totals.pieces)),
      formats.count(sum(totals.add)),
      '',
      '',
      formats.money(totals.cost),
      '',
      '',
    ],
  });
}

function wareTable({ sites, ware, totals }: SitesAnswer, formats: Formats): Block {
  return table({
    caption: say.wareCaption,
    columns: [
      { title: say.site, as: 'words' },
      ...ware.map(({ name }) => ({ title: shortName(name), as: 'figures' as const })),
    ],
    rows: sites
      .slice(0, MOST_ROWS)
      .map((site) => [
        shortName(site.name),
        ...ware.map(({ id }) => formats.count(site.pieces[id] ?? 0)),
      ]),
    totals: [say.total, ...ware.map(({ id }) => formats.count(totals.pieces[id]!))],
  });
}

/** Each thing to mind once, with the sites that it is about. */
function mindBlocks({ sites }: SitesAnswer, formats: Formats): Block[] {
  const about = new Map<string, string[]>();
  for (const site of sites)
    for (const text of mindOf(site, formats))
      about.set(text, [...(about.get(text) ?? []), shortName(site.name)]);
  const items = [...about].map(([text, names]) => say.mind(listed(names, formats), text));
  if (items.length === 0) return [];
  const [first, rest] = [items.slice(0, MOST_WARNINGS), items.slice(MOST_WARNINGS)];
  return [
    heading(say.mindHead, 2),
    list(first),
    ...(rest.length === 0 ? [] : [fold(say.mindHead, [list(rest)])]),
  ];
}
